"""The ways of every label come cheapest first, so that looking further may stop."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

import pytest

from builder.drawing.area import Area
from builder.drawing.box import Box, traces_of
from builder.drawing.dimension import dimension_ways
from builder.drawing.disc import disc_ways
from builder.drawing.field import Field
from builder.drawing.font import Lettering
from builder.drawing.frame import Frame
from builder.drawing.grain import grain_ways
from builder.drawing.label import Word, corner_ways, word_ways
from builder.drawing.label_cost import Way, lines_cost
from builder.drawing.run import Run
from builder.model import ATKINSON
from builder.view import DimensionLine

LETTERING = Lettering(ATKINSON, 2.8)
FRAME = Frame((0, 0, 200, 100), 0.4, 20, 20)
AREA = Area(FRAME.box.corners())
PAPER = Field(Box(1, 1, 119, 89), [Box(30, 30, 34, 34)], traces_of([(20, 40), (100, 40)]))
RUN = Run(((30.0, 50.0), (70.0, 52.0)), straight=True)
LINES = [
    DimensionLine((20, 50), (180, 50), (0.0, -1.0), "160 mm (6.3 in)"),
    DimensionLine((50, 50), (52, 50), (0.0, 1.0), "2 mm (0.079 in)", strong=True),
    DimensionLine((50, 10), (50, 90), (1.0, 0.0), "80 mm (3.15 in)"),
]


def every() -> Iterator[list[Way]]:
    """All ways of one label of each kind."""
    yield list(word_ways(Word("start", (40.0, 50.0), 1.25), LETTERING, PAPER))
    yield list(word_ways(Word("tape ends overlap by a hand", (40.0, 50.0)), LETTERING, PAPER))
    yield list(disc_ways("2·6", RUN, LETTERING, PAPER))
    yield list(corner_ways("wrong side", AREA, LETTERING, PAPER))
    yield list(grain_ways("grain", 90.0, AREA, LETTERING, PAPER))
    for line in LINES:
        yield list(dimension_ways(line, FRAME, LETTERING, PAPER))


@pytest.mark.parametrize("ways", list(every()))
def test_no_way_costs_less_than_was_said_of_it_or_of_one_before(ways: list[Way]) -> None:
    """With the line work its own lines meet; a text on lines only costs more."""
    assert len(ways) > 20
    assert all(first <= then for (first, _), (then, _) in pairwise(ways))
    for least, candidate in ways:
        assert candidate.cost + lines_cost(candidate.lines, PAPER) >= least - 1e-9
