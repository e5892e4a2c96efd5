"""What a shift gives at a station, what a newcomer makes, how many machines one person can look after."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Capacity:
    """Pieces a shift by labour and by machine; None where a piece takes none of it. `pieces` is the lesser."""

    by_labour: float | None
    by_machine: float | None

    @property
    def pieces(self) -> float | None:
        """What the shift gives, None when the piece takes nothing here."""
        known = [one for one in (self.by_labour, self.by_machine) if one is not None]
        return min(known, default=None)

    @property
    def limit(self) -> str:
        """`labour`, `machine` or '': which of the two it is held by."""
        if self.by_labour is None and self.by_machine is None:
            return ""
        if self.by_machine is None or (self.by_labour is not None and self.by_labour <= self.by_machine):
            return "labour"
        return "machine"


@dataclass(frozen=True, slots=True)
class StationShare:
    """What a finished piece takes of one kind of station, and what a shift there gives of it alone."""

    station: str
    labour_min: float
    machine_min: float
    capacity: Capacity


@dataclass(frozen=True, slots=True)
class Week:
    """A newcomer's week: pieces finished in it, minutes a piece, and these ÷ the standard minutes."""

    number: int
    pieces: float
    minutes: float
    factor: float


@dataclass(frozen=True, slots=True)
class Tending:
    """An operation at a machine that paces itself, as one person with several machines sees it.

    service_s : work with the machine stopped, run_s : its run, other_s : what the operator owes inside it [s]
    machines  : how many one person can keep running in step, not rounded
    tended    : machines the station says one person looks after, 1 where it says nothing
    cycle_s   : of so many in step; interference : share of each machine's time lost to waiting when they call at random
    """

    operation: str
    service_s: float
    run_s: float
    other_s: float
    machines: float
    tended: int
    cycle_s: float
    interference: float
