"""The chart of a variable element: its steps against their length or corners, and the line through them."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Literal

from builder.computing import fit_half, fitted
from builder.model import Element, ElementData, ElementStep, Fit, show_number, show_seconds, span_words
from builder.view.chart import ChartPoint, CurvePoint, FitChart

Units = Literal["mm", "in"]

_PLACES = 24
_MM_AN_INCH = 25.4


def element_chart(element: Element, data: ElementData, units: Units) -> FitChart | None:
    """What the chart of an element says; None for one without a fit.

    With length and corners the line stands at the middle of the corners; the points lie where they were timed. A step
    is named where it lies further off than steps do on average: there an engineer looks.
    """
    fit = data.fit
    if fit is None:
        return None
    variable = fit.variables[0]
    scale = _MM_AN_INCH if variable == "length" and units == "in" else 1.0
    title = {"length": f"length, {'in' if scale > 1 else 'mm'}", "corners": "corners"}[variable]
    return FitChart(
        name=f"element-{data.element}",
        title=element.title,
        alt=_alt(data, fit, units),
        x_title=title,
        y_title="seconds, rated",
        points=tuple(_point(step, fit, scale) for step in data.steps),
        curve=tuple(_curve(fit, scale)),
        width_mm=118.0,
        height_mm=70.0,
    )


def _point(step: ElementStep, fit: Fit, scale: float) -> ChartPoint:
    row = tuple(step.variable(name) or 0.0 for name in fit.variables)
    far = abs(step.seconds - fitted(fit, row)) > fit.residual_sd_s
    return ChartPoint(row[0] / scale, step.seconds, label=step.name if far else "")


def _curve(fit: Fit, scale: float) -> Iterator[CurvePoint]:
    low, high = fit.ranges[0]
    for place in range(_PLACES + 1):
        x = low + (high - low) * place / _PLACES
        row = (x, *fit.middle[1:])
        middle, half = fitted(fit, row), fit_half(fit, row)
        yield CurvePoint(x / scale, middle - half, middle, middle + half)


def _alt(data: ElementData, fit: Fit, units: Units) -> str:
    spans = " and ".join(span_words(name, span, units) for name, span in zip(fit.variables, fit.ranges, strict=True))
    return f"{len(data.steps)} steps, {data.readings} readings, of {spans}. {fit_words(fit, units)}."


def fit_words(fit: Fit, units: Units) -> str:
    """The line in words: `1.3 s + 1.61 s for each 100 mm`."""
    words = show_seconds(fit.coefficients[0].value, 2)
    for one in fit.coefficients[1:]:
        step, each = (1.0, "each corner") if one.of == "corners" else _length_step(units)
        value = one.value * step
        words += f" {'-' if value < 0 else '+'} {show_number(abs(value), 2, trim=False)} s for {each}"
    return words


def _length_step(units: Units) -> tuple[float, str]:
    """A length people can picture, and its words."""
    if units == "in":
        return 4 * _MM_AN_INCH, "each 4 in"
    return 100.0, "each 100 mm"
