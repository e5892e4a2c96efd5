"""Crossings and distances against closed forms, against shapely, and against brute force."""

from __future__ import annotations

import itertools
import math
import random
import time

import pytest
import shapely
from hypothesis import assume, given
from hypothesis import strategies as st

from builder.geometry.measure import (
    bounds_union,
    distance_point_segment,
    first_crossing,
    nearest_point,
    path_inside,
    segments_cross,
    smallest_radius,
)
from builder.geometry.outline import Vertex, polygon, rectangle
from builder.geometry.path import Path, polyline
from builder.geometry.segment import Arc, Line, Segment, arc_from_bulge
from builder.geometry.vector import GeometryFault, Point, distance

CIRCLE = Arc((5.0, 0.0), (5.0, 0.0), (0.0, 0.0), clockwise=False)

numbers = st.floats(-100, 100, allow_nan=False)
points = st.tuples(numbers, numbers)
whole_points = st.tuples(st.integers(-20, 20), st.integers(-20, 20))


@st.composite
def segments(draw: st.DrawFn) -> Segment:
    """Lines, and arcs of up to a half turn and more."""
    start, end = draw(points), draw(points)
    assume(distance(start, end) > 1)
    return arc_from_bulge(start, end, draw(st.one_of(st.just(0.0), st.floats(0.05, 3), st.floats(-3, -0.05))))


def as_shapely(segment: Segment, tolerance: float = 1e-4) -> shapely.LineString:
    """The oracle's idea of a segment."""
    return shapely.LineString(segment.to_polyline(tolerance))


def test_two_lines_cross_in_the_middle() -> None:
    assert segments_cross(Line((0.0, 0.0), (10.0, 10.0)), Line((0.0, 10.0), (10.0, 0.0))) == ((5, 5),)


def test_lines_that_end_short_of_each_other_do_not_cross() -> None:
    assert segments_cross(Line((0.0, 0.0), (4.9, 4.9)), Line((0.0, 10.0), (10.0, 0.0))) == ()


def test_an_end_on_a_line_touches_it() -> None:
    assert segments_cross(Line((0.0, 0.0), (10.0, 0.0)), Line((3.0, 0.0), (3.0, 5.0))) == ((3, 0),)


def test_parallel_lines_never_cross() -> None:
    assert segments_cross(Line((0.0, 0.0), (10.0, 0.0)), Line((0.0, 1.0), (10.0, 1.0))) == ()


def test_lines_on_each_other_give_the_ends_of_their_stretch() -> None:
    assert segments_cross(Line((0.0, 0.0), (10.0, 0.0)), Line((15.0, 0.0), (4.0, 0.0))) == ((4, 0), (10, 0))


def test_a_line_through_a_circle_meets_it_twice_in_its_own_order() -> None:
    met = segments_cross(Line((10.0, 3.0), (-10.0, 3.0)), CIRCLE)
    assert met == (pytest.approx((4, 3)), pytest.approx((-4, 3)))


def test_a_tangent_meets_a_circle_once() -> None:
    assert segments_cross(Line((-9.0, 5.0), (9.0, 5.0)), CIRCLE) == (pytest.approx((0, 5)),)
    assert segments_cross(Line((-9.0, 5.001), (9.0, 5.001)), CIRCLE) == ()


def test_what_misses_a_tangent_only_by_rounding_still_meets_once() -> None:
    """Taken at its word, half a nanometre too near would be two crossings 0.14 µm apart, too far none."""
    for height in (5 - 5e-10, 5 + 5e-10):
        assert segments_cross(Line((-9.0, height), (9.0, height)), CIRCLE) == (pytest.approx((0, 5), abs=1e-6),)


def test_a_line_meets_only_the_drawn_part_of_a_circle() -> None:
    upper = Arc((5.0, 0.0), (-5.0, 0.0), (0.0, 0.0), clockwise=False)
    assert segments_cross(Line((3.0, -9.0), (3.0, 9.0)), upper) == (pytest.approx((3, 4)),)


def test_two_circles_cross_at_the_three_four_five_points() -> None:
    other = Arc((13.0, 0.0), (13.0, 0.0), (8.0, 0.0), clockwise=True)
    met = segments_cross(CIRCLE, other)
    assert sorted(met) == [pytest.approx((4, -3)), pytest.approx((4, 3))]


def test_circles_touch_inside_and_outside_once() -> None:
    outside = Arc((5.0, 0.0), (5.0, 0.0), (7.0, 0.0), clockwise=False)
    inside = Arc((5.0, 0.0), (5.0, 0.0), (3.0, 0.0), clockwise=False)
    assert segments_cross(CIRCLE, outside) == (pytest.approx((5, 0)),)
    assert segments_cross(CIRCLE, inside) == (pytest.approx((5, 0)),)


def test_a_circle_inside_another_does_not_cross_it() -> None:
    small = Arc((1.0, 0.0), (1.0, 0.0), (0.5, 0.0), clockwise=False)
    same_centre = Arc((1.0, 0.0), (1.0, 0.0), (0.0, 0.0), clockwise=False)
    assert segments_cross(CIRCLE, small) == ()
    assert segments_cross(CIRCLE, same_centre) == ()


def test_arcs_of_one_circle_give_the_ends_of_their_stretch() -> None:
    upper = Arc((5.0, 0.0), (-5.0, 0.0), (0.0, 0.0), clockwise=False)
    left = Arc((0.0, 5.0), (0.0, -5.0), (0.0, 0.0), clockwise=False)
    assert segments_cross(upper, left) == (pytest.approx((0, 5)), pytest.approx((-5, 0)))


@given(segments(), segments())
def test_crossings_lie_on_both_and_do_not_depend_on_the_order(a: Segment, b: Segment) -> None:
    met = segments_cross(a, b)
    for point in met:
        assert distance_point_segment(point, a) < 1e-6
        assert distance_point_segment(point, b) < 1e-6
    # Two that all but coincide may be told as one from the other side, so nearness is asked, not the count.
    back = segments_cross(b, a)
    assert all(min(distance(point, other) for other in back) < 1e-6 for point in met)
    assert bool(back) == bool(met)


@given(segments(), segments())
def test_crossings_are_as_many_as_the_oracle_finds(a: Segment, b: Segment) -> None:
    met = as_shapely(a).intersection(as_shapely(b))
    found = [part for part in getattr(met, "geoms", [met]) if not part.is_empty]
    ours = segments_cross(a, b)
    # Where the two nearly touch, or cross at an end, the oracle's chords may say otherwise: leave those out.
    ends = [end for s in (a, b) for end in (s.start, s.end)]
    clear = all(distance(point, end) > 0.1 for point in ours for end in ends)
    near_end = any(distance_point_segment(end, s) < 0.1 for s, o in ((a, b), (b, a)) for end in (o.start, o.end))
    crossing_angle = all(
        abs(math.sin(_angle_between(a, b, point))) > 0.15 for point in [*ours, *(_xy(part) for part in found)]
    )
    assume(clear and not near_end and crossing_angle)
    if not ours and not found:
        return
    assert len(ours) == len(found)
    for point in ours:
        assert min(distance(point, _xy(part)) for part in found) < 0.05


def _xy(part: shapely.Geometry) -> Point:
    centre = part.centroid
    return centre.x, centre.y


def _angle_between(a: Segment, b: Segment, point: Point) -> float:
    ta, tb = a.tangent_at(a.share_of(point)), b.tangent_at(b.share_of(point))
    return math.atan2(ta[0] * tb[1] - ta[1] * tb[0], ta[0] * tb[0] + ta[1] * tb[1])


@given(points, segments())
def test_distance_agrees_with_the_oracle(point: Point, segment: Segment) -> None:
    expected = as_shapely(segment, 1e-5).distance(shapely.Point(point))
    assert distance_point_segment(point, segment) == pytest.approx(expected, abs=2e-5)


def test_the_centre_of_an_arc_is_its_radius_away() -> None:
    assert distance_point_segment((0.0, 0.0), CIRCLE) == 5
    assert distance(nearest_point((0.0, 0.0), CIRCLE), (0.0, 0.0)) == 5


def test_beyond_an_arc_its_end_is_nearest() -> None:
    quarter = Arc((5.0, 0.0), (0.0, 5.0), (0.0, 0.0), clockwise=False)
    assert nearest_point((4.0, -3.0), quarter) == (5.0, 0.0)
    assert nearest_point((6.0, 8.0), quarter) == pytest.approx((3, 4))


def test_the_box_round_boxes() -> None:
    assert bounds_union([(0, 1, 2, 3), (-1, 2, 1, 9)]) == (-1, 1, 2, 9)
    with pytest.raises(GeometryFault, match="nothing"):
        bounds_union([])


@given(st.lists(whole_points, min_size=4, max_size=9, unique=True))
def test_a_ring_crosses_itself_when_the_oracle_says_so(corners: list[tuple[int, int]]) -> None:
    ring = [Line(a, b) for a, b in zip(corners, [*corners[1:], corners[0]], strict=True)]
    simple = shapely.LinearRing(corners).is_simple
    point = first_crossing(ring)
    assert (point is None) == simple
    if point is not None:
        near = [segment for segment in ring if distance_point_segment(point, segment) < 1e-6]
        assert len(near) >= 2


def test_a_ring_of_four_thousand_segments_is_swept_quickly() -> None:
    """All pairs would be 8 million crossings, minutes; the sweep compares only neighbours."""
    count = 4000
    corners = [
        (radius * math.cos(2 * math.pi * i / count), radius * math.sin(2 * math.pi * i / count))
        for i in range(count)
        for radius in [500 + 3 * math.sin(i)]
    ]
    ring = [Line(a, b) for a, b in zip(corners, [*corners[1:], corners[0]], strict=True)]
    began = time.process_time()
    assert first_crossing(ring) is None
    assert time.process_time() - began < 10
    swapped = [*corners[:1000], corners[1001], corners[1000], *corners[1002:]]
    crossed = [Line(a, b) for a, b in zip(swapped, [*swapped[1:], swapped[0]], strict=True)]
    point = first_crossing(crossed)
    assert point is not None
    assert distance(point, corners[1000]) < 10


PANEL = rectangle(100, 60, corner=15)


def test_a_path_in_the_panel_is_inside() -> None:
    assert path_inside(PANEL, polyline([(10, 10), (90, 10), (90, 50)]), 0) is None


def test_a_path_over_the_edge_is_found_where_it_leaves() -> None:
    assert path_inside(PANEL, polyline([(50, 30), (130, 30)]), 0) == pytest.approx((100, 30), abs=1e-5)
    assert path_inside(PANEL, polyline([(50, 30), (130, 30)]), 2) == pytest.approx((102, 30), abs=1e-5)


def test_a_path_cutting_a_rounded_corner_is_found() -> None:
    """The corners of the rectangle are off the panel, by 15(√2 − 1) = 6.2 mm."""
    path = polyline([(0, 20), (0, 1), (20, 0)])
    found = path_inside(PANEL, path, 0.0)
    assert found is not None
    assert found == pytest.approx((0, 15), abs=0.01)
    assert path_inside(PANEL, polyline([(15, 30), (0, 0)]), 6.3) is None
    assert path_inside(PANEL, polyline([(15, 30), (0, 0)]), 6.2) is not None


def test_a_path_that_starts_outside_is_found_at_its_start() -> None:
    assert path_inside(PANEL, polyline([(-20, 30), (50, 30)]), 0) == (-20, 30)


def test_a_path_along_the_edge_is_inside() -> None:
    assert path_inside(PANEL, Path(PANEL.segments), 0) is None


def test_a_path_across_a_gap_between_two_arms_is_outside() -> None:
    fork = polygon([(0, 0), (90, 0), (90, 60), (60, 60), (60, 20), (30, 20), (30, 60), (0, 60)])
    path = polyline([(10, 50), (80, 50)])
    assert path_inside(fork, path, 0) == pytest.approx((30, 50), abs=1e-5)
    assert path_inside(fork, polyline([(10, 50), (10, 10), (80, 10)]), 0) is None


@given(st.lists(st.tuples(st.floats(-20, 120), st.floats(-20, 80)), min_size=2, max_size=5, unique=True))
def test_inside_agrees_with_the_oracle(corners: list[Point]) -> None:
    assume(all(distance(a, b) > 0.01 for a, b in itertools.pairwise(corners)))
    shape = shapely.Polygon(PANEL.to_polyline(1e-3))
    line = shapely.LineString(corners)
    found = path_inside(PANEL, polyline(corners), 0.5)
    if found is None:
        assert shape.buffer(0.52, quad_segs=16).contains(line)
    else:
        assert not shape.buffer(0.48, quad_segs=16).contains(line)
        assert shape.distance(shapely.Point(found)) > 0.49


def test_a_path_beside_the_piece_is_outside_where_it_leaves_the_tolerance() -> None:
    """It begins 0.38 mm outside, which is allowed, and no side of the piece is near the rest of it."""
    found = path_inside(PANEL, polyline([(13, 60.25), (0, 61)]), 0.5)
    assert found is not None
    assert shapely.Polygon(PANEL.to_polyline(1e-3)).distance(shapely.Point(found)) > 0.49


def test_the_smallest_radius_is_that_of_the_tightest_arc() -> None:
    assert smallest_radius(Path(PANEL.segments)) == pytest.approx(15)
    assert smallest_radius(polyline([(0, 0), (1, 0)])) == math.inf


def test_a_random_arc_outline_contains_what_the_oracle_contains() -> None:
    shape = polygon(
        [Vertex((0, 0), bulge=0.4), Vertex((80, 0), corner=8), Vertex((80, 50), bulge=-0.3), Vertex((0, 50))]
    )
    oracle = shapely.Polygon(shape.to_polyline(1e-4))
    pick = random.Random(7)
    for _ in range(2000):
        point = (pick.uniform(-10, 95), pick.uniform(-25, 60))
        if shape.distance_to_boundary(point) > 1e-3:
            assert shape.contains(point) == oracle.contains(shapely.Point(point))
