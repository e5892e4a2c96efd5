"""Charts of a study's step: its values in order, and how often they occur."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from builder.model import (
    FLAGGED,
    OUT,
    CycleValue,
    LearningFit,
    StepStudy,
    show_number,
    show_percent,
    show_seconds,
)
from builder.view.chart import ChartMark, ChartPoint, CurvePoint, FitChart, Histogram, HistogramBar, RunChart

LEAST_FOR_BARS = 5
"""Fewer values say nothing by how often they occur."""
_MOST_BARS = 14


def run_chart(study: str, one: StepStudy) -> RunChart | None:
    """The values of a step in order; None for a single one."""
    if len(one.values) < 2:
        return None
    what = "seconds, rated" if one.rated else "seconds"
    odd, out = len(one.flagged()), len(one.left_out())
    also = f", {odd} of them odd" if odd else ""
    return RunChart(
        name=f"study-{study}-{one.step}-run",
        title=f"{one.step}: values in order",
        alt=f"{one.n} values of {one.step} in the order of the cycles{also}{f'; {out} kept out' if out else ''}. "
        f"Mean {show_seconds(one.basic_s, 2)}.",
        x_title="cycle",
        y_title=what,
        points=tuple(_point(value) for value in one.values),
        centre=(one.basic_s, f"mean {show_number(one.basic_s, 2, trim=False)}"),
        band=one.interval_s,
        marks=tuple(_marks(one.values)),
        width_mm=118.0,
    )


def _point(value: CycleValue) -> ChartPoint:
    label = _cycle(value) if value.state == FLAGGED else ""
    if value.state == OUT:
        label = f"{_cycle(value)}: {show_seconds(value.basic_s)}"
    return ChartPoint(float(value.number), value.basic_s, value.state, label)


def _cycle(value: CycleValue) -> str:
    return value.cycle or str(value.number)


def _marks(values: Sequence[CycleValue]) -> Iterator[ChartMark]:
    """Where another day or another operator begins."""
    before = None
    for value in values:
        now = (value.date, value.operator)
        if before is not None and now != before:
            changed = [new for old, new in zip(before, now, strict=True) if new != old and new]
            yield ChartMark(value.number - 0.5, ", ".join(changed))
        before = now


def histogram(study: str, one: StepStudy) -> Histogram | None:
    """How often values that count occur; None for few or equal ones."""
    counted = [value for value in one.values if value.state != OUT]
    low, high = min(value.basic_s for value in counted), max(value.basic_s for value in counted)
    if len(counted) < LEAST_FOR_BARS or low == high:
        return None
    step = bar_width(low, high, len(counted))
    first = math.floor(low / step + 1e-9)
    bars = [[0, 0] for _ in range(math.floor(high / step + 1e-9) - first + 1)]
    for value in counted:
        found = bars[math.floor(value.basic_s / step + 1e-9) - first]
        found[0] += 1
        found[1] += value.state == FLAGGED
    return Histogram(
        name=f"study-{study}-{one.step}-bars",
        title=f"{one.step}: how often",
        alt=f"How often values of {one.step} occur, from {show_seconds(low, 2)} to {show_seconds(high, 2)}.",
        x_title="seconds, rated" if one.rated else "seconds",
        y_title="cycles",
        bars=tuple(
            HistogramBar((first + n) * step, (first + n + 1) * step, count, odd) for n, (count, odd) in enumerate(bars)
        ),
        centre=(one.basic_s, f"mean {show_number(one.basic_s, 2, trim=False)}"),
        width_mm=68.0,
    )


def bar_width(low: float, high: float, count: int) -> float:
    """A pleasant width of bars, 1, 2 or 5 times a power of ten: about one and a half times √n of them, 14 at most.

    >>> bar_width(2.0, 4.0, 20)
    0.5
    """
    rough = (high - low) / min(1.5 * math.sqrt(count), _MOST_BARS - 1)
    power = 10.0 ** math.floor(math.log10(rough))
    return next(step * power for step in (1, 2, 5, 10) if step * power >= rough * (1 - 1e-9))


_PLACES = 16


def learning_words(fit: LearningFit) -> str:
    """How quickly the work was learnt."""
    span = ""
    if fit.interval is not None:
        span = f" ({show_percent(fit.interval[0], 0)} to {show_percent(fit.interval[1], 0)})"
    rate, first = show_percent(fit.rate, 0), show_seconds(fit.first)
    return f"As timed, a piece fell to {rate}{span} with each doubling of the pieces made; the first took {first}."


def learning_chart(study: str, pieces: Sequence[tuple[float, float]], fit: LearningFit) -> FitChart:
    """Whole cycles by the number of their piece, with the unit curve through them, on logarithmic axes."""
    low, high = min(number for number, _ in pieces), max(number for number, _ in pieces)
    numbers = [low * (high / low) ** (place / _PLACES) for place in range(_PLACES + 1)]
    apart = math.exp(fit.residual) if fit.residual is not None else 1.0
    return FitChart(
        name=f"study-{study}-learning",
        title="how the work was learnt",
        alt=learning_words(fit),
        x_title="piece",
        y_title="seconds a piece, as timed",
        points=tuple(ChartPoint(number, seconds) for number, seconds in pieces),
        curve=tuple(CurvePoint(n, fit.at(n) / apart, fit.at(n), fit.at(n) * apart) for n in numbers),
        log=True,
        width_mm=118.0,
    )
