"""The arithmetic of rounding, exact, and how a rounded number is written. Only shown.py uses it.

Single values are rounded half away from zero, as a person does it. Minus is U+2212.
"""

from __future__ import annotations

from fractions import Fraction

from builder.model.speech import tongue

MINUS = "\N{MINUS SIGN}"
SIXTEENTH = Fraction(1, 16)


def exact(value: float | Fraction) -> Fraction:
    """A float as the decimal a person would read (1.005, not 1.00499999...)."""
    return value if isinstance(value, Fraction) else Fraction(repr(float(value)))


def nearest(value: Fraction, step: Fraction) -> Fraction:
    """The nearest multiple of the step, half away from zero."""
    whole = (2 * abs(value) / step + 1) // 2 * step
    return -whole if value < 0 else whole


def down(value: Fraction, step: Fraction) -> Fraction:
    """The largest multiple of the step that is not above the value."""
    return value // step * step


def up(value: Fraction, step: Fraction) -> Fraction:
    """The smallest multiple of the step that is not below the value."""
    return -(-value // step) * step


def decimal(value: Fraction, digits: int, trim: bool) -> str:
    """The value with that many decimals; `trim` takes closing zeros away."""
    rounded = nearest(value, Fraction(1, 10**digits))
    figures = str(abs(rounded * 10**digits).numerator).zfill(digits + 1)
    text = f"{figures[:-digits]}.{figures[-digits:]}" if digits else figures
    if trim and digits:
        text = text.rstrip("0").rstrip(".")
    text = text.replace(".", tongue().decimal)
    return MINUS + text if rounded < 0 else text


def decimal_in_step(value: Fraction, step: Fraction) -> str:
    """A multiple of a decimal step (1, 1/10, 1/100 ...), written without closing zeros."""
    digits = max(len(str(step.denominator)) - 1, 0)
    return decimal(value, digits, True)


def mixed(value: Fraction) -> str:
    """A mixed fraction: 3/2 is `1 1/2`."""
    whole, part = divmod(abs(value), 1)
    text = f"{whole} {part}" if whole and part else str(part or whole)
    return MINUS + text if value < 0 else text


def in_step(value: Fraction, step: Fraction) -> str:
    """A multiple of the step, as a mixed fraction for sixteenths, else in decimals."""
    return mixed(value) if step == SIXTEENTH else decimal_in_step(value, step)
