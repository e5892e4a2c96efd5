"""A study: timed readings of an operation's steps, as one CSV holds them, in the order they were taken."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction

from builder.finding import Place

OUT, FOREIGN, START = "out:", "foreign:", "start"
"""How a note begins that leaves its reading out, names an element that is no part of the work, sets the watch."""


@dataclass(frozen=True, slots=True)
class Reading:
    """One reading: seconds as timed, of one piece, the rating in percent, and the observer's note.

    rating   : 100 where the step was not rated
    date, operator : '' where the study doesn't say; an operator is a code
    """

    step: str
    cycle: str
    seconds: Fraction
    rating: Fraction
    note: str
    place: Place
    date: str = ""
    operator: str = ""

    @property
    def foreign(self) -> bool:
        """No part of the work: kept out and listed."""
        return bool(self.note) and self.note.casefold().startswith(FOREIGN)

    @property
    def out(self) -> bool:
        """Kept out of the mean, with a reason in the note."""
        return bool(self.note) and self.note.casefold().startswith((OUT, FOREIGN))

    @property
    def rated_s(self) -> Fraction:
        """Reading × rating ÷ 100 [s]."""
        return self.seconds * self.rating / 100


@dataclass(frozen=True, slots=True)
class Study:
    """All readings of one study, with the conditions its head states and where each of them stands."""

    name: str
    file: str
    head: Mapping[str, str]
    readings: tuple[Reading, ...]
    digest: str
    head_places: Mapping[str, Place] = field(default_factory=dict)
    _by_step: dict[str, tuple[Reading, ...]] = field(default_factory=dict, compare=False, repr=False)

    def by_step(self) -> Mapping[str, tuple[Reading, ...]]:
        """All readings of each step, those left out too, foreign elements not; gathered once."""
        if not self._by_step:
            found: dict[str, list[Reading]] = {}
            for reading in self.readings:
                if not reading.foreign:
                    found.setdefault(reading.step, []).append(reading)
            self._by_step.update((step, tuple(readings)) for step, readings in found.items())
        return self._by_step

    def of_step(self, step: str) -> tuple[Reading, ...]:
        """Readings that count for a step."""
        return tuple(one for one in self.by_step().get(step, ()) if not one.out)

    def self_paced(self) -> frozenset[str]:
        """Steps the head says the machine paces (`# machine paced: run, press`), for readers without a plant."""
        return frozenset(name.strip() for name in self.head.get("machine paced", "").split(",") if name.strip())
