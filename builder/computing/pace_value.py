"""A constant of the machine model as a plain number."""

from __future__ import annotations

from builder.model import Quantity


def pace_value(quantity: Quantity | None) -> float:
    """A constant in base units (mm, s, mm/s, stitches/s); 0 where the station doesn't state it."""
    return float(quantity.value) if quantity is not None else 0.0
