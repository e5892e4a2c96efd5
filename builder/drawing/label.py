"""The ways a word can be placed: beside its point, or in the corner of the part.

Only lists the ways and what each costs; label_place.py chooses. Order numbers are in disc.py, the grain
arrow in grain.py.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import partial

from builder.drawing import look
from builder.drawing.box import Box, Trace, box_about
from builder.drawing.font import Lettering
from builder.drawing.hatch import inside
from builder.drawing.label_cost import LEADER, Batch, Candidate
from builder.drawing.lettered import LabelArt, TextBlock, block_size, broken_in_two
from builder.drawing.svg import XY

_DISTANCES = (0.0, 0.9, 2.0, 3.5, 5.5, 8.0, 11.0, 14.5, 18.5, 23.0, 29.0, 36.0)
_PER_MM = 0.4
_NEAREST = 0.9
_ANGLES = 16
# To the right reads best, then above and below, then left; a fixed table, so the result is always the same.
_WORSE = (0.0, 0.15, 0.2, 0.3, 0.25, 0.45, 0.5, 0.5, 0.4, 0.5, 0.5, 0.45, 0.3, 0.3, 0.2, 0.15)
_LONG_LABEL = 24.0
_LEADER = 1.5


@dataclass(frozen=True, slots=True)
class Word:
    """A word that belongs to a point on paper.

    keep_off : radius of what is drawn at the point, mm
    """

    text: str
    at: XY
    keep_off: float = 0.0
    accent: bool = False
    bold: bool = False


def word_ways(word: Word, lettering: Lettering) -> Iterator[Batch]:
    """A word about its point, with a leader where it stands farther off than one and a half text heights."""
    forms: list[tuple[str, ...]] = [(word.text,)]
    if lettering.width(word.text, word.bold) > _LONG_LABEL:
        forms.append(broken_in_two(word.text, lettering, word.bold))
    sizes = [(lines, block_size(lines, word.bold, lettering)) for lines in dict.fromkeys(forms)]
    for step in _DISTANCES:
        found: list[Candidate] = []
        for form, (lines, size) in enumerate(sizes):
            for number in range(_ANGLES):
                box = _box_towards(word, number, step, size)
                cost = _PER_MM * step + _WORSE[number] + 1.0 * form
                found.append(_candidate(word, lines, box, cost, lettering))
        yield Batch(_PER_MM * step, found)


def _box_towards(word: Word, number: int, step: float, size: XY) -> Box:
    """The box in one of the directions, all boxes of a step equally clear of the point."""
    angle = 2 * math.pi * number / _ANGLES
    x, y = math.cos(angle), -math.sin(angle)
    square = max(abs(x), abs(y))
    off = word.keep_off + _NEAREST + step
    at = word.at
    return box_about((at[0] + x / square * (off + size[0] / 2), at[1] + y / square * (off + size[1] / 2)), *size)


def _candidate(word: Word, lines: tuple[str, ...], box: Box, cost: float, lettering: Lettering) -> Candidate:
    if math.dist(word.at, box.nearest(word.at)) - word.keep_off <= 1.5 * lettering.cap_mm:
        return Candidate((box,), (), cost, partial(_word_art, word, lines, box, None))
    piece = _leader(word, box, lettering)
    line = Trace(*piece[0], *piece[1], weight=LEADER)
    return Candidate((box,), (line,), cost + _LEADER, partial(_word_art, word, lines, box, piece))


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
    ends = [(box.x0 - 0.5, middle), (box.x1 + 0.5, middle)]
    ends += [(box.centre[0], box.y0 - 0.5), (box.centre[0], box.y1 + 0.4)]
    begin = min(ends, key=lambda end: (round(math.dist(end, at), 6), end))
    size = math.dist(begin, at)
    share = max(0.0, 1 - word.keep_off / size) if size > 0 else 0.0
    return begin, (begin[0] + (at[0] - begin[0]) * share, begin[1] + (at[1] - begin[1]) * share)


def corner_ways(text: str, area: Sequence[XY], lettering: Lettering) -> Iterator[Batch]:
    """The word of the side shown: in the lower left corner of the part, else elsewhere in it, else outside."""
    size = block_size((text,), False, lettering)
    xs, ys = [x for x, _ in area], [y for _, y in area]
    home = Box(min(xs), min(ys), max(xs), max(ys))
    for row in range(14):
        boxes = [(_in_corner(home, size, row, column), column) for column in range(26)]
        found = [
            _plain(text, box, 0.8 * row + 0.4 * column)
            for box, column in boxes
            if box.x1 < home.x1 - 1 and box.y0 > home.y0 + 1 and _all_in(box, area)
        ]
        yield Batch(0.8 * row, found)
    yield Batch(15.0, list(_outside(text, home, size)))


def _in_corner(home: Box, size: XY, row: int, column: int) -> Box:
    x0, y1 = home.x0 + 1.7 + 3.0 * column, home.y1 - 1.5 - 3.0 * row
    return Box(x0, y1 - size[1], x0 + size[0], y1)


def _all_in(box: Box, area: Sequence[XY]) -> bool:
    return all(inside(corner, area) for corner in box.corners())


def _outside(text: str, home: Box, size: XY) -> Iterator[Candidate]:
    for off in (1.2, 2.5, 4.0, 5.5, 7.0, 9.0, 11.0, 14.0, 18.0):
        for x0 in (home.x0, (home.x0 + home.x1 - size[0]) / 2, home.x1 - size[0]):
            yield _plain(text, Box(x0, home.y1 + off, x0 + size[0], home.y1 + off + size[1]), 14 + off)
            yield _plain(text, Box(x0, home.y0 - off - size[1], x0 + size[0], home.y0 - off), 16 + off)
        for y0 in (home.y1 - size[1], home.centre[1], home.y0):
            yield _plain(text, Box(home.x1 + off, y0, home.x1 + off + size[0], y0 + size[1]), 15 + off)
            yield _plain(text, Box(home.x0 - off - size[0], y0, home.x0 - off, y0 + size[1]), 15 + off)


def _plain(text: str, box: Box, cost: float) -> Candidate:
    return Candidate((box,), (), cost, partial(LabelArt, (TextBlock((text,), box, anchor="start"),)))
