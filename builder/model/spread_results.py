"""How sure a product's standard time is, what makes it unsure, and what to time next."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class SpreadPart:
    """What one source of time adds to a product, all its uses together, because they err together.

    source    : as in TimePart, or `allowances`
    minutes   : standard minutes that come from it
    error_min : one standard deviation of them
    share     : of the product's variance, 0 to 1
    half_min  : half the width of the interval, were this the only source
    """

    source: str
    minutes: float
    error_min: float
    share: float
    estimated: bool
    half_min: float = 0.0


@dataclass(frozen=True, slots=True)
class NextStudy:
    """A study of an operation that would narrow the product's interval.

    cycles, minutes : to be timed, and how long that takes at the standard pace
    gain            : share it would remove of the variance that studies can narrow: all but ratings and allowances
    """

    operation: str
    cycles: int
    minutes: float
    gain: float


@dataclass(frozen=True, slots=True)
class Spread:
    """The interval of a product's standard minutes, and where its width comes from.

    parts           : the widest first
    estimates_width : how much narrower the interval would be if every estimate were exact, 0 to 1
    following       : what to time next, most variance a minute of study first
    """

    low_min: float
    high_min: float
    confidence: float
    parts: tuple[SpreadPart, ...]
    estimates_width: float
    following: tuple[NextStudy, ...]
