"""Dimensions of rows and grids: the whole row in one line, `4 × 25 mm = 100 mm (3 15/16 in)`, and what is between two
of it where the distance is worked to.
"""

from __future__ import annotations

from builder.geometry import FeatureShape, Point, first_of_row, row_ways
from builder.model import Quantity, Row, show_quantity

CHAINED = ("pitch", "row-pitch")
"""Own dimensions of a feature that repeat."""


def gaps_of(feature: FeatureShape, dimension: str) -> int:
    """How many times a dimension of a feature repeats, 0 for what doesn't."""
    row = feature.feature
    if not isinstance(row, Row) or dimension not in CHAINED:
        return 0
    return (row.count if dimension == "pitch" else row.rows) - 1


def chain_line(feature: FeatureShape, dimension: str, whole: bool) -> tuple[Point, Point, Point] | None:
    """Start, end and the direction away of a row's pitch: from the first to the last of it, or to the second."""
    row, gaps = feature.feature, gaps_of(feature, dimension)
    if not gaps or not isinstance(row, Row):
        return None
    along, aside = row_ways(row)
    first = first_of_row(feature, 0)
    if dimension == "pitch":
        # Beside the row on the side where no other rows follow, below or to the right where there are none.
        grows = _dot(_step(first, first_of_row(feature, -1)), aside) if row.rows > 1 else _sideways(aside)
        away = aside if grows < 0 else (-aside[0], -aside[1])
        return first, feature.points[gaps if whole else 1], away
    last = first_of_row(feature, -1 if whole else 1)
    return first, last, (-along[0], -along[1])


def _sideways(aside: Point) -> float:
    """A single row's dimension stands below it, or to its right."""
    return 1.0 if aside[1] > 0.5 else -1.0


def _step(start: Point, end: Point) -> Point:
    return end[0] - start[0], end[1] - start[1]


def _dot(a: Point, b: Point) -> float:
    return a[0] * b[0] + a[1] * b[1]


def chain_text(gaps: int, pitch: Quantity, first: str) -> str:
    """`4 × 25 mm = 100 mm (3 15/16 in)`; of a single gap, or what doesn't repeat, the distance alone."""
    pitch = _positive(pitch)
    if gaps < 2:
        return show_quantity(pitch, first)  # type: ignore[arg-type]
    one = show_quantity(pitch, first, both=False)  # type: ignore[arg-type]
    total = Quantity.of(pitch.value * gaps, pitch.dimension, pitch.unit)
    return f"{gaps} × {one} = {show_quantity(total, first)}"  # type: ignore[arg-type]


def _positive(pitch: Quantity) -> Quantity:
    return pitch if pitch.value >= 0 else Quantity.of(-pitch.value, pitch.dimension, pitch.unit)
