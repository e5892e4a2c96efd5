"""How sure a mean is: spread, interval, readings still needed, odd readings and drift, from timed values alone.

Values are floats in one unit, in the order they were taken. Quantiles of t come from scipy. What a value means and
which of them count is not known here.
"""

from __future__ import annotations

import math
from bisect import bisect_left, bisect_right, insort
from collections import Counter
from collections.abc import Sequence
from functools import lru_cache
from statistics import NormalDist, median

OUTLIER_Z = 3.5
"""A modified z above this flags a value."""

DRIFT_LEAST = 10
"""Fewest values a trend is looked for in."""

NEEDED_LIMIT = 10**7
"""Nobody times more cycles than this; a count that would be larger is this."""


def mean(values: Sequence[float]) -> float:
    """Arithmetic mean of at least one value."""
    return math.fsum(values) / len(values)


def sample_sd(values: Sequence[float]) -> float | None:
    """Standard deviation with divisor n − 1; None for one value.

    >>> sample_sd([2.0, 4.0, 6.0])
    2.0
    """
    if len(values) < 2:
        return None
    centre = mean(values)
    return math.sqrt(math.fsum((value - centre) ** 2 for value in values) / (len(values) - 1))


@lru_cache(maxsize=4096)
def t_quantile(confidence: float, freedom: float) -> float:
    """Two-sided quantile of Student's t: |t| exceeds it with the chance 1 − confidence.

    >>> round(t_quantile(0.95, 24), 3)
    2.064
    """
    from scipy.special import stdtrit

    return float(stdtrit(freedom, 0.5 + confidence / 2))


@lru_cache(maxsize=64)
def z_quantile(confidence: float) -> float:
    """Two-sided quantile of the normal distribution.

    >>> round(z_quantile(0.95), 2)
    1.96
    """
    return NormalDist().inv_cdf(0.5 + confidence / 2)


def interval(centre: float, sd: float | None, n: int, confidence: float) -> tuple[float, float] | None:
    """Confidence interval of a mean: centre ∓ t·s/√n; None for one value. Textbook identity."""
    if sd is None or n < 2:
        return None
    half = t_quantile(confidence, n - 1) * sd / math.sqrt(n) if sd else 0.0
    return centre - half, centre + half


def readings_t_iterated(centre: float, sd: float, within: float, confidence: float) -> int:
    """Smallest n ≥ 2 with t(n − 1)·s/√n ≤ within·mean. At most NEEDED_LIMIT.

    within : the share of the mean the interval may lie to either side, above 0; centre > 0
    Source: Niebel, *Motion and Time Study*, memory.

    >>> readings_t_iterated(20, 2, 0.05, 0.95)
    18
    """

    def enough(n: int) -> bool:
        return t_quantile(confidence, n - 1) * sd <= within * centre * math.sqrt(n)

    high = 2
    while not enough(high):
        if high >= NEEDED_LIMIT:
            return NEEDED_LIMIT
        high = min(high * 2, NEEDED_LIMIT)
    low = max(high // 2, 1)  # not enough, or below the least
    while high - low > 1:
        middle = (low + high) // 2
        low, high = (low, middle) if enough(middle) else (middle, high)
    return high


def readings_t_pilot(centre: float, sd: float, pilot: int, within: float, confidence: float) -> float:
    """n = (t(pilot − 1)·s/(within·mean))², not rounded. Source: Niebel, memory.

    >>> round(readings_t_pilot(20, 2, 15, 0.05, 0.95), 1)
    18.4
    """
    return (t_quantile(confidence, pilot - 1) * sd / (within * centre)) ** 2


def readings_normal(centre: float, sd: float, within: float, z: float) -> float:
    """n = (z·s/(within·mean))², not rounded; with within·mean an absolute error as well. Textbook formula.

    >>> round(readings_normal(20, 2, 0.05, 1.96), 1)
    15.4
    """
    return (z * sd / (within * centre)) ** 2


def readings_root(values: Sequence[float], factor: float = 40.0) -> float:
    """n = (factor·√(n′Σx² − (Σx)²)/Σx)², not rounded: the 40√ form, 2 standard deviations with divisor n, ± 5 %.

    The factor 20 is for ± 10 %. Source: ILO, *Introduction to Work Study*, memory.

    >>> round(readings_root([7, 6, 7, 7, 6]), 2)
    8.82
    """
    total = math.fsum(values)
    squares = math.fsum(value * value for value in values)
    return factor**2 * max(len(values) * squares - total**2, 0.0) / total**2


def modified_z(values: Sequence[float]) -> list[float] | None:
    """0.6745·(x − median)/MAD of each value; None where the MAD is 0, which flags nothing.

    MAD is the median of the distances from the median. Source: Iglewicz and Hoaglin, quoted in several texts, read.

    >>> [round(z, 1) for z in modified_z([20, 21, 19, 20, 22, 20, 30])]
    [0.0, 0.7, -0.7, 0.0, 1.3, 0.0, 6.7]
    """
    if not values:
        return None
    centre = median(values)
    deviation = median(abs(value - centre) for value in values)
    return [0.6745 * (value - centre) / deviation for value in values] if deviation > 0 else None


def drift_z(values: Sequence[float]) -> float | None:
    """Mann–Kendall's z of a trend: above 0 where values grow. None under DRIFT_LEAST values, 0 where all are equal.

    S = Σ sign(x_j − x_i) over i < j; variance (n(n − 1)(2n + 5) − Σ t(t − 1)(2t + 5))/18 with ties of t values;
    z = (S ∓ 1)/√variance. Source: Mann 1945 and Kendall 1975 as in texts on trends, memory.
    """
    n = len(values)
    if n < DRIFT_LEAST:
        return None
    before: list[float] = []
    total = 0
    for value in values:
        total += bisect_left(before, value) - (len(before) - bisect_right(before, value))
        insort(before, value)
    ties = sum(t * (t - 1) * (2 * t + 5) for t in Counter(values).values())
    variance = (n * (n - 1) * (2 * n + 5) - ties) / 18
    if variance <= 0 or total == 0:
        return 0.0
    return (total - math.copysign(1, total)) / math.sqrt(variance)


_CYCLES = (
    (0.10, 200),
    (0.25, 100),
    (0.50, 60),
    (0.75, 40),
    (1.00, 30),
    (2.00, 20),
    (5.00, 15),
    (10.00, 10),
    (20.00, 8),
    (40.00, 5),
)


def recommended_cycles(minutes: float) -> int:
    """How many cycles are usually timed of work that nobody has timed yet, by the length of its cycle [min].

    Between two lines of the table the one for the longer cycle counts; over 40 min it is 3. Source: time study manual
    of a large electrical maker (1940s), as printed in Niebel, *Methods, Standards, and Work Design*, memory.

    >>> recommended_cycles(0.5), recommended_cycles(3), recommended_cycles(50)
    (60, 15, 3)
    """
    return next((cycles for longest, cycles in _CYCLES if minutes <= longest), 3)
