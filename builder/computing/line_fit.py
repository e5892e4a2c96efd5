"""A straight line through the times of steps: constant + slope · length (+ slope · corners), and when there is none.

Each step is one point, weighted by its readings, so that the steps' own differences make the intervals, however
often each of them was timed. numpy and scipy are imported where used.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

from builder.computing.spread import mean, t_quantile
from builder.model import Coefficient, Fit, Refusal

Row = tuple[float, ...]
"""Values of the variables at one step, in their order."""

LEAST_SPAN = 0.2
"""A variable spans at least this share of its largest value; less can't tell a slope from scatter. Ours, no source."""
MOST_ALIKE = 0.98
"""Two variables that correlate more than this can't be told apart. Ours, no source."""


def fit_refusal(rows: Sequence[Row], variables: Sequence[str]) -> Refusal | None:
    """Why no line can be drawn through steps with these variables; None when one can."""
    needed = len(variables) + 2
    if len(rows) < needed:
        return Refusal("few steps", needed=needed)
    for name, column in zip(variables, zip(*rows, strict=True), strict=True):
        low, high = min(column), max(column)
        if high - low < LEAST_SPAN * high or high <= 0:
            return Refusal("hardly varies", name, low, high)
    if len(variables) == 2 and abs(_correlation(rows)) > MOST_ALIKE:
        return Refusal("vary together")
    return None


def _correlation(rows: Sequence[Row]) -> float:
    first, second = ([value - mean(column) for value in column] for column in zip(*rows, strict=True))
    product = math.fsum(a * b for a, b in zip(first, second, strict=True))
    return product / math.sqrt(math.fsum(a * a for a in first) * math.fsum(b * b for b in second))


def fit_line(
    rows: Sequence[Row], seconds: Sequence[float], weights: Sequence[float], variables: Sequence[str], confidence: float
) -> Fit:
    """Weighted least squares: the coefficients that make Σ w·(t − b·x)² least.

    s² = Σ w·r²/(k − p), covariance = s²·(XᵀWX)⁻¹, intervals by t(k − p); k steps, p coefficients. Weights are scaled
    to the mean 1, so s is the spread of a step timed as often as these are on average.
    rows, seconds, weights : of each step; weights > 0. Raises ValueError when `fit_refusal` has a reason.
    Source: weighted linear regression, textbook.

    >>> fit = fit_line([(1.0,), (2.0,), (3.0,)], [3.0, 5.0, 7.0], [1, 1, 1], ["length"], 0.95)
    >>> [round(one.value, 6) for one in fit.coefficients]
    [1.0, 2.0]
    """
    if (refusal := fit_refusal(rows, variables)) is not None:
        raise ValueError(f"no line: {refusal.kind}")
    solved = _solved(rows, seconds, weights)
    quantile = t_quantile(confidence, solved.freedom)
    halves = [quantile * math.sqrt(max(line[number], 0.0)) for number, line in enumerate(solved.covariance)]
    found = Fit(
        tuple(
            Coefficient(name, value, (value - half, value + half))
            for name, value, half in zip(("constant", *variables), solved.values, halves, strict=True)
        ),
        tuple((min(column), max(column)) for column in zip(*rows, strict=True)),
        solved.covariance,
        math.sqrt(solved.square),
        solved.freedom,
        solved.r2,
        quantile,
    )
    return replace(found, middle_s=fitted(found, found.middle), middle_half_s=fit_half(found, found.middle))


@dataclass(frozen=True, slots=True)
class _Solved:
    """Coefficients, their covariance, s², its freedom, and the share of the spread explained."""

    values: tuple[float, ...]
    covariance: tuple[tuple[float, ...], ...]
    square: float
    freedom: int
    r2: float


def _solved(rows: Sequence[Row], seconds: Sequence[float], weights: Sequence[float]) -> _Solved:
    import numpy as np

    design = np.array([(1.0, *row) for row in rows])
    times, weight = np.array(seconds, dtype=float), np.array(weights, dtype=float)
    weight = weight / weight.mean()
    root = np.sqrt(weight)
    # Columns are brought to like size first: a length of 800 beside a 1 would cost half the digits.
    scale = np.abs(design).max(axis=0)
    scaled = design * root[:, None] / scale
    values = np.linalg.lstsq(scaled, times * root, rcond=None)[0] / scale
    freedom = len(rows) - design.shape[1]
    left = times - design @ values
    square = float(weight @ left**2) / freedom
    covariance = square * np.linalg.inv(scaled.T @ scaled) / np.outer(scale, scale)
    about = times - float(weight @ times) / len(rows)
    total = float(weight @ about**2)
    r2 = 1.0 - square * freedom / total if total > 0 else 1.0
    lines = tuple(tuple(float(one) for one in line) for line in covariance)
    return _Solved(tuple(float(one) for one in values), lines, square, freedom, r2)


def clamped(fit: Fit, row: Row) -> Row:
    """The nearest values a fit was made with: it is never extrapolated."""
    return tuple(min(max(value, low), high) for value, (low, high) in zip(row, fit.ranges, strict=True))


def fitted(fit: Fit, row: Row) -> float:
    """The fitted time [s] there. Raises ValueError outside the ranges of the fit."""
    if any(not low - _hair(high) <= value <= high + _hair(high) for value, (low, high) in _paired(fit, row)):
        raise ValueError("a fit says nothing beyond what was timed")
    return math.fsum(one.value * x for one, x in zip(fit.coefficients, (1.0, *row), strict=True))


def _paired(fit: Fit, row: Row) -> list[tuple[float, tuple[float, float]]]:
    return list(zip(row, fit.ranges, strict=True))


def _hair(value: float) -> float:
    return 1e-9 * max(abs(value), 1.0)


def fit_half(fit: Fit, row: Row) -> float:
    """Half the interval of the fitted time there [s]: t·√(xᵀCx)."""
    return fit.quantile * math.sqrt(max(_variance(fit, row), 0.0))


def prediction_half(fit: Fit, row: Row) -> float:
    """Half the interval for the mean of one more step there [s], timed as often as these: t·√(s² + xᵀCx)."""
    return fit.quantile * math.sqrt(fit.residual_sd_s**2 + max(_variance(fit, row), 0.0))


def _variance(fit: Fit, row: Row) -> float:
    x = (1.0, *row)
    return math.fsum(
        a * b * cell for a, line in zip(x, fit.covariance, strict=True) for b, cell in zip(x, line, strict=True)
    )
