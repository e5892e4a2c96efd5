"""What a study says, step by step: plain numbers, as timed and rated, and how sure they are."""

from __future__ import annotations

import math
from dataclasses import dataclass

KEPT, FLAGGED, OUT = "kept", "flagged", "out"
NEEDED_METHODS = ("t iterated", "t pilot", "normal", "40 root")
"""Forms of the number of readings needed; the first is the default."""


@dataclass(frozen=True, slots=True)
class Precision:
    """What a plant asks of a mean: it lies within a share of itself, with this confidence, counted by this form."""

    within: float = 0.05
    confidence: float = 0.95
    method: str = NEEDED_METHODS[0]


@dataclass(frozen=True, slots=True)
class CycleValue:
    """One cycle's value of a step: all its occurrences in that cycle added, pieces divided out.

    number    : running number in the study, from 1
    seconds   : as timed; basic_s : × rating ÷ 100, or as timed where the machine paces itself
    state     : kept | flagged (an outlier, still counted) | out (its note says why)
    z         : modified z of basic_s among the counted, None where none can be said
    rows      : how many rows of the study it adds up
    """

    number: int
    cycle: str
    seconds: float
    basic_s: float
    rating: float
    state: str
    note: str
    date: str
    operator: str
    line: int
    z: float | None = None
    rows: int = 1


@dataclass(frozen=True, slots=True)
class StepStudy:
    """All that a study says of one step. Flagged values count, those that are out don't.

    n           : cycles that count
    mean_s, sd_s, variation : of the values as timed; sd (n − 1) and coefficient of variation None for one value
    rating      : mean rating, percent; basic_sd_s : sd of reading × rating ÷ 100
    interval_s  : confidence interval of basic_s, None for one value
    needed      : readings needed by `method`, None where one value says nothing about it
    more_needed : those still missing, at least 1 after a single reading
    drift       : Mann–Kendall's z, None under ten values; drifts : it lies beyond 5 %, two-sided
    comparable  : the readings differ enough for outliers to be told; else none is flagged
    rated       : ratings count; a machine that paces itself is never rated
    rows_a_cycle : occurrences of the step in a cycle, on average
    """

    step: str
    values: tuple[CycleValue, ...]
    n: int
    mean_s: float
    sd_s: float | None
    variation: float | None
    rating: float
    basic_s: float
    basic_sd_s: float | None
    interval_s: tuple[float, float] | None
    needed: int | None
    more_needed: int
    method: str
    drift: float | None
    drifts: bool
    comparable: bool
    rated: bool
    rows_a_cycle: float = 1.0

    def flagged(self) -> tuple[CycleValue, ...]:
        """Outliers that still count."""
        return tuple(one for one in self.values if one.state == FLAGGED)

    def left_out(self) -> tuple[CycleValue, ...]:
        """Values their note keeps out."""
        return tuple(one for one in self.values if one.state == OUT)

    @property
    def error_s(self) -> float | None:
        """Standard error of the basic time [s], None for one value."""
        return None if self.basic_sd_s is None else self.basic_sd_s / self.n**0.5


@dataclass(frozen=True, slots=True)
class ForeignElement:
    """What was timed and is no part of the work."""

    cycle: str
    seconds: float
    note: str
    line: int


@dataclass(frozen=True, slots=True)
class LearningFit:
    """A unit curve through timed pieces: y = first·n^b, by least squares of the logarithms.

    interval : of the rate, None under three pieces
    residual : standard deviation of ln y about the line, None under three pieces
    """

    first: float
    rate: float
    interval: tuple[float, float] | None
    residual: float | None
    n: int

    def at(self, number: float) -> float:
        """Time of a piece."""
        return float(self.first * number ** math.log2(self.rate))


@dataclass(frozen=True, slots=True)
class StudySummary:
    """A whole study: its steps in the order they were first read, and what was kept out as foreign.

    cycles : how many the study holds
    learning : how the time of a whole cycle fell over several days, as timed; None for a study of one day
    pieces   : what it was fitted to: number of the piece, seconds
    """

    name: str
    steps: tuple[StepStudy, ...]
    foreign: tuple[ForeignElement, ...]
    cycles: int
    learning: LearningFit | None = None
    pieces: tuple[tuple[float, float], ...] = ()

    def step(self, name: str) -> StepStudy | None:
        """What it says of a step."""
        return next((one for one in self.steps if one.step == name), None)
