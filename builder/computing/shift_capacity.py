"""What a kind of station gives in a shift: the lesser of its people and its machines.

    by labour  = people × worked minutes × (1 − off-standard share) × performance ÷ labour minutes a piece
    by machine = machines × worked minutes × availability ÷ machine minutes a piece

Worked minutes are paid minutes less breaks. Ours, from the definitions of the terms.
"""

from __future__ import annotations

from dataclasses import dataclass

from builder.model import Capacity, Plant, Station


@dataclass(frozen=True, slots=True)
class Crew:
    """What a shift has to give at one kind of station.

    minutes       : worked a shift and person
    performance   : minutes earned ÷ minutes worked on standard; 1 where the plant says nothing
    off_standard  : share of the time not on standard; 0 where the plant says nothing
    availability  : share of the time a machine can run; 1 where the station says nothing
    """

    people: int
    machines: int
    minutes: float
    performance: float = 1.0
    off_standard: float = 0.0
    availability: float = 1.0


def capacity(crew: Crew, labour_min: float, machine_min: float) -> Capacity:
    """Pieces a shift of work that takes so many labour and machine minutes a piece.

    >>> found = capacity(Crew(people=2, machines=3, minutes=450, performance=0.8), 1.2, 2.0)
    >>> found.by_labour, found.by_machine, found.limit
    (600.0, 675.0, 'labour')
    """
    on_standard = crew.people * crew.minutes * (1 - crew.off_standard) * crew.performance
    running = crew.machines * crew.minutes * crew.availability
    return Capacity(
        on_standard / labour_min if labour_min > 0 else None, running / machine_min if machine_min > 0 else None
    )


def crew_of(plant: Plant, station: Station, has_machine: bool) -> Crew:
    """A station's crew: its `people:` or one a place, its places as machines, the plant's shift and performance."""
    minutes = float(plant.shift.paid.value - plant.shift.breaks.value) / 60
    return Crew(
        people=station.people or station.count,
        machines=station.count if has_machine else 0,
        minutes=minutes,
        performance=float(plant.performance) if plant.performance is not None else 1.0,
        off_standard=float(plant.off_standard) if plant.off_standard is not None else 0.0,
        availability=float(station.availability) if station.availability is not None else 1.0,
    )
