"""Areas of a photo: the part that is kept, and parts hidden so that nothing of them can be read back.

A mosaic of an area's own pixels can be read back by who tries all it may have shown. So nothing inside the area is
used: its cells get colours between those just outside its border.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import ceil, floor
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from PIL.Image import Image

Area = tuple[Fraction, Fraction, Fraction, Fraction]
"""Left, top, right, bottom, as shares of the picture seen upright."""

_CELLS = 8  # along the longer side of a hidden area
_SPILL_PX = 16
"""A JPEG spreads what a pixel shows over its block of up to 16 pixels; so far beyond an area is hidden too."""
_GREY = (128, 128, 128)


@dataclass(frozen=True, slots=True)
class PhotoEdit:
    """What is done to the pixels of a photo: areas hidden, then a part kept (None for all of it)."""

    hidden: tuple[Area, ...] = ()
    crop: Area | None = None


NO_EDIT = PhotoEdit()


def pixels_of(area: Area, size: tuple[int, int], beyond: int = 0) -> tuple[int, int, int, int]:
    """The pixels an area covers, at least one, and `beyond` more on every side, inside the picture."""
    width, height = size
    left, top = max(0, floor(area[0] * width) - beyond), max(0, floor(area[1] * height) - beyond)
    right, bottom = min(width, ceil(area[2] * width) + beyond), min(height, ceil(area[3] * height) + beyond)
    left, top = min(left, width - 1), min(top, height - 1)
    return left, top, max(right, left + 1), max(bottom, top + 1)


def hide(image: Image, areas: Sequence[Area]) -> None:
    """Cover areas of an image (RGB or RGBA), each with a mosaic made of what lies around it."""
    boxes = [pixels_of(area, image.size, _SPILL_PX) for area in areas]
    # All are emptied first: where two meet, neither may take colours from the other.
    for box in boxes:
        image.paste(_GREY, box)
    for box in boxes:
        _cover(image, box)


def _cover(image: Image, box: tuple[int, int, int, int]) -> None:
    from PIL import Image as Images

    left, top, right, bottom = box
    wide, high = right - left, bottom - top
    cell = max(1, ceil(max(wide, high) / _CELLS))
    columns, rows = ceil(wide / cell), ceil(high / cell)
    sides = _outside(image, box, columns, rows)
    mosaic = Images.new("RGB", (columns, rows))
    for row in range(rows):
        for column in range(columns):
            mosaic.putpixel((column, row), _between(sides, column, row, columns, rows))
    grown = mosaic.resize((columns * cell, rows * cell), Images.Resampling.NEAREST)
    image.paste(grown.crop((0, 0, wide, high)), (left, top))


Colour = tuple[int, int, int]


def _outside(
    image: Image, box: tuple[int, int, int, int], columns: int, rows: int
) -> tuple[list[Colour], list[Colour], list[Colour], list[Colour]]:
    """Colours just outside the left, top, right and bottom border, one for each cell; [] where the picture ends."""
    left, top, right, bottom = box
    width, height = image.size
    return (
        _line(image, (left - 1, top, left, bottom), (1, rows)) if left > 0 else [],
        _line(image, (left, top - 1, right, top), (columns, 1)) if top > 0 else [],
        _line(image, (right, top, right + 1, bottom), (1, rows)) if right < width else [],
        _line(image, (left, bottom, right, bottom + 1), (columns, 1)) if bottom < height else [],
    )


def _line(image: Image, box: tuple[int, int, int, int], size: tuple[int, int]) -> list[Colour]:
    from PIL import Image as Images

    means = image.crop(box).convert("RGB").resize(size, Images.Resampling.BOX)
    return [_colour(means, x, y) for y in range(size[1]) for x in range(size[0])]


def _colour(image: Image, x: int, y: int) -> Colour:
    red, green, blue = image.getpixel((x, y))  # type: ignore[misc]
    return int(red), int(green), int(blue)


def _between(
    sides: tuple[list[Colour], list[Colour], list[Colour], list[Colour]], column: int, row: int, columns: int, rows: int
) -> Colour:
    """The mean of the four borders' colours at a cell, each by its nearness."""
    left, top, right, bottom = sides
    weighed = [
        *((left[row], 1 / (column + 1)) for _ in left[:1]),
        *((top[column], 1 / (row + 1)) for _ in top[:1]),
        *((right[row], 1 / (columns - column)) for _ in right[:1]),
        *((bottom[column], 1 / (rows - row)) for _ in bottom[:1]),
    ]
    if not weighed:
        return _GREY  # the whole picture is hidden
    whole = sum(weight for _, weight in weighed)
    red, green, blue = (round(sum(colour[at] * weight for colour, weight in weighed) / whole) for at in range(3))
    # Every other cell is a little darker, so that a hidden area is seen to be one.
    shade = 0.86 if (column + row) % 2 else 1.0
    return round(red * shade), round(green * shade), round(blue * shade)
