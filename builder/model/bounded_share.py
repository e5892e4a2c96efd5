"""Shares of a shift and the learning rate: shares that mean nothing beyond their bounds, so a text there is refused.

The bounds are those of the formulas that use them; what is plausible in a plant is no matter of this file.
"""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction
from typing import Annotated, get_args

from builder.errors import TextFault
from builder.model.quantity import parse_quantity
from builder.model.typed import Share, TextType

_SHARE: TextType = get_args(Share)[1]
"""The type of any share: its schema is that of the bounded ones too."""

LEAST_RATE = Fraction(1, 2)
"""At this rate all pieces after the first together take no time (cumulative average); below, less than none."""


def _some(text: str) -> Fraction:
    value = parse_quantity(text, "share").value
    if value <= 0:
        raise TextFault("with 0 % nothing is ever made", 0, "Write more than 0 %, or leave the line out")
    return value


def _some_of_all(text: str) -> Fraction:
    value = _some(text)
    if value > 1:
        raise TextFault("this is a share of the shift, so 100 % is the most", 0, "Write 100 % or less")
    return value


def _not_all(text: str) -> Fraction:
    value = parse_quantity(text, "share").value
    if value >= 1:
        raise TextFault("this leaves no time to work on standard", 0, "Write less than 100 %")
    return value


def _rate(text: str) -> Fraction:
    value = parse_quantity(text, "share").value
    if not LEAST_RATE < value <= 1:
        words = "a learning rate lies above 50 % and is 100 % at most"
        raise TextFault(words, 0, "Write what the time falls to with each doubling, not what it falls by")
    return value


def _bounded(read: Callable[[str], Fraction], example: str) -> TextType:
    return TextType(read, _SHARE.accepts, _SHARE.words, _SHARE.types, _SHARE.pattern, (example,))


Performance = Annotated[Fraction, _bounded(_some, "88 %")]
"""Above 0; a plant may do better than the standard."""
Availability = Annotated[Fraction, _bounded(_some_of_all, "94 %")]
"""Above 0, 1 at most."""
LostShare = Annotated[Fraction, _bounded(_not_all, "7 %")]
"""From 0, below 1."""
LearningRate = Annotated[Fraction, _bounded(_rate, "85 %")]
"""Above 1/2, 1 at most: what a time falls to with each doubling of the pieces."""
