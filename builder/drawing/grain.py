"""The ways the grain arrow can be drawn: thin, double-headed, in the direction of the grain, with its word.

Only lists the ways and what each costs; label_place.py chooses.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from functools import partial
from itertools import product

from builder.drawing.area import Area
from builder.drawing.box import Box, Trace, box_about
from builder.drawing.field import Field
from builder.drawing.font import Lettering
from builder.drawing.label_cost import Candidate, Way
from builder.drawing.lettered import LabelArt, TextBlock, block_size
from builder.drawing.svg import XY

_COLUMNS, _ROWS = 13, 9
_LENGTHS = ((13.0, 0.0), (10.0, 0.8), (8.0, 1.6))
_OFFS = (3.0, 5.0, 8.0, 11.0, 15.0, 20.0, 26.0)
_OUTSIDE = 9.0
# The word's place beside the arrow, from the first choice to the last: each costs a little more.
_PER_PLACE = 0.2


def _places() -> list[tuple[float, int, int, float]]:
    """Every place in the part as (cost, column, row, length), cheapest first."""
    # The upper right first: the words of the other labels seldom stand there.
    columns = [(0.12 * (_COLUMNS - 1 - column), column) for column in reversed(range(_COLUMNS))]
    return sorted(
        (
            (cost + extra + 0.15 * abs(row - 2), column, row, length)
            for (cost, column), row, (length, extra) in product(columns, range(_ROWS), _LENGTHS)
        ),
        key=lambda place: place[0],
    )


_PLACES = _places()


@dataclass(frozen=True, slots=True)
class _Grain:
    """An arrow to be placed: its direction, its word, and the word's four places off its middle, by length.

    beside : the word off the middle of an arrow, as (x, y, x more for each mm of half the arrow, y more)
    """

    text: str
    way: XY
    flat: Box
    beside: tuple[tuple[float, float, float, float], ...]


def _grain(text: str, turn_deg: float, lettering: Lettering) -> _Grain:
    way = (math.cos(math.radians(turn_deg)), -math.sin(math.radians(turn_deg)))
    flat = box_about((0.0, 0.0), *block_size((text,), False, lettering))
    normal = (-way[1], way[0])
    aside, ahead = flat.reach(normal) + 1.0, flat.reach(way) + 1.1
    sides = [(normal[0] * side * aside, normal[1] * side * aside, 0.0, 0.0) for side in (-1, 1)]
    ends = [(way[0] * sign * ahead, way[1] * sign * ahead, way[0] * sign, way[1] * sign) for sign in (1, -1)]
    return _Grain(text, way, flat, (*sides, *ends))


def grain_ways(text: str, turn_deg: float, area: Area, lettering: Lettering, paper: Field) -> Iterator[Way]:
    """The grain arrow in a free place of the part, else beside it.

    turn_deg : direction of the grain from the horizontal of the drawing, counter-clockwise
    area     : the part
    """
    grain, home = _grain(text, turn_deg, lettering), area.home
    for cost, column, row, length in _PLACES:
        centre = (home.x0 + home.width * (column + 0.5) / _COLUMNS, home.y0 + home.height * (row + 0.5) / _ROWS)
        ends = _ends(centre, grain.way, length)
        if area.holds(ends[0]) and area.holds(ends[1]):
            for candidate in _at(grain, centre, ends, cost, paper):
                yield cost, candidate
    for off in _OFFS:
        cost = _OUTSIDE + 0.3 * off
        for (length, extra), centre in product(_LENGTHS, list(_beside(home, off))):
            for candidate in _at(grain, centre, _ends(centre, grain.way, length), cost + extra, paper):
                yield cost, candidate


def _beside(home: Box, off: float) -> Iterator[XY]:
    x = home.centre[0]
    for share in (0.5, 0.25, 0.75):
        yield home.x1 + off, home.y0 + home.height * share
        yield home.x0 - off, home.y0 + home.height * share
    yield from ((x, home.y0 - off), (x, home.y1 + off), (home.x1 - 12, home.y1 + off), (home.x1 - 12, home.y0 - off))


def _ends(centre: XY, way: XY, length: float) -> tuple[XY, XY]:
    x, y = way[0] * length / 2, way[1] * length / 2
    return (centre[0] + x, centre[1] + y), (centre[0] - x, centre[1] - y)


def _at(grain: _Grain, centre: XY, ends: tuple[XY, XY], cost: float, paper: Field) -> Iterator[Candidate]:
    """The arrow at a place, its word on either side of it or beyond an end."""
    # The arrow must cross nothing: it would read as a dimension.
    line = (Trace(*ends[0], *ends[1], weight=25.0),)
    half = math.dist(*ends) / 2
    for number, (x, y, x_more, y_more) in enumerate(grain.beside):
        box = grain.flat.moved(centre[0] + x + half * x_more, centre[1] + y + half * y_more)
        if paper.allows(box):
            art = partial(_art, grain, box, ends)
            yield Candidate(box, line, cost + _PER_PLACE * number, art)


def _art(grain: _Grain, box: Box, ends: tuple[XY, XY]) -> LabelArt:
    (x, y) = grain.way
    return LabelArt((TextBlock((grain.text,), box),), (ends,), ((ends[0], (x, y)), (ends[1], (-x, -y))), width=0.3)
