"""The mark that says the part lies the other way up than in the picture before: an arrow round an upright axis.

Parts are turned over sideways, like a page, so the axis stands upright. Only lists its places and what each costs.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from functools import partial
from itertools import pairwise

from builder.drawing import look
from builder.drawing.area import Area
from builder.drawing.box import Box
from builder.drawing.field import Field
from builder.drawing.font import Lettering
from builder.drawing.label_cost import Candidate, Way
from builder.drawing.lettered import LabelArt, TextBlock, block_size
from builder.drawing.svg import XY

_HALF_WIDE, _HALF_TALL, _AXIS = 3.1, 1.35, 3.3
_GAP = 1.4
_FROM_DEG, _TO_DEG, _STEP_DEG = 150.0, 420.0, 15.0
_OFFS = (1.2, 2.5, 4.0, 6.0, 9.0, 12.0, 16.0)
_OUTSIDE = 3.0


@dataclass(frozen=True, slots=True)
class _Mark:
    text: str
    size: XY

    @property
    def width(self) -> float:
        """Of mark and word together, mm."""
        return 2 * _HALF_WIDE + 1.0 + _GAP + self.size[0]

    @property
    def height(self) -> float:
        """Of the axis, or of the word where that is higher, mm."""
        return max(2 * _AXIS, self.size[1])


def turn_ways(text: str, area: Area, lettering: Lettering, paper: Field) -> Iterator[Way]:
    """The mark with its word, in a free place of the part from its upper left, else beside the part."""
    mark = _Mark(text, block_size((text,), True, lettering))
    home = area.home
    places: list[tuple[float, Box]] = []
    for row in range(14):
        for column in range(20):
            x0, y0 = home.x0 + 1.8 + 3.2 * column, home.y0 + 1.8 + 3.2 * row
            box = Box(x0, y0, x0 + mark.width, y0 + mark.height)
            if box.x1 < home.x1 - 1 and box.y1 < home.y1 - 1 and area.holds_box(box):
                places.append((0.5 * row + 0.3 * column, box))
    for off in _OFFS:
        for x0, y0 in _beside(home, mark, off):
            places.append((_OUTSIDE + off, Box(x0, y0, x0 + mark.width, y0 + mark.height)))
    for cost, box in sorted(places, key=lambda place: place[0]):
        if paper.allows(box):
            yield cost, Candidate(box, (), cost, partial(_art, mark, box))


def _beside(home: Box, mark: _Mark, off: float) -> Iterator[XY]:
    for y0 in (home.y0, home.centre[1] - mark.height / 2, home.y1 - mark.height):
        yield home.x1 + off, y0
        yield home.x0 - off - mark.width, y0
    for x0 in (home.x0, home.centre[0] - mark.width / 2, home.x1 - mark.width):
        yield x0, home.y0 - off - mark.height
        yield x0, home.y1 + off


def _art(mark: _Mark, box: Box) -> LabelArt:
    centre = (box.x0 + _HALF_WIDE + 0.5, box.centre[1])
    turn = _turn(centre)
    x0 = box.x0 + 2 * _HALF_WIDE + 1.0 + _GAP
    y0 = box.centre[1] - mark.size[1] / 2
    word = TextBlock((mark.text,), Box(x0, y0, x0 + mark.size[0], y0 + mark.size[1]), bold=True)
    (ax, ay), (bx, by) = turn[-2:]
    size = math.dist((ax, ay), (bx, by))
    way = (bx - ax) / size, (by - ay) / size
    tip = bx + way[0] * 1.4, by + way[1] * 1.4
    pieces = (*pairwise(turn), *_axis(centre))
    return LabelArt((word,), pieces, ((tip, way),), colour=look.INK, width=0.4)


def _turn(centre: XY) -> list[XY]:
    """Most of a flat ring round the axis, seen from above in front: it passes behind the axis first, then before it."""
    steps = round((_TO_DEG - _FROM_DEG) / _STEP_DEG)
    angles = [math.radians(_FROM_DEG + number * _STEP_DEG) for number in range(steps + 1)]
    return [(centre[0] + _HALF_WIDE * math.cos(a), centre[1] - _HALF_TALL * math.sin(a)) for a in angles]


def _axis(centre: XY) -> Iterator[tuple[XY, XY]]:
    """Dash, dot, dash."""
    x, y = centre
    for low, high in ((-_AXIS, -0.9), (-0.25, 0.25), (0.9, _AXIS)):
        yield (x, y + low), (x, y + high)
