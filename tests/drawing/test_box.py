"""Boxes and traces: how they meet."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.drawing.box import Box, Trace, box_about, box_round, crossing, side_by_side

NUMBERS = st.floats(-50, 50)
TRACES = st.builds(Trace, NUMBERS, NUMBERS, NUMBERS, NUMBERS)
BOXES = st.builds(lambda x, y, w, h: box_about((x, y), w, h), NUMBERS, NUMBERS, st.floats(0.5, 40), st.floats(0.5, 40))


@given(TRACES, BOXES)
def test_the_part_of_a_trace_in_a_box_lies_in_the_box(trace: Trace, box: Box) -> None:
    """And outside it the middle of no sampled piece does."""
    shares = trace.shares_in(box)
    for number in range(41):
        share = number / 40
        point = (trace.ax + (trace.bx - trace.ax) * share, trace.ay + (trace.by - trace.ay) * share)
        if shares is not None and shares[0] <= share <= shares[1]:
            assert box.grown(1e-6).holds(point)
        elif box.grown(-1e-6).holds(point):
            pytest.fail(f"{point} is in the box but not in {shares}")


@given(BOXES, BOXES)
def test_overlap_is_mutual_and_the_box_round_both_holds_them(a: Box, b: Box) -> None:
    """Whichever is asked first."""
    assert a.overlaps(b) == b.overlaps(a)
    assert a.inside(box_round([a, b]))
    assert b.inside(box_round([a, b]))


def test_clear_space_counts_as_overlap() -> None:
    """Two boxes half a millimetre apart are too near for a millimetre."""
    a, b = Box(0, 0, 10, 5), Box(10.5, 0, 20, 5)
    assert not a.overlaps(b)
    assert a.overlaps(b, clear=1.0)


@pytest.mark.parametrize(
    ("other", "expected"),
    [
        (Trace(0, 5, 10, 5), True),
        (Trace(0, 11, 10, 11), False),
        (Trace(5, 10, 5, 20), True),
        (Trace(6, 0, 6, 10), False),
    ],
)
def test_crossing(other: Trace, expected: bool) -> None:
    """Touching ends count, running beside does not."""
    assert crossing(Trace(5, 0, 5, 10), other) is expected


def test_lines_beside_each_other_share_a_length() -> None:
    """Only when near and parallel."""
    line = Trace(0, 0, 10, 0)
    assert side_by_side(line, Trace(4, 0.5, 20, 0.5), 1.0) == pytest.approx(6)
    assert side_by_side(line, Trace(20, 0.5, 4, 0.5), 1.0) == pytest.approx(6)
    assert side_by_side(line, Trace(4, 2, 20, 2), 1.0) == 0
    assert side_by_side(line, Trace(0, 0, 10, 10), 1.0) == 0


def test_reach_of_a_box() -> None:
    """Half its width sideways, half its height upward, its corner between."""
    box = box_about((3, 4), 8, 6)
    assert box.reach((1, 0)) == 4
    assert box.reach((0, -1)) == 3
    assert box.reach((0.6, 0.8)) == pytest.approx(0.6 * 4 + 0.8 * 3)
    assert math.dist(box.centre, box.corners()[0]) == 5
