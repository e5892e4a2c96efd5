"""The paper labels are placed on: its quick answers are the same as going through every trace."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from builder.drawing.box import Box, Trace, box_about, traces_of
from builder.drawing.field import TEXT_GAP, Field

FRAME = Box(1, 1, 99, 59)
ALL_OVER = st.tuples(st.floats(-20, 120), st.floats(-20, 80))
ON_PAPER = st.tuples(st.floats(12, 88), st.floats(6, 54))
LINES = st.lists(st.builds(lambda a, b: Trace(*a, *b), ALL_OVER, ALL_OVER), max_size=6)
BOXES = st.builds(box_about, ON_PAPER, st.floats(0.5, 20), st.floats(0.5, 8))
# So many short pieces that the field looks them up instead of going through them.
CROWD = [trace for row in range(60) for trace in traces_of([(200.0, row), (201.0, row)])]


@given(LINES, BOXES, st.floats(0, 1), st.sampled_from([[], CROWD]))
def test_line_work_lies_under_a_text_when_a_trace_passes_its_space(
    lines: list[Trace], box: Box, gap: float, crowd: list[Trace]
) -> None:
    """Few traces or many, short or long."""
    field = Field(FRAME, [], [*crowd, *lines])
    space = box.grown(gap)
    assert (field.under(box, gap) > 0) == any(line.passes(space) for line in lines)


@given(LINES, BOXES, st.sampled_from([[], CROWD]))
def test_every_trace_that_passes_a_box_is_near_it_once(lines: list[Trace], box: Box, crowd: list[Trace]) -> None:
    """Others may be near as well."""
    near = [trace for _, trace in Field(FRAME, [], [*crowd, *lines]).near(box)]
    for line in lines:
        if line.passes(box):
            assert near.count(line) == lines.count(line)


def test_the_lightest_trace_says_how_heavy_what_lies_under_a_text_is_at_least() -> None:
    """The whole of it is priced later, if at all."""
    field = Field(FRAME, [], [*traces_of([(0, 30), (100, 30)], 3.0), *traces_of([(0, 50), (100, 50)], 2.0)])
    assert field.under(box_about((50, 30), 20, 4), 0.8) == 2.0
    assert field.under(box_about((50, 10), 20, 4), 0.8) == 0.0


def test_a_text_may_not_leave_the_paper_or_come_near_a_symbol() -> None:
    """Half the gap between two texts is enough for a symbol."""
    field = Field(FRAME, [Box(40, 20, 60, 40)], [])
    assert field.allows(Box(1, 1, 20, 5))
    assert not field.allows(Box(0.9, 1, 20, 5))
    assert not field.allows(Box(80, 55, 99.1, 58))
    assert field.allows(Box(10, 20, 40 - TEXT_GAP / 2, 40))
    assert not field.allows(Box(10, 20, 40.1 - TEXT_GAP / 2, 40))
