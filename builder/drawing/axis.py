"""Axes of charts: pleasant ticks, and where a value lies on paper."""

from __future__ import annotations

import math
from dataclasses import dataclass

from builder.model import show_number

_STEPS = (1.0, 2.0, 5.0)
_MOST_DECADES = 8


@dataclass(frozen=True, slots=True)
class Axis:
    """A stretch of values along a stretch of paper; `log` for a logarithmic one.

    start, end : where low and high lie on paper, mm; end < start for an axis that grows upward
    """

    low: float
    high: float
    start: float
    end: float
    log: bool = False

    def at(self, value: float) -> float:
        """Where a value lies on paper, mm."""
        low, high, here = (math.log(v) if self.log else v for v in (self.low, self.high, value))
        return self.start + (here - low) / (high - low) * (self.end - self.start)


def tick_step(low: float, high: float, most: int) -> float:
    """The smallest of 1, 2, 5 times a power of ten that needs at most so many steps.

    >>> tick_step(0, 17, 5), tick_step(2.8, 4.1, 6)
    (5.0, 0.5)
    """
    rough = (high - low) / max(most, 1)
    power = 10.0 ** math.floor(math.log10(rough))
    for step in (*_STEPS, 10.0):
        if step * power >= rough * (1 - 1e-9):
            return step * power
    raise AssertionError("ten times a power of ten is always enough")


def linear_ticks(low: float, high: float, most: int, whole: bool = False) -> list[tuple[float, str]]:
    """Ticks inside a range with their words. `whole`: only whole numbers, as counts are."""
    step = tick_step(low, high, most)
    if whole:
        step = max(step, 1.0)
    digits = max(0, -math.floor(math.log10(step) + 1e-9))
    first, last = math.ceil(low / step - 1e-9), math.floor(high / step + 1e-9)
    return [(n * step, show_number(n * step, digits, trim=False)) for n in range(first, last + 1)]


def log_ticks(low: float, high: float, most: int) -> list[tuple[float, str]]:
    """Ticks at 1, 2, 5 times powers of ten inside a range; only the powers where that would be too many."""
    powers = range(math.floor(math.log10(low)), math.ceil(math.log10(high)) + 1)
    found = [step * 10.0**power for power in powers for step in _STEPS]
    inside = [value for value in found if low * (1 - 1e-9) <= value <= high * (1 + 1e-9)]
    if len(inside) > most:
        inside = [value for value in inside if math.isclose(math.log10(value) % 1, 0, abs_tol=1e-9)][:_MOST_DECADES]
    return [(value, show_number(value, max(0, -math.floor(math.log10(value))))) for value in inside]


def padded(values: list[float], share: float = 0.06) -> tuple[float, float]:
    """A range that holds all values with some room; of equal values one around them."""
    low, high = min(values), max(values)
    room = (high - low) * share or abs(low) * 0.2 or 1.0
    return low - room, high + room
