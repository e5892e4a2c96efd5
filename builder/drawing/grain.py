"""The ways the grain arrow can be drawn: thin, double-headed, in the direction of the grain, with its word.

Only lists the ways and what each costs; label_place.py chooses.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from functools import partial

from builder.drawing.box import Box, Trace, box_about
from builder.drawing.font import Lettering
from builder.drawing.hatch import inside
from builder.drawing.label_cost import Batch, Candidate
from builder.drawing.lettered import LabelArt, TextBlock, block_size
from builder.drawing.svg import XY

_COLUMNS, _ROWS = 13, 9
_LENGTHS = ((13.0, 0.0), (10.0, 0.8), (8.0, 1.6))
_OFFS = (3.0, 5.0, 8.0, 11.0, 15.0, 20.0, 26.0)
_OUTSIDE = 9.0


def grain_ways(text: str, turn_deg: float, area: Sequence[XY], lettering: Lettering) -> Iterator[Batch]:
    """The grain arrow in a free place of the part, else beside it.

    turn_deg : direction of the grain from the horizontal of the drawing, counter-clockwise
    area     : the part
    """
    way = (math.cos(math.radians(turn_deg)), -math.sin(math.radians(turn_deg)))
    xs, ys = [x for x, _ in area], [y for _, y in area]
    home = Box(min(xs), min(ys), max(xs), max(ys))
    # The upper right first: the words of the other labels seldom stand there.
    for column in reversed(range(_COLUMNS)):
        cost = 0.12 * (_COLUMNS - 1 - column)
        found = []
        for row in range(_ROWS):
            centre = (
                home.x0 + home.width * (column + 0.5) / _COLUMNS,
                home.y0 + home.height * (row + 0.5) / _ROWS,
            )
            for length, extra in _LENGTHS:
                if all(inside(end, area) for end in _ends(centre, way, length)):
                    found += _at(text, centre, way, length, cost + extra + 0.15 * abs(row - 2), lettering)
        yield Batch(cost, found)
    outside = [
        one
        for off in _OFFS
        for centre in _beside(home, off)
        for length, extra in _LENGTHS
        for one in _at(text, centre, way, length, _OUTSIDE + extra + 0.3 * off, lettering)
    ]
    yield Batch(_OUTSIDE, outside)


def _beside(home: Box, off: float) -> Iterator[XY]:
    x = home.centre[0]
    for share in (0.5, 0.25, 0.75):
        yield home.x1 + off, home.y0 + home.height * share
        yield home.x0 - off, home.y0 + home.height * share
    yield from ((x, home.y0 - off), (x, home.y1 + off), (home.x1 - 12, home.y1 + off), (home.x1 - 12, home.y0 - off))


def _ends(centre: XY, way: XY, length: float) -> tuple[XY, XY]:
    x, y = way[0] * length / 2, way[1] * length / 2
    return (centre[0] + x, centre[1] + y), (centre[0] - x, centre[1] - y)


def _at(text: str, centre: XY, way: XY, length: float, cost: float, lettering: Lettering) -> list[Candidate]:
    """The arrow at a place, its word on either side of it or beyond an end."""
    ends = _ends(centre, way, length)
    flat = box_about((0.0, 0.0), *block_size((text,), False, lettering))
    normal = (-way[1], way[0])
    places = [((normal[0] * side, normal[1] * side), flat.reach(normal) + 1.0) for side in (-1, 1)]
    places += [((way[0] * sign, way[1] * sign), length / 2 + flat.reach(way) + 1.1) for sign in (1, -1)]
    # The arrow must cross nothing: it would read as a dimension.
    line = (Trace(*ends[0], *ends[1], weight=25.0),)
    found = []
    for number, (to, off) in enumerate(places):
        box = flat.moved(centre[0] + to[0] * off, centre[1] + to[1] * off)
        found.append(Candidate((box,), line, cost + 0.2 * number, partial(_art, text, box, ends, way)))
    return found


def _art(text: str, box: Box, ends: tuple[XY, XY], way: XY) -> LabelArt:
    heads = ((ends[0], way), (ends[1], (-way[0], -way[1])))
    return LabelArt((TextBlock((text,), box),), (ends,), heads, width=0.3)
