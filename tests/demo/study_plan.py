"""What a made-up time study is planned from: its elements, what happened in it, its head. No readings here."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field


@dataclass(frozen=True)
class Element:
    """One step of the work: its basic time [s], the share it varies by, and the cycles it occurs in (all if empty).

    paced : the machine paces it, so its reading doesn't follow the operator and is rated 100
    """

    step: str
    basic: float
    spread: float
    cycles: Sequence[int] = ()
    paced: bool = False


@dataclass(frozen=True)
class Event:
    """What happened to one reading: seconds more, and the observer's note."""

    step: str
    cycle: int
    extra: float
    note: str


@dataclass(frozen=True)
class Plan:
    """A study to be made: its head, its elements in order, its events."""

    name: str
    seed: int
    cycles: int
    head: dict[str, str]
    elements: Sequence[Element]
    events: Sequence[Event] = field(default=())
