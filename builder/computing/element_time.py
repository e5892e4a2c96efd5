"""What a step's `time: ELEMENT` takes: as typed, pooled from readings, or fitted at the step's own length."""

from __future__ import annotations

from builder.computing.line_fit import Row, clamped, fit_half, fitted
from builder.computing.spread import z_quantile
from builder.computing.step_bench import Bench
from builder.computing.step_extent import step_extent
from builder.model import Beyond, ElementData, ElementUse, Fit, Step, TimePart

_A_HAIR = 1e-6  # the end of a range, in floating point


def element_part(step: Step, used: ElementUse, bench: Bench) -> tuple[TimePart | None, Beyond | None]:
    """A step's hand work by a line of the element table, and where that line was fitted with other work.

    None for an element nobody knows, or that its studies say too little of; both are findings.
    """
    element = bench.model.elements.get(used.name)
    if element is None:
        return None, None
    source, count = f"element:{used.name}", float(used.count)
    if element.time is not None:
        seconds = count * float(element.time.value)
        error = bench.sure.of_element(element, seconds)
        return TimePart(source, seconds, error, False, element.basis == "estimate"), None
    data = bench.standard.get(used.name)
    if data is None or (data.pooled is None and data.fit is None):
        return None, None
    seconds, known_error, beyond = _derived(data, step, bench)
    seconds *= count
    # A single reading tells no error, and beyond its range a fit is a guess.
    guessed = known_error is None or beyond is not None
    error = bench.sure.of_guess(seconds) if known_error is None or beyond is not None else count * known_error
    return TimePart(source, seconds, error, False, guessed, rated=True), beyond


def _derived(data: ElementData, step: Step, bench: Bench) -> tuple[float, float | None, Beyond | None]:
    """Seconds once, one standard deviation of them, and what lies beyond the fit."""
    if data.pooled is not None:
        return data.pooled.mean_s, data.pooled.error_s, None
    assert data.fit is not None
    row, beyond = _at(data.element, data.fit, step, bench)
    error = fit_half(data.fit, row) / z_quantile(bench.sure.precision.confidence)
    return fitted(data.fit, row), error, beyond


def _at(element: str, fit: Fit, step: Step, bench: Bench) -> tuple[Row, Beyond | None]:
    """Where the fit is read: at the step's own values, at the nearest end of their range, in its middle for unknown."""
    extent = step_extent(step, bench)
    values, beyond = [], None
    for variable, (low, high), middle in zip(fit.variables, fit.ranges, fit.middle, strict=True):
        value = extent.of(variable)
        values.append(middle if value is None else value)
        outside = value is None or not low - _A_HAIR <= value <= high + _A_HAIR
        if outside and beyond is None:
            beyond = Beyond(element, variable, value, low, high)
    return clamped(fit, tuple(values)), beyond
