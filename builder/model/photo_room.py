"""How large the pictures of a step are printed: a value of the sheet's layout, which rules and view both need.

One picture has half the page, two stand side by side with equal heights, more follow in rows of two. The themes lay
out the same room (`sheets/step.typ`); a test holds the two together.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal, TypeVar

T = TypeVar("T")

PaperName = Literal[
    "Letter", "A4", "Tabloid", "A3", "Letter landscape", "A4 landscape", "Tabloid landscape", "A3 landscape"
]
"""What a sheet is printed on. The larger ones are for a station where it is read from far."""
PAPER_MM: dict[str, tuple[float, float]] = {
    "Letter": (215.9, 279.4),
    "A4": (210.0, 297.0),
    "Tabloid": (279.4, 431.8),
    "A3": (297.0, 420.0),
}
"""Width and height, upright: ANSI/ASME Y14.1 and ISO 216 (from memory)."""
PAPER_MM |= {f"{name} landscape": (height, width) for name, (width, height) in PAPER_MM.items()}
PAPER_WIDTH_MM = {name: width for name, (width, _) in PAPER_MM.items()}
SHEET_EDGE_MM = 12.0
PHOTO_ALONE_MM, PHOTO_BESIDE_FIGURE_MM = 68.0, 44.0
"""Largest height of a photo, without and with a figure above it."""
PHOTO_GAP_MM = 4.0
"""Between two pictures side by side."""
_A_ROW = 2


def photo_rows(pictures: Sequence[T]) -> list[Sequence[T]]:
    """The pictures as they stand below each other: two in a row."""
    return [pictures[start : start + _A_ROW] for start in range(0, len(pictures), _A_ROW)]


def photo_sizes_mm(aspects: Sequence[float], beside_figure: bool, paper: str) -> list[tuple[float, float]]:
    """Printed width and height of each picture of a step [mm].

    aspects       : width over height of each, > 0
    beside_figure : a figure stands above them
    """
    half = (PAPER_WIDTH_MM[paper] - 2 * SHEET_EDGE_MM) / 2
    return fitted_mm(aspects, half, PHOTO_BESIDE_FIGURE_MM if beside_figure else PHOTO_ALONE_MM)


def fitted_mm(aspects: Sequence[float], width: float, most: float) -> list[tuple[float, float]]:
    """Width and height of each picture in rows of a width [mm], none higher than `most`; equal heights in a row."""
    found: list[tuple[float, float]] = []
    for row in photo_rows(aspects):
        height = min(most, (width - PHOTO_GAP_MM * (len(row) - 1)) / sum(row))
        found += [(height * aspect, height) for aspect in row]
    return found
