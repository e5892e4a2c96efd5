"""What a label says, written on it where it fits."""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial

from builder.drawing.box import Box, box_round
from builder.drawing.field import Field
from builder.drawing.font import Lettering
from builder.drawing.frame import Frame
from builder.drawing.label_cost import Candidate, Way
from builder.drawing.lettered import LabelArt, TextBlock, block_size
from builder.drawing.run import points_of, run_of
from builder.view import FigureView

# Clear space between the words and the sides of the label, mm printed.
_INSIDE = 0.9


def tag_words(figure: FigureView, frame: Frame) -> Iterator[tuple[str, Box]]:
    """What each label says, with the box it takes on paper; a label cut off by a window says nothing."""
    for one in figure.strokes:
        if one.role == "tag" and one.text and one.closed:
            points = points_of([run_of(segment, frame) for segment in one.path])
            yield one.text, box_round([Box(x, y, x, y) for x, y in points])


def tag_ways(text: str, box: Box, lettering: Lettering, paper: Field) -> Iterator[Way]:
    """The words in the middle of their label, level or upward; no way where they don't fit."""
    width, height = block_size((text,), False, lettering)
    room = box.grown(-_INSIDE)
    x, y = box.centre
    for wide, high, turned in ((width, height, False), (height, width, True)):
        if wide <= room.width and high <= room.height:
            at = Box(x - wide / 2, y - high / 2, x + wide / 2, y + high / 2)
            if paper.allows(at):
                yield 0.0, Candidate(at, (), 0.0, partial(LabelArt, (TextBlock((text,), at, turned=turned),)))
