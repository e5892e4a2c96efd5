"""Choosing places for labels."""

from __future__ import annotations

from itertools import combinations

from hypothesis import given
from hypothesis import strategies as st

from builder.drawing.box import Box, Trace, box_about, traces_of
from builder.drawing.field import LINE_GAP, TEXT_GAP, Field
from builder.drawing.label_cost import LEADER, Candidate, Way
from builder.drawing.label_place import place

FRAME = Box(0, 0, 100, 60)


def ways(*candidates: Candidate) -> list[Way]:
    """All candidates of a label, none known to cost more than the cheapest."""
    least = min(one.cost for one in candidates)
    return [(least, one) for one in candidates]


def text(x: float, y: float, cost: float = 0.0, lines: tuple[Trace, ...] = ()) -> Candidate:
    """A text of 20 × 4 mm about a point."""
    return Candidate(box_about((x, y), 20, 4), lines, cost)


def test_the_cheapest_allowed_place_is_taken() -> None:
    """A free cheap place beats a free dear one; one outside the frame is none."""
    labels = [ways(text(95, 30, 0.0), text(50, 30, 2.0), text(50, 40, 1.0))]
    (choice,) = place(labels, Field(FRAME, [], []))
    assert choice is not None
    assert choice.candidate.cost == 1.0


def test_a_label_without_an_allowed_place_has_none() -> None:
    """Blocked places and the frame are never given up."""
    field = Field(FRAME, [Box(40, 20, 60, 40)], [])
    assert place([ways(text(50, 30), text(-50, 30))], field) == [None]


def test_text_keeps_off_lines_where_it_can() -> None:
    """A dear place off the line is better than a cheap one on it; with no other the label says it lies on lines."""
    field = Field(FRAME, [], traces_of([(0, 30), (100, 30)]))
    (free,) = place([ways(text(50, 30, 0.0), text(50, 40, 9.0))], field)
    (forced,) = place([ways(text(50, 30, 0.0))], field)
    assert free is not None
    assert free.candidate.cost == 9.0
    assert not free.on_lines
    assert forced is not None
    assert forced.on_lines


def test_a_text_just_clear_of_a_line_is_clear() -> None:
    """The gap to a line is the one promised."""
    line = traces_of([(0, 30), (100, 30)])
    below = 30 + LINE_GAP + 2
    (near,) = place([ways(text(50, below - 0.05))], Field(FRAME, [], line))
    (clear,) = place([ways(text(50, below + 0.05))], Field(FRAME, [], line))
    assert near is not None
    assert near.on_lines
    assert clear is not None
    assert not clear.on_lines


def test_an_early_label_makes_room_for_a_late_one() -> None:
    """The first takes the only place of the second, and gives it up for one that costs it little."""
    first, second = ways(text(50, 30, 0.0), text(50, 10, 3.0)), ways(text(50, 30, 0.0))
    one, other = place([first, second], Field(FRAME, [], []))
    assert one is not None
    assert other is not None
    assert (one.candidate.cost, other.candidate.cost) == (3.0, 0.0)


def test_a_leader_may_end_in_a_symbol_but_not_run_through_one() -> None:
    """The one it ends in is the one it points at."""
    symbol = Box(45, 25, 55, 35)
    into = text(50, 10, 0.0, (Trace(50, 13, 50, 30, LEADER),))
    through = text(50, 10, 0.0, (Trace(50, 13, 50, 50, LEADER),))
    field = Field(FRAME, [symbol], [])
    assert place([ways(into)], field)[0] is not None
    assert place([ways(through)], field)[0] is None


places = st.builds(text, st.floats(0, 100), st.floats(0, 60), st.floats(0, 5))


@given(st.lists(st.lists(places, min_size=1, max_size=8), min_size=1, max_size=8), st.data())
def test_no_two_texts_overlap_and_none_leaves_the_frame(labels: list[list[Candidate]], data: st.DataObject) -> None:
    """Whatever is asked for; and asked twice, the answer is the same."""
    field = Field(FRAME, [Box(10, 10, 20, 20)], traces_of([(0, 0), (100, 60)]))
    asked = [ways(*candidates) for candidates in labels]
    chosen = place(asked, field, passes=data.draw(st.integers(0, 2)))
    boxes = [choice.candidate.box for choice in chosen if choice is not None]
    assert all(box.inside(FRAME) for box in boxes)
    assert not any(a.overlaps(b, TEXT_GAP * 0.99) for a, b in combinations(boxes, 2))
    assert place(asked, field) == place(asked, field)
