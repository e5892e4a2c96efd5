"""The ways a word can be placed: beside its point, or in the corner of the part.

Only lists the ways and what each costs; label_place.py chooses. Order numbers are in disc.py, the grain
arrow in grain.py.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache, partial
from heapq import merge
from itertools import product
from operator import itemgetter

from builder.drawing import look
from builder.drawing.area import Area
from builder.drawing.box import Box, Trace
from builder.drawing.field import Field
from builder.drawing.font import Lettering
from builder.drawing.label_cost import LEADER, Candidate, Way
from builder.drawing.lettered import LabelArt, TextBlock, block_size, broken_in_two
from builder.drawing.svg import XY

_DISTANCES = (0.0, 0.9, 2.0, 3.5, 5.5, 8.0, 11.0, 14.5, 18.5, 23.0, 29.0, 36.0)
_PER_MM = 0.4
_NEAREST = 0.9
_ANGLES = 16
# To the right reads best, then above and below, then left; a fixed table, so the result is always the same.
_WORSE = (0.0, 0.15, 0.2, 0.3, 0.25, 0.45, 0.5, 0.5, 0.4, 0.5, 0.5, 0.45, 0.3, 0.3, 0.2, 0.15)
_SECOND_FORM = 1.0
_LONG_LABEL = 24.0
_LEADER = 1.5
# Farther off than so many text heights a word has a leader.
_LED = 1.5
_ROWS, _COLUMNS = 14, 26
_OUTSIDE = (1.2, 2.5, 4.0, 5.5, 7.0, 9.0, 11.0, 14.0, 18.0)


def _way(number: int) -> XY:
    """A direction, so long that it leads as far to the side or up and down as along."""
    angle = 2 * math.pi * number / _ANGLES
    x, y = math.cos(angle), -math.sin(angle)
    square = max(abs(x), abs(y))
    return x / square, y / square


@lru_cache(maxsize=64)
def _places(forms: int, near: int) -> list[tuple[float, float, int, float, XY]]:
    """Every place about a point as (least cost, cost without a leader, form, distance, direction), cheapest first.

    near : so many distances may need no leader; beyond them all do
    """
    steps = [(step, 0.0 if number < near else _LEADER) for number, step in enumerate(_DISTANCES)]
    ways = [(_way(number), worse) for number, worse in enumerate(_WORSE)]
    found = []
    for (step, leader), form, (way, worse) in product(steps, range(forms), ways):
        cost = _PER_MM * step + worse + _SECOND_FORM * form
        found.append((cost + leader, cost, form, step, way))
    return sorted(found, key=lambda place: place[0])


_IN_CORNER = sorted((0.8 * row + 0.4 * column, row, column) for row in range(_ROWS) for column in range(_COLUMNS))


@dataclass(frozen=True, slots=True)
class Word:
    """A word that belongs to a point on paper.

    text     : in lines where it has line breaks; else a long one may be broken in two
    keep_off : radius of what is drawn at the point, mm
    """

    text: str
    at: XY
    keep_off: float = 0.0
    accent: bool = False
    bold: bool = False


def word_ways(word: Word, lettering: Lettering, paper: Field) -> Iterator[Way]:
    """A word about its point, with a leader where it stands farther off than one and a half text heights."""
    forms: list[tuple[str, ...]] = [tuple(word.text.split("\n"))]
    if len(forms[0]) == 1 and lettering.width(word.text, word.bold) > _LONG_LABEL:
        forms.append(broken_in_two(word.text, lettering, word.bold))
    sizes = [(lines, *block_size(lines, word.bold, lettering)) for lines in dict.fromkeys(forms)]
    (x, y), clear = word.at, word.keep_off + _NEAREST
    near = sum(_NEAREST + step <= _LED * lettering.cap_mm for step in _DISTANCES)
    for least, cost, form, step, (to_x, to_y) in _places(len(sizes), near):
        lines, width, height = sizes[form]
        # All boxes of a step are equally clear of the point.
        x0 = x + to_x * (clear + step + width / 2) - width / 2
        y0 = y + to_y * (clear + step + height / 2) - height / 2
        box = Box(x0, y0, x0 + width, y0 + height)
        if paper.allows(box):
            yield least, _candidate(word, lines, box, cost, lettering)


def _candidate(word: Word, lines: tuple[str, ...], box: Box, cost: float, lettering: Lettering) -> Candidate:
    """The word in a box. cost : without a leader"""
    if math.dist(word.at, box.nearest(word.at)) - word.keep_off <= _LED * lettering.cap_mm:
        return Candidate(box, (), cost, partial(_word_art, word, lines, box, None))
    piece = _leader(word, box, lettering)
    line = Trace(*piece[0], *piece[1], weight=LEADER)
    return Candidate(box, (line,), cost + _LEADER, partial(_word_art, word, lines, box, piece))


def _word_art(word: Word, lines: tuple[str, ...], box: Box, leader: tuple[XY, XY] | None) -> LabelArt:
    colour = look.ACCENT if word.accent else look.INK
    anchor = "start" if box.x0 > word.at[0] else "end" if box.x1 < word.at[0] else "middle"
    text = TextBlock(lines, box, colour, word.bold, anchor)
    if leader is None:
        return LabelArt((text,), colour=colour)
    dot = word.at if word.keep_off == 0 else None
    return LabelArt((text,), (leader,), dot=dot, colour=colour, width=0.25)


def _leader(word: Word, box: Box, lettering: Lettering) -> tuple[XY, XY]:
    """From the side of the text nearest to its point, to the point or the symbol drawn there."""
    at = word.at
    middle = box.y0 + lettering.above - lettering.cap_mm / 2
    across = box.centre[0]
    ends = ((box.x0 - 0.5, middle), (box.x1 + 0.5, middle), (across, box.y0 - 0.5), (across, box.y1 + 0.4))
    begin = min(ends, key=lambda end: (round(math.dist(end, at), 6), end))
    size = math.dist(begin, at)
    share = max(0.0, 1 - word.keep_off / size) if size > 0 else 0.0
    return begin, (begin[0] + (at[0] - begin[0]) * share, begin[1] + (at[1] - begin[1]) * share)


def corner_ways(text: str, area: Area, lettering: Lettering, paper: Field) -> Iterator[Way]:
    """The word of the side shown: in the lower left corner of the part, else elsewhere in it, else outside."""
    size = block_size((text,), False, lettering)
    outside = ((14 + off, one) for off in _OUTSIDE for one in _outside(text, area.home, size, off))
    return merge(_in_corner(text, area, size, paper), outside, key=itemgetter(0))


def _in_corner(text: str, area: Area, size: XY, paper: Field) -> Iterator[Way]:
    home = area.home
    for cost, row, column in _IN_CORNER:
        x0, y1 = home.x0 + 1.7 + 3.0 * column, home.y1 - 1.5 - 3.0 * row
        if x0 + size[0] < home.x1 - 1 and y1 - size[1] > home.y0 + 1:
            box = Box(x0, y1 - size[1], x0 + size[0], y1)
            if area.holds_box(box) and paper.allows(box):
                yield cost, _plain(text, box, cost)


def _outside(text: str, home: Box, size: XY, off: float) -> Iterator[Candidate]:
    for x0 in (home.x0, (home.x0 + home.x1 - size[0]) / 2, home.x1 - size[0]):
        yield _plain(text, Box(x0, home.y1 + off, x0 + size[0], home.y1 + off + size[1]), 14 + off)
        yield _plain(text, Box(x0, home.y0 - off - size[1], x0 + size[0], home.y0 - off), 16 + off)
    for y0 in (home.y1 - size[1], home.centre[1], home.y0):
        yield _plain(text, Box(home.x1 + off, y0, home.x1 + off + size[0], y0 + size[1]), 15 + off)
        yield _plain(text, Box(home.x0 - off - size[0], y0, home.x0 - off, y0 + size[1]), 15 + off)


def _plain(text: str, box: Box, cost: float) -> Candidate:
    return Candidate(box, (), cost, partial(LabelArt, (TextBlock((text,), box, anchor="start"),)))
