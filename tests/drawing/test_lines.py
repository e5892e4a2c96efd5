"""Runs, dashes, hatches, stitches, notches, arrows: line work on paper."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.drawing import look
from builder.drawing.area import Area
from builder.drawing.arrows import direction_arrows
from builder.drawing.box import Box
from builder.drawing.dash import fitted
from builder.drawing.frame import Break, Frame, breaks_for, fit
from builder.drawing.hatch import hatch
from builder.drawing.notch import cut_of, notched
from builder.drawing.run import Run, Walk, chains, is_ring, offset_points, run_of, smooth_stretches
from builder.drawing.stitch_line import kind_of
from builder.geometry import Arc, Line
from tests.drawing.figures import circle, line_of, long_webbing, plain_panel, rectangle, rounded, tall_strap

FRAME = Frame((0, 0, 200, 100), 0.5, 2.0, 3.0)


def runs(*path: Line | Arc) -> list[Run]:
    """Segments on paper at half size."""
    return [run_of(segment, FRAME) for segment in path]


def test_y_is_turned_and_both_ways_have_one_scale() -> None:
    """The lower left of the part is printed at the lower left."""
    assert FRAME.at((0, 0)) == (2.0, 53.0)
    assert FRAME.at((200, 100)) == (102.0, 3.0)


@given(st.floats(1, 400), st.floats(1, 400), st.floats(10, 100), st.floats(10, 100))
def test_fit_fills_the_area_one_way_and_never_leaves_it(wide: float, tall: float, width: float, height: float) -> None:
    """As large as can be, centred."""
    box = fit((5, 7, 5 + wide, 7 + tall), (), Box(10, 20, 10 + width, 20 + height)).box
    assert box.inside(Box(10, 20, 10 + width, 20 + height).grown(1e-6))
    assert box.width == pytest.approx(width) or box.height == pytest.approx(height)
    assert box.centre == pytest.approx((10 + width / 2, 20 + height / 2))


def test_a_break_takes_out_the_middle_and_nothing_else() -> None:
    """Before it nothing moves, behind it everything by the same length."""
    frame = Frame((0, 0, 1000, 20), 1.0, 0.0, 0.0, (Break(0, 200, 900, 10),))
    assert frame.at((150, 0))[0] == 150
    assert frame.at((950, 0))[0] == 260
    assert 200 < frame.at((500, 0))[0] < 210


@pytest.mark.parametrize("figure", [long_webbing(), tall_strap()], ids=["across", "upright"])
def test_a_long_thin_part_is_broken_where_nothing_is(figure) -> None:  # type: ignore[no-untyped-def]
    """The break holds no end of a line, and the part prints wide enough to see."""
    breaks = breaks_for(figure, 90, 50)
    assert breaks
    for gap in breaks:
        ends = [point[gap.axis] for one in figure.strokes for s in one.path for point in (s.start, s.end)]
        assert not any(gap.low < end < gap.high for end in ends)
    frame = fit(figure.bounds, breaks, Box(0, 0, 90, 50))
    assert min(frame.box.width, frame.box.height) >= 7


def test_a_panel_is_not_broken() -> None:
    """Its width can be seen as it is."""
    assert breaks_for(plain_panel(), 90, 50) == ()


@pytest.mark.parametrize("clockwise", [False, True])
def test_an_arc_turns_the_same_way_on_paper(clockwise: bool) -> None:
    """The middle of its path data is the middle of the arc."""
    end = (50.0, 80.0) if not clockwise else (50.0, 20.0)
    arc = Arc((80.0, 50.0), end, (50.0, 50.0), clockwise)
    (run,) = runs(arc)
    assert f"0 0 {int(clockwise)} " in run.data
    assert run.length == pytest.approx(arc.length * 0.5, rel=1e-2)
    middle = FRAME.at(arc.point_at(0.5))
    assert run.data.startswith(f"A15 15 0 0 {int(clockwise)} {middle[0]:.3f} ".replace(".000 ", " "))


def test_a_box_has_four_stretches_and_a_rounded_edge_one() -> None:
    """Corners part a line, tangent arcs do not."""
    assert len(smooth_stretches(runs(*rectangle(10, 10, 50, 30)))) == 4
    assert len(smooth_stretches(runs(*rounded(0, 0, 100, 60, 20, top=20)))) == 1
    assert len(chains(runs(*circle((10, 10), 5), *circle((50, 10), 5)))) == 2
    assert all(is_ring(chain) for chain in chains(runs(*circle((10, 10), 5))))


@given(st.lists(st.tuples(st.floats(0, 90), st.floats(0, 90)), min_size=2, max_size=6, unique=True), st.floats(0, 1))
def test_walking_a_polyline_reaches_the_share_of_its_length(points: list[tuple[float, float]], share: float) -> None:
    """The point found is as far from the start, along the line, as asked."""
    walk = Walk(points)
    point, way = walk.at(walk.length * share)
    assert math.hypot(*way) == pytest.approx(1)
    assert min(math.dist(point, walk.at(walk.length * n / 200)[0]) for n in range(201)) <= walk.length / 200


def test_offset_of_a_square() -> None:
    """To the right of its direction on paper, corners mitred."""
    square = [(0.0, 0.0), (10.0, 0.0), (10.0, 10.0), (0.0, 10.0)]
    assert offset_points(square, 1.0, closed=True) == [(1, 1), (9, 1), (9, 9), (1, 9)]
    assert offset_points([(0.0, 0.0), (10.0, 0.0)], 2.0, closed=False) == [(0, 2), (10, 2)]


@given(st.floats(0.5, 300), st.sampled_from([(1.6, 1.0), (4.2, 1.0, 0.6, 1.0), (1.5, 0.8, 1.5, 2.0)]))
def test_a_dashed_line_ends_with_its_first_dash(length: float, pattern: tuple[float, ...]) -> None:
    """Corners are drawn, never guessed; and the pattern is not stretched out of shape."""
    dash = fitted(length, pattern)
    if dash is None:
        assert length < 1.6 * sum(pattern) + pattern[0]
        return
    rest = (length - dash[0]) / sum(dash)
    assert rest == pytest.approx(round(rest), abs=1e-6)
    assert 0.6 <= dash[0] / pattern[0] <= 1.5


@given(st.floats(0, 90))
def test_hatch_lines_lie_in_the_area_and_out_of_the_boxes(turn: float) -> None:
    """At every angle, of an area with a bay in it."""
    area = [(0.3, 0.2), (41.3, 0.2), (41.3, 31.1), (20.0, 10.0), (0.3, 31.1)]
    free = Box(5, 5, 15, 12)
    lines = hatch(area, 2.5, [free], turn)
    assert len(lines) > 5
    for a, b in lines:
        for share in (0.02, 0.5, 0.98):
            point = (a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share)
            assert Area(area).holds(point)
            assert not free.grown(-0.01).holds(point)


@pytest.mark.parametrize(
    ("stitch", "kind"),
    [
        ("301", "dash"),
        ("401", "pair"),
        ("504", "overlock"),
        ("516", "overlock"),
        ("304", "zigzag"),
        ("605", "cover"),
        ("", "dash"),
    ],
)
def test_each_class_of_stitch_has_its_drawing(stitch: str, kind: str) -> None:
    """By its first figure, zigzags apart; an unknown stitch is a row of dashes."""
    assert kind_of(stitch) == kind


def test_a_small_notch_is_drawn_large_and_cut_into_the_edge() -> None:
    """Its mouth stays where it is, it points inward, and the edge is opened between its lips."""
    edge = runs(*rectangle(0, 0, 200, 100))
    v = runs(*line_of((99, 100), (100, 98), (101, 100)))
    cut = cut_of(v, "part", edge)
    assert cut.mouth == pytest.approx(FRAME.at((100, 100)), abs=1e-6)
    assert cut.v[1] == pytest.approx((FRAME.at((100, 100))[0], FRAME.at((100, 100))[1] + look.NOTCH_DEPTH))
    pieces, done = notched(edge[2], [cut])
    assert done == [cut]
    assert {piece.start for piece in pieces[1:4]} == set(cut.v)
    assert math.dist(pieces[0].start, edge[2].start) < 1e-9
    assert math.dist(pieces[-1].end, edge[2].end) < 1e-9
    assert notched(edge[0], [cut]) == ([edge[0]], [])


def test_a_notch_whose_tip_lies_on_another_layers_edge_still_points_inward() -> None:
    """A row of pockets laid at the notch ends in its middle: its edge runs from the mouth through the tip."""
    side, row = runs(Line((0, 0), (0, 100)), Line((0, 40), (80, 40)))
    v = runs(*line_of((0, 37), (4, 40), (0, 43)))
    cut = cut_of(v, "part", [side, row])
    assert cut.mouth == pytest.approx(FRAME.at((0, 40)))
    assert cut.v[1][0] > cut.mouth[0]
    assert cut.v[1][1] == pytest.approx(cut.mouth[1])


def test_every_run_of_eight_millimetres_has_an_arrow_off_the_crossings() -> None:
    """A cross has one on each diagonal, not where they cross."""
    cross = runs(Line((20, 20), (80, 80)), Line((80, 20), (20, 80)), Line((0, 0), (10, 0)))
    arrows = direction_arrows(cross, [])
    assert len(arrows) == 2
    middle = FRAME.at((50, 50))
    assert all(math.dist(at, middle) > 1.9 for at, _ in arrows)
    assert all(math.dist(a, b) > look.ARROW_LENGTH for a, _ in arrows for b, _ in arrows if a != b)


def test_a_run_sewn_twice_the_same_way_has_one_arrow_and_back_and_forth_two() -> None:
    """Arrows tell directions, not counts."""
    there, back = Line((0, 0), (60, 0)), Line((60, 0), (0, 0))
    assert len(direction_arrows(runs(there, there), [])) == 1
    assert len(direction_arrows(runs(there, back), [])) == 2
