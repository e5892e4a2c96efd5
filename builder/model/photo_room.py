"""How large the pictures of a step are printed: a value of the sheet's layout, which rules and view both need.

One picture has half the column of steps, two stand side by side with equal heights, more follow in rows of two. The
themes lay out the same room (`sheets/step.typ`); a test holds the two together.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TypeVar

T = TypeVar("T")

PHOTO_ALONE_MM, PHOTO_BESIDE_FIGURE_MM = 68.0, 44.0
"""Largest height of a photo, without and with a figure above it."""
PHOTO_GAP_MM = 4.0
"""Between two pictures side by side."""
_A_ROW = 2


def photo_rows(pictures: Sequence[T]) -> list[Sequence[T]]:
    """The pictures as they stand below each other: two in a row."""
    return [pictures[start : start + _A_ROW] for start in range(0, len(pictures), _A_ROW)]


def photo_sizes_mm(aspects: Sequence[float], beside_figure: bool, column: float) -> list[tuple[float, float]]:
    """Printed width and height of each picture of a step [mm].

    aspects       : width over height of each, > 0
    beside_figure : a figure stands above them
    column        : width of the column of steps [mm]
    """
    return fitted_mm(aspects, column / 2, PHOTO_BESIDE_FIGURE_MM if beside_figure else PHOTO_ALONE_MM)


def fitted_mm(aspects: Sequence[float], width: float, most: float) -> list[tuple[float, float]]:
    """Width and height of each picture in rows of a width [mm], none higher than `most`; equal heights in a row."""
    found: list[tuple[float, float]] = []
    for row in photo_rows(aspects):
        height = min(most, (width - PHOTO_GAP_MM * (len(row) - 1)) / sum(row))
        found += [(height * aspect, height) for aspect in row]
    return found
