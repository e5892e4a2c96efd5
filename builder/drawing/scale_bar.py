"""The ways a scale bar can be drawn: a round length of the part, half filled, under its words.

It stands beside the part or in a free corner of it, never above or below: a bar is not worth a higher figure.
Only lists the ways and what each costs; label_place.py chooses.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import partial

from builder.drawing.area import Area
from builder.drawing.box import Box
from builder.drawing.field import Field
from builder.drawing.font import Lettering
from builder.drawing.label_cost import Candidate, Way
from builder.drawing.lettered import LabelArt, TextBlock, block_size
from builder.drawing.svg import XY

_LONGEST, _SHORTEST, _HEIGHT, _GAP = 24.0, 7.0, 1.1, 0.7
_CLEAR = 3.0
# Beside the part is best; in it a bar may be taken for something on the part.
_INSIDE = 2.0
_UP, _STEPS = 2.0, 8


def scale_bar_ways(
    lengths: Sequence[tuple[float, str]], scale: float, area: Area, lettering: Lettering, paper: Field
) -> Iterator[Way]:
    """The longest bar that is neither too long nor too short, in its places; none where no length fits.

    lengths : (mm of the part, its words); scale : mm printed for a mm of the part
    """
    fitting = [(mm * scale, words) for mm, words in lengths if _SHORTEST <= mm * scale <= _LONGEST]
    if not fitting:
        return
    printed, words = max(fitting)
    width, height = block_size((words,), False, lettering)
    size = (max(width, printed), height + _GAP + _HEIGHT)
    ways = []
    for cost, (x, y) in _places(area.home, size, paper.frame):
        box = Box(x, y, x + size[0], y + size[1])
        if paper.allows(box):
            ways.append((cost, Candidate(box, (), cost, partial(_art, words, box, printed, width, height))))
    yield from sorted(ways, key=lambda way: way[0])


def _places(home: Box, size: XY, frame: Box) -> Iterator[tuple[float, XY]]:
    """Upper left corners, with what each costs: beside the part from its foot upward, then in its corners."""
    lowest = home.y1 - size[1]
    beside = ((home.x1 + _CLEAR, 0.0), (frame.x1 - size[0], 0.2), (home.x0 - _CLEAR - size[0], 0.4), (frame.x0, 0.6))
    for x, cost in beside:
        if home.x0 - _CLEAR < x + size[0] and x < home.x1 + _CLEAR - 1e-6:
            continue
        for step in range(_STEPS):
            y = lowest - step * _UP
            if y >= home.y0:
                yield cost + 0.1 * step, (x, y)
    for x in (home.x1 - size[0] - _CLEAR, home.x0 + _CLEAR):
        for y in (lowest - _CLEAR, home.y0 + _CLEAR):
            yield _INSIDE, (x, y)


def _art(words: str, box: Box, printed: float, width: float, height: float) -> LabelArt:
    """The words over the bar: its left half filled, its right half open."""
    middle = (box.x0 + box.x1) / 2
    left, right = middle - printed / 2, middle + printed / 2
    top, foot = box.y1 - _HEIGHT, box.y1
    corners = ((left, top), (right, top), (right, foot), (left, foot))
    sides = tuple(zip(corners, (*corners[1:], corners[0]), strict=True))
    text = Box(middle - width / 2, box.y0, middle + width / 2, box.y0 + height)
    half = ((left, top), (middle, top), (middle, foot), (left, foot))
    return LabelArt((TextBlock((words,), text),), sides, solid=half)
