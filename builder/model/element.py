"""The plant's own table of element times."""

from __future__ import annotations

import datetime
from typing import Literal

from builder.model.base import Noun, Text
from builder.model.typed import LengthRange, Share, Time


class Element(Noun):
    """An element of work timed once and used in many operations. `time` is a basic time, without allowance.

    basis : studied, or estimate until somebody times it
    range : how far the time may be off, either side, 95 times in 100; the plant's default when left out
    longest_side : sizes of pieces it was timed with; it says nothing about others
    """

    title: Text
    time: Time
    basis: Literal["studied", "estimate"]
    range: Share | None = None
    longest_side: LengthRange | None = None
    readings: Text | None = None
    date: datetime.date | None = None
