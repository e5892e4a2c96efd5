"""Insets: closed forms on panels, the oracle shapely with mitred corners, and every refusal."""

from __future__ import annotations

import itertools
import math

import pytest
import shapely
from hypothesis import assume, given
from hypothesis import strategies as st

from builder.geometry.measure import distance_point_segment, path_inside
from builder.geometry.offset import inset_outline, inset_path
from builder.geometry.outline import GeometryFault, Outline, Vertex, polygon, rectangle, ring
from builder.geometry.path import Path
from builder.geometry.segment import Arc, Line
from builder.geometry.vector import Point

PANEL = rectangle(200, 120)
ROUNDED = rectangle(200, 120, corner=20)
L_POINTS: list[Point] = [(0, 0), (100, 0), (100, 50), (50, 50), (50, 100), (0, 100)]
L_SHAPE = polygon(L_POINTS, ["bottom", "right", "shelf", "riser", "top", "left"])

insets = st.floats(0.01, 80)


def oracle(outline: Outline, tolerance: float = 1e-5) -> shapely.Polygon:
    """The same outline, its arcs as very many chords."""
    return shapely.Polygon(outline.to_polyline(tolerance))


def moved(outline: Outline, inset: float) -> shapely.Polygon:
    """The oracle's inset with mitred corners. With finer chords than these it goes astray at arcs."""
    return oracle(outline, 1e-3).buffer(-inset, join_style="mitre", mitre_limit=1000)


@st.composite
def convex(draw: st.DrawFn) -> list[Point]:
    """Convex corners on an ellipse, none nearer than 10° to the next, none sharper than the mitre limit."""
    steps = draw(st.lists(st.floats(10, 100), min_size=3, max_size=10))
    total = sum(steps)
    assume(max(steps) * 360 / total < 175)
    wide, tall = draw(st.floats(20, 150)), draw(st.floats(20, 150))
    angle, corners = draw(st.floats(0, 360)), []
    for step in steps:
        angle += step * 360 / total
        corners.append((wide * math.cos(math.radians(angle)), tall * math.sin(math.radians(angle))))
    return corners


@st.composite
def stairs(draw: st.DrawFn) -> list[Point]:
    """Rectilinear shapes: a base with steps up and down, sometimes with a slot."""
    count = draw(st.integers(1, 5))
    widths = draw(st.lists(st.integers(10, 60), min_size=count, max_size=count))
    heights = draw(st.lists(st.integers(10, 90), min_size=count, max_size=count))
    assume(all(a != b for a, b in itertools.pairwise(heights)))
    top: list[Point] = []
    x = 0.0
    for width, height in zip(widths, heights, strict=True):
        top += [(x, height), (x + width, height)]
        x += width
    return [(0.0, 0.0), (x, 0.0), *top[::-1]]


def test_one_edge_runs_from_cut_edge_to_cut_edge() -> None:
    path = inset_path(PANEL, "top", "top", 10)
    assert path.runs == (Line((200, 110), (0, 110)),)


def test_gaps_stop_short_of_the_cut_edge() -> None:
    path = inset_path(PANEL, "top", "top", 10, start_gap=15, end_gap=5)
    assert path.runs == (Line((185, 110), (5, 110)),)


def test_two_edges_meet_in_a_mitre() -> None:
    path = inset_path(PANEL, "bottom", "right", 10)
    assert path.runs == (Line((0, 10), (190, 10)), Line((190, 10), (190, 120)))


def test_three_edges_with_gaps_have_the_closed_form_length() -> None:
    path = inset_path(PANEL, "left", "right", 8, start_gap=12, end_gap=12)
    assert path.length == pytest.approx((120 - 8) + (200 - 16) + (120 - 8) - 24)
    assert path.start == pytest.approx((8, 108))
    assert path.end == pytest.approx((192, 108))


def test_walking_past_the_start_of_the_ring() -> None:
    path = inset_path(PANEL, "left", "bottom", 10)
    assert path.runs == (Line((10, 120), (10, 10)), Line((10, 10), (200, 10)))


def test_a_walk_of_all_four_edges_stays_open() -> None:
    path = inset_path(PANEL, "right", "bottom", 10)
    assert (path.start, path.end) == ((190, 0), (200, 10))
    assert len(path.runs) == 4


@given(st.one_of(st.just(0.0), st.floats(1e-6, 59.9)))
def test_all_round_is_closed_and_starts_where_asked(inset: float) -> None:
    path = inset_path(PANEL, "right", None, inset)
    assert path.closed
    assert path.start == pytest.approx((200 - inset, inset))
    assert path.length == pytest.approx(640 - 8 * inset)
    assert inset_path(PANEL, None, None, inset).start == pytest.approx((inset, inset))


@given(st.floats(0, 19.9))
def test_a_rounded_corner_stays_concentric(inset: float) -> None:
    path = inset_path(ROUNDED, "bottom", "right", inset, start_gap=0)
    line, arc, up = path.runs
    assert isinstance(arc, Arc)
    assert arc.centre == pytest.approx((180, 20))
    assert arc.radius == pytest.approx(20 - inset)
    assert line.end == pytest.approx((180, inset))
    assert up.start == pytest.approx((200 - inset, 20))
    assert path.corner_angles() == pytest.approx((0, 0), abs=1e-6)


@given(st.floats(20, 59))
def test_a_used_up_radius_becomes_the_mitre(inset: float) -> None:
    path = inset_path(ROUNDED, "bottom", "right", inset)
    assert [type(run) for run in path.runs] == [Line, Line]
    assert path.runs[0].end == pytest.approx((200 - inset, inset))
    assert path.start == pytest.approx((0, inset))


@given(st.floats(0.5, 19.9))
def test_an_open_end_runs_on_into_the_rounded_corner(inset: float) -> None:
    """The line at height y meets the corner circle (20, 20), r 20 at x = 20 − √(r² − (r − y)²)."""
    path = inset_path(ROUNDED, "bottom", "bottom", inset)
    reach = 20 - math.sqrt(400 - (20 - inset) ** 2)
    assert path.start == pytest.approx((reach, inset), abs=1e-6)
    assert path.end == pytest.approx((200 - reach, inset), abs=1e-6)


@given(st.floats(0, 19), st.floats(0, 19))
def test_all_round_a_rounded_panel_has_the_closed_form_length(inset: float, more: float) -> None:
    path = inset_path(ROUNDED, None, None, inset)
    assert path.length == pytest.approx(640 - 160 + 2 * math.pi * (20 - inset))
    assert inset_outline(ROUNDED, -more - 0.1).perimeter() == pytest.approx(480 + 2 * math.pi * (20.1 + more))


def test_on_the_edge_itself_the_path_is_the_edge() -> None:
    assert inset_path(PANEL, "bottom", "right", 0).runs == PANEL.segments[:2]
    assert inset_path(PANEL, "bottom", "bottom", 0).runs == PANEL.segments[:1]
    assert inset_path(ROUNDED, "bottom", None, 0).runs == ROUNDED.segments


def test_a_slanted_neighbour_lengthens_or_shortens_the_path() -> None:
    """A trapezium of base 200, slopes of 3 in 1 out to the left, in to the right; at 30 mm up."""
    shape = polygon([(0, 0), (200, 0), (170, 90), (-30, 90)], ["hem", "right", "top", "left"])
    path = inset_path(shape, "hem", "hem", 30)
    assert path.start == pytest.approx((-10, 30))
    assert path.end == pytest.approx((190, 30))


def test_an_acute_corner_is_not_overrun() -> None:
    """Near the tip of a triangle the point square to the corner lies outside; the path ends on the far side."""
    shape = polygon([(0, 0), (100, 0), (0, 40)], ["hem", "slope", "back"])
    path = inset_path(shape, "hem", "hem", 20)
    assert (path.start, path.end) == (pytest.approx((0, 20)), pytest.approx((50, 20)))
    both = inset_path(shape, "hem", "slope", 10)
    assert both.start == pytest.approx((0, 10))
    assert both.end[0] == pytest.approx(0)
    assert path_inside(shape, both, 0) is None


def test_at_an_inward_corner_the_path_stops_square_to_it() -> None:
    """The riser ends at the corner (50, 50); nothing is in the way beyond, so the seam ends there."""
    path = inset_path(L_SHAPE, "riser", "riser", 10)
    assert path.runs == (Line((40, 50), (40, 100)),)


def test_an_inward_corner_inside_a_path_is_mitred() -> None:
    path = inset_path(L_SHAPE, "shelf", "riser", 10)
    assert path.runs == (Line((100, 40), (40, 40)), Line((40, 40), (40, 100)))


def test_a_blunt_corner_does_not_draw_the_path_out() -> None:
    shape = polygon([(0, 0), (100, 0), (200, 10), (200, 100), (0, 100)], ["one", "two", "right", "top", "left"])
    assert inset_path(shape, "one", "one", 10).end == pytest.approx((100, 10))
    assert inset_path(shape, "one", "two", 10).end == pytest.approx((200, 10 + 10 * math.hypot(1, 0.1)))


def test_a_chamfer_swallowed_by_its_neighbours_drops_out() -> None:
    """A chamfer of 10 mm is gone once the distance is past 10/(2 − √2) = 17.07 mm."""
    shape = polygon([(0, 0), (90, 0), (100, 10), (100, 100), (0, 100)], ["b", None, "r", "t", "l"])
    kept, gone = inset_path(shape, "b", "r", 17), inset_path(shape, "b", "r", 17.2)
    assert len(kept.runs) == 3
    assert gone.runs == (Line((0, 17.2), (82.8, 17.2)), Line((82.8, 17.2), (82.8, 100)))


def test_a_curved_edge_is_followed_to_the_cut_edges() -> None:
    """A lid bulging up by an arc about (50, 20), r 50 over the half turn, 10 mm inside."""
    shape = polygon(
        [Vertex((0, 0)), Vertex((100, 0)), Vertex((100, 20), bulge=1), Vertex((0, 20))],
        ["b", "r", "lid", "l"],
    )
    path = inset_path(shape, "lid", "lid", 10)
    assert path.length == pytest.approx(40 * math.pi)
    assert path.start == pytest.approx((90, 20))


def test_a_curved_edge_with_a_corner_runs_on_to_the_cut_edge() -> None:
    """A shallow lid of radius 100: its parallel of radius 90 is cut by the sides x = ±60 at √(90² − 60²)."""
    high = 80.0  # √(100² − 60²)
    bulge = math.tan(math.asin(0.6) / 2)
    shape = polygon(
        [Vertex((-60, 0)), Vertex((60, 0)), Vertex((60, high), bulge=bulge), Vertex((-60, high))],
        ["b", "r", "lid", "l"],
    )
    path = inset_path(shape, "lid", "lid", 10)
    assert path.start == pytest.approx((60, math.sqrt(90**2 - 60**2)))
    assert path.end == pytest.approx((-60, math.sqrt(90**2 - 60**2)))
    assert path.runs[0].radius == pytest.approx(90)


@given(convex(), st.floats(0.01, 60), st.integers(0, 20), st.integers(0, 20))
def test_an_open_path_keeps_its_distance_and_stays_inside(
    corners: list[Point], inset: float, first: int, more: int
) -> None:
    names = [str(index) for index in range(len(corners))]
    shape = polygon(corners, names)
    first %= len(names)
    walk = [names[(first + step) % len(names)] for step in range(1 + more % (len(names) - 1))]
    try:
        path = inset_path(shape, walk[0], walk[-1], inset)
    except GeometryFault:
        assume(moved(shape, inset).is_empty)
        return
    ring_of = oracle(shape)
    assert ring_of.buffer(1e-5).contains(shapely.LineString(path.to_polyline(1e-3)))
    joints = [run.start for run in path.runs[1:]]
    assert all(distance_point_segment(j, shape.edge(name)[0]) >= inset - 1e-5 for j in joints for name in walk)
    on_first = [distance_point_segment(p, _endless(shape.edge(walk[0])[0])) for p in (path.start, *joints[:1])]
    if len(path.runs) == len(walk):
        assert on_first == pytest.approx([inset] * len(on_first), abs=1e-6)


def _endless(segment: Line | Arc) -> Line | Arc:
    """The line, far beyond both ends."""
    return segment.part(-100, 100)


@given(convex(), insets)
def test_the_inset_of_a_convex_shape_is_the_oracles(corners: list[Point], inset: float) -> None:
    shape = polygon(corners)
    expected = moved(shape, inset)
    try:
        ours = inset_outline(shape, inset)
    except GeometryFault:
        # A speck a hair wide may be refused; nothing bigger.
        assert expected.area < 1e-3
        return
    assert ours.area() == pytest.approx(expected.area, rel=1e-6, abs=1e-6)
    assert expected.symmetric_difference(oracle(ours)).area == pytest.approx(0, abs=1e-4)
    assert len(ours.segments) <= len(corners)


@given(convex(), insets)
def test_outward_a_convex_shape_grows_by_its_closed_form(corners: list[Point], more: float) -> None:
    """Mitred all round, area grows by P·d + d²·Σ tan(turn/2)."""
    shape = polygon(corners)
    turns = [math.radians(t) for t in Path((*shape.segments, shape.segments[0])).corner_angles()]
    assume(max(turns) < 2 * math.acos(1 / 4) - 1e-6)
    expected = shape.area() + shape.perimeter() * more + more**2 * sum(math.tan(t / 2) for t in turns)
    assert inset_outline(shape, -more).area() == pytest.approx(expected)


@given(stairs(), st.floats(0.1, 12))
def test_the_inset_of_a_rectilinear_shape_is_the_oracles(corners: list[Point], inset: float) -> None:
    shape = polygon(corners)
    expected = moved(shape, inset)
    try:
        ours = inset_outline(shape, inset)
    except GeometryFault:
        # Refused only where an arm closes, or the piece falls apart or vanishes.
        assert inset >= 5 - 1e-6
        return
    assert expected.geom_type == "Polygon"
    # The oracle drops slivers of some 0.00005 mm; ours may keep them.
    assert expected.symmetric_difference(oracle(ours)).area == pytest.approx(0, abs=5e-3)


@given(stairs(), st.floats(0.1, 4.9))
def test_a_rectilinear_shape_without_narrow_arms_is_never_refused(corners: list[Point], inset: float) -> None:
    """Arms and slots are at least 10 mm wide, steps may be low: up to 5 mm in and out nothing closes."""
    shape = polygon(corners)
    for way in (inset, -inset):
        ours = inset_outline(shape, way)
        assert ours.area() == pytest.approx(moved(shape, way).area, rel=1e-6)
        assert len(ours.segments) == len(shape.segments)


@given(st.floats(1, 200), st.floats(1, 200), st.floats(0.01, 0.49), st.floats(0.01, 0.49))
def test_a_rounded_panel_keeps_the_closed_form_area(w: float, h: float, round_share: float, share: float) -> None:
    r, d = round_share * min(w, h), share * min(w, h)
    left = max(0.0, r - d)
    expected = (w - 2 * d) * (h - 2 * d) - (4 - math.pi) * left**2
    assert inset_outline(rectangle(w, h, r), d).area() == pytest.approx(expected, abs=1e-6)


@given(st.floats(0.1, 40), st.floats(0.1, 20))
def test_there_and_back_is_the_same_panel(more: float, corner: float) -> None:
    panel = rectangle(200, 120, corner)
    back = inset_outline(inset_outline(panel, -more), more)
    assert back.area() == pytest.approx(panel.area())
    assert dict(back.edges) == dict(panel.edges)
    assert back.bounds() == pytest.approx(panel.bounds(), abs=1e-6)


def test_edges_keep_their_names_and_lose_them_when_they_drop_out() -> None:
    shape = polygon([(0, 0), (90, 0), (100, 10), (100, 100), (0, 100)], ["b", "cut", "r", "t", "l"])
    assert dict(inset_outline(shape, 5).edges) == dict(shape.edges)
    smaller = inset_outline(shape, 20)
    assert set(smaller.edges) == {"b", "r", "t", "l"}
    assert smaller.edge("r")[0].start == pytest.approx((80, 20))
    around = inset_outline(ROUNDED, 30)
    assert [around.edge(name)[0].length for name in ("bottom", "right")] == pytest.approx([140, 60])


def test_a_sharp_tip_is_rounded_outward_instead_of_sticking_out() -> None:
    tip = polygon([(0, 0), (100, -8), (100, 8)])
    bigger = inset_outline(tip, -5)
    assert bigger.bounds()[0] == pytest.approx(-5)
    arc = next(segment for segment in bigger.segments if isinstance(segment, Arc))
    assert arc.centre == (0, 0)
    expected = oracle(tip).buffer(5, join_style="round", quad_segs=500)
    assert bigger.area() == pytest.approx(expected.area, abs=2 * 5 * 5)
    assert bigger.area() > expected.area


def test_a_circle_shrinks_to_a_circle() -> None:
    for circle in (
        ring([Arc((20.0, 0.0), (20.0, 0.0), (0.0, 0.0), clockwise=False)], {"rim": (0, 1)}),
        polygon([Vertex((-20, 0), bulge=1), Vertex((20, 0), bulge=1)], ["rim", "rim"]),
    ):
        assert inset_outline(circle, 5).area() == pytest.approx(225 * math.pi)
        assert inset_path(circle, "rim", None, 5).length == pytest.approx(30 * math.pi)
        with pytest.raises(GeometryFault, match="collapses"):
            inset_outline(circle, 20)


def test_a_concave_arc_grows_inward() -> None:
    """A round bite of 15 mm out of the top edge; 5 mm inside it is an arc of 20 mm."""
    shape = polygon([(0, 0), (100, 0), (100, 60), Vertex((65, 60), bulge=-1), (35, 60), (0, 60)])
    smaller = inset_outline(shape, 5)
    arc = next(segment for segment in smaller.segments if isinstance(segment, Arc))
    assert (arc.radius, arc.clockwise) == (pytest.approx(20), True)
    assert smaller.area() == pytest.approx(moved(shape, 5).area, rel=1e-4)
    half = math.acos(5 / 20)
    assert smaller.area() == pytest.approx(90 * 50 - 20**2 * (half - math.sin(half) * math.cos(half)))


@pytest.mark.parametrize("inset", [60, 75, 500])
def test_a_panel_collapses_at_half_its_height(inset: float) -> None:
    with pytest.raises(GeometryFault, match="collapses"):
        inset_outline(PANEL, inset)
    with pytest.raises(GeometryFault, match="collapses"):
        inset_path(PANEL, "bottom", None, inset)


def test_a_piece_that_would_fall_in_two_is_refused() -> None:
    dumbbell = polygon(
        [
            (0, 0),
            (60, 0),
            (60, 25),
            (100, 25),
            (100, 0),
            (160, 0),
            (160, 60),
            (100, 60),
            (100, 35),
            (60, 35),
            (60, 60),
            (0, 60),
        ]
    )
    assert inset_outline(dumbbell, 4.9).area() > 0
    assert moved(dumbbell, 6).geom_type == "MultiPolygon"
    with pytest.raises(GeometryFault, match="collapses"):
        inset_outline(dumbbell, 6)


def test_a_path_farther_in_than_the_piece_is_wide_is_refused() -> None:
    with pytest.raises(GeometryFault, match="outside the piece"):
        inset_path(PANEL, "bottom", "bottom", 130)
    with pytest.raises(GeometryFault, match=r"collapses|leaves|no edge"):
        inset_path(PANEL, "left", "right", 110)


def test_a_single_edge_may_be_followed_far_in_while_it_is_inside() -> None:
    assert inset_path(PANEL, "bottom", "bottom", 100).runs == (Line((0, 100), (200, 100)),)


def test_an_unknown_edge_and_a_negative_distance_are_refused() -> None:
    with pytest.raises(GeometryFault, match="no edge named hem"):
        inset_path(PANEL, "hem", "top", 5)
    with pytest.raises(GeometryFault, match="would lie outside"):
        inset_path(PANEL, "top", "top", -5)


def test_gaps_longer_than_the_path_are_refused() -> None:
    with pytest.raises(GeometryFault, match="leave nothing"):
        inset_path(PANEL, "top", "top", 5, start_gap=150, end_gap=60)


def test_an_edge_eaten_by_its_corners_is_refused_with_its_name() -> None:
    stadium = rectangle(100, 40, corner=20)
    with pytest.raises(GeometryFault, match="Nothing of edge right is left"):
        inset_path(stadium, "right", "right", 5)
    walked = inset_path(stadium, "bottom", "top", 5)
    assert walked.length == pytest.approx(15 * math.pi + 2 * (60 + math.sqrt(400 - 225)))


def test_a_smooth_corner_of_a_rounded_drawing_is_no_obstacle() -> None:
    """Typed to 0.001 mm, an arc and its line are never quite tangent; the inset bridges what is missing."""
    panel = ring(
        [
            Line((0.0, 0.0), (80.0, 0.001)),
            Arc((80.0, 0.001), (100.0, 20.001), (80.0, 20.001), clockwise=False),
            Line((100.0, 20.001), (99.999, 60.0)),
            Line((99.999, 60.0), (0.0, 60.0)),
            Line((0.0, 60.0), (0.0, 0.0)),
        ],
        {"bottom": (0, 1), "right": (2, 3)},
    )
    for inset in (3, 12, 19):
        path = inset_path(panel, "bottom", "right", inset)
        assert len(path.runs) == 3
        assert path.length == pytest.approx(80 + (20 - inset) * math.pi / 2 + 40, abs=0.05)
        assert inset_outline(panel, inset).area() == pytest.approx(moved(panel, inset).area, rel=1e-4)
