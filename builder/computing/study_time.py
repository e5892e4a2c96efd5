"""Basic times from a study's readings."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction


def basic_time(readings: Sequence[tuple[Fraction, Fraction]], rated: bool) -> Fraction:
    """Mean of reading × rating ÷ 100, reading by reading; the rating of a machine-paced reading doesn't count [s].

    readings : (seconds, rating in percent), at least one
    Source: ILO, *Introduction to Work Study*, memory.

    >>> basic_time([(Fraction(4), Fraction(85)), (Fraction(4), Fraction(115))], rated=True)
    Fraction(4, 1)
    """
    if not readings:
        raise ValueError("a basic time needs a reading")
    rating_sum = sum((seconds * (rating / 100 if rated else 1) for seconds, rating in readings), Fraction(0))
    return rating_sum / len(readings)
