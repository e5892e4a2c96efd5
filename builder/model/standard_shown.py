"""Words for the plant's standard data: how much of a variable, why a step's readings don't count, why no time."""

from __future__ import annotations

from fractions import Fraction

from builder.model.quantity import Quantity
from builder.model.shown import show_number, show_quantity
from builder.model.shown_units import First
from builder.model.standard_results import ElementStep, Interval, Refusal

_WHY = {
    "no operation": "no operation names the study under `times:`",
    "other work": "the study's head names another operation",
    "machine run": "they hold the run of the machine, not hand work alone",
    "left out": "every one is left out",
    "no length": "nothing says how long what it works on is",
}


def variable_words(variable: str, value: float, units: First) -> str:
    """`384 mm` of a length, `4 corners`."""
    if variable == "corners":
        return f"{show_number(value, 0)} {'corner' if round(value) == 1 else 'corners'}"
    return show_quantity(Quantity.of(round(Fraction(value)), "length", "mm"), units, both=False)


def span_words(variable: str, span: Interval, units: First) -> str:
    """`130 mm to 564 mm`, `0 to 4 corners`."""
    low, high = span
    first = show_number(low, 0) if variable == "corners" else variable_words(variable, low, units)
    return f"{first} to {variable_words(variable, high, units)}"


def left_out_words(step: ElementStep) -> str:
    """Why the readings of a step don't count."""
    return f"the readings of {step.name} don't count: {_WHY[step.why]}"


def refusal_words(refusal: Refusal, steps: int, units: First) -> str:
    """Why no time can be derived from so many steps."""
    if refusal.kind == "few steps":
        timed = "1 step is" if steps == 1 else f"{steps} steps are"
        return f"{timed} timed, and a time that varies needs {refusal.needed}"
    if refusal.kind == "hardly varies":
        span = span_words(refusal.variable, (refusal.low, refusal.high), units)
        return f"its {refusal.variable} hardly varies among the steps: {span}"
    if refusal.kind == "vary together":
        return "length and corners grow together among the steps, so neither can be told from the other"
    if refusal.kind == "not above zero":
        return "the line through the steps falls to nothing inside its own range"
    return "none of its steps has readings that count"
