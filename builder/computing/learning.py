"""Learning curves: how a piece's time falls as pieces are made, in both usual models, and a newcomer's first weeks.

    unit (Crawford)              : y_n = a·n^b          b = ln r ÷ ln 2, r the rate a doubling brings
    cumulative average (Wright)  : average of the first n = a·n^b, so T_n = a·n^(1 + b)

The two give different times of a piece for the same rate; every function says which it means.
Source: Boehmke and Freels, *Learning Curve Analysis* (2017), read; Groover, *Work Systems*, memory.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from builder.computing.spread import t_quantile
from builder.model import LearningFit, Week

_EXACT = 4096
"""Pieces summed one by one; beyond them the Euler–Maclaurin formula is exact to some 1e-13 of the sum: its first
left-out term, b(b − 1)(b − 2)/720·m^(b − 3) at m = _EXACT, is below 1e-13 of the first piece."""


def exponent(rate: float) -> float:
    """b of a rate: with each doubling of the pieces the time is `rate` times what it was. ValueError for rate ≤ 0.

    >>> round(exponent(0.8), 7)
    -0.3219281
    """
    return math.log(rate) / math.log(2)


def rate_of(b: float) -> float:
    """The rate of an exponent. Inverse of `exponent`."""
    return float(2.0**b)


def unit_time(rate: float, n: float, first: float, known: float = 1) -> float:
    """Unit model: time of piece n, when piece `known` took `first`: y_n = y_m·(n ÷ m)^b.

    >>> round(unit_time(0.85, 125, 100), 5)
    32.23647
    """
    return float(first * (n / known) ** exponent(rate))


def unit_total(rate: float, n: int, first: float, begin: int = 1) -> float:
    """Unit model: pieces `begin` to n together, `first` the time of piece 1. Exact; quick for millions.

    Σ a·k^b; far out by the Euler–Maclaurin formula, whose first left-out term is given with _EXACT.
    `begin` to n are whole and from 1 up; 0 when n is before `begin`.

    >>> round(unit_total(0.85, 125, 100), 3)
    5201.085
    """
    b = exponent(rate)
    if n - begin <= _EXACT:
        return float(first * math.fsum(k**b for k in range(begin, n + 1)))
    middle = max(begin, _EXACT)
    near = math.fsum(k**b for k in range(begin, middle))
    integral = _integral(b, middle, n)
    ends = (n**b + middle**b) / 2 + b * (n ** (b - 1) - middle ** (b - 1)) / 12
    return float(first * (near + integral + ends))


def unit_total_approximate(rate: float, n: int, first: float, begin: int = 1) -> float:
    """Unit model: the integral approximation a/(1 + b)·((n + ½)^(1 + b) − (begin − ½)^(1 + b)).

    >>> round(unit_total_approximate(0.85, 125, 100), 3)
    5202.988
    """
    return first * _integral(exponent(rate), begin - 0.5, n + 0.5)


def _integral(b: float, low: float, high: float) -> float:
    """∫ x^b dx. Written so that a rate at or near ½, where 1 + b is 0, loses no digits."""
    power, grown = 1 + b, math.log(high / low)
    return float(low**power * math.expm1(power * grown) / power) if power else grown


def average_total(rate: float, n: float, first: float, begin: float = 1) -> float:
    """Cumulative-average model: pieces `begin` to n together, a·(n^(1 + b) − (begin − 1)^(1 + b)).

    >>> round(average_total(0.85, 125, 100), 3)
    4029.559
    """
    power = 1 + exponent(rate)
    return float(first * (n**power - (begin - 1) ** power))


def average_unit_time(rate: float, n: float, first: float, known: float = 1) -> float:
    """Cumulative-average model: time of piece n itself, when piece `known` took `first`.

    >>> round(average_unit_time(0.85, 125, 100), 5)
    24.70136
    """
    power = 1 + exponent(rate)
    return float(first * (n**power - (n - 1) ** power) / (known**power - (known - 1) ** power))


def rate_from_total(total: float, first: float, n: float) -> float:
    """Cumulative-average model: the rate that makes the first n pieces take `total`. b = ln(T ÷ t) ÷ ln n − 1, n > 1.

    >>> round(rate_from_total(8250, 80, 250), 7)
    0.8947908
    """
    return rate_of(math.log(total / first) / math.log(n) - 1)


def fit_learning(pieces: Sequence[tuple[float, float]], confidence: float = 0.95) -> LearningFit | None:
    """Fit (piece number, time). None when fewer than two numbers differ. Textbook regression on logarithms."""
    points = [(math.log(number), math.log(time)) for number, time in pieces]
    n = len(points)
    if len({x for x, _ in points}) < 2:
        return None
    x_mean, y_mean = math.fsum(x for x, _ in points) / n, math.fsum(y for _, y in points) / n
    spread = math.fsum((x - x_mean) ** 2 for x, _ in points)
    slope = math.fsum((x - x_mean) * (y - y_mean) for x, y in points) / spread
    start = y_mean - slope * x_mean
    if n < 3:
        return LearningFit(math.exp(start), rate_of(slope), None, None, n)
    left = math.fsum((y - start - slope * x) ** 2 for x, y in points)
    residual = math.sqrt(left / (n - 2))
    half = t_quantile(confidence, n - 2) * residual / math.sqrt(spread)
    return LearningFit(math.exp(start), rate_of(slope), (rate_of(slope - half), rate_of(slope + half)), residual, n)


def newcomer_factor(rate: float, n: float, reached: float) -> float:
    """How many times the standard piece n takes somebody who reaches the standard with piece `reached`.

    Unit model, turned round: (min(n, reached) ÷ reached)^b; 1 from there on. Ours, after the unit model.

    >>> round(newcomer_factor(0.85, 1, 1024), 2), newcomer_factor(0.85, 2000, 1024)
    (5.08, 1.0)
    """
    return float((min(n, reached) / reached) ** exponent(rate))


def newcomer_weeks(
    rate: float, reached: float, standard_min: float, minutes_a_week: float, weeks: int
) -> Iterator[Week]:
    """The first weeks of a newcomer who works on nothing else.

    The sum over pieces taken as smooth: T(n) = s·reached^(−b)·n^(1 + b) ÷ (1 + b) up to `reached`, then s a piece.
    So it holds for both models: where piece `reached` takes the standard, they differ by the first few pieces alone.
    rate over ½, so that 1 + b > 0. A week that makes no part of a piece worth a number has no mean and is left out.
    """
    made = 0.0
    for number in range(1, weeks + 1):
        until = _made_after(number * minutes_a_week, rate, reached, standard_min)
        pieces, made = until - made, until
        if pieces > _NO_PIECE:
            minutes = minutes_a_week / pieces
            yield Week(number, pieces, minutes, minutes / standard_min)


_NO_PIECE = 1e-6
"""So small a part of a piece is none."""


def _made_after(minutes: float, rate: float, reached: float, standard_min: float) -> float:
    power = 1 + exponent(rate)
    learnt = standard_min * reached / power
    if minutes >= learnt:
        return reached + (minutes - learnt) / standard_min
    return float(reached * (minutes / learnt) ** (1 / power))
