"""A length in a message, in the plant's unit."""

from __future__ import annotations

from fractions import Fraction

from builder.checking.rule import Subject
from builder.model import Quantity, show_quantity


def length_words(subject: Subject, mm: float | Fraction) -> str:
    """`16.7 mm`, or `0.66 in` in a plant that works in inches."""
    return show_quantity(Quantity.of(Fraction(mm), "length", "mm"), subject.model.plant.units, both=False)
