"""Lines and arcs against closed forms and against points worked out another way."""

from __future__ import annotations

import itertools
import math

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from builder.geometry.segment import Arc, Line, Segment, arc_from_bulge, arc_from_radius
from builder.geometry.vector import GeometryFault, Point, add, cross, distance, dot, sub

QUARTER = Arc((10.0, 0.0), (0.0, 10.0), (0.0, 0.0), clockwise=False)

numbers = st.floats(-500, 500, allow_nan=False)
points = st.tuples(numbers, numbers)
shares = st.floats(0, 1)


@st.composite
def arcs(draw: st.DrawFn) -> Arc:
    """Arcs from 1° to 359°, radius 0.5 to 300 mm, either way round."""
    cx, cy = draw(points)
    radius, first = draw(st.floats(0.5, 300)), draw(st.floats(0, 2 * math.pi))
    sweep = draw(st.floats(0.02, 2 * math.pi - 0.02))
    clockwise = draw(st.booleans())
    last = first - sweep if clockwise else first + sweep
    start = (cx + radius * math.cos(first), cy + radius * math.sin(first))
    return Arc(start, (cx + radius * math.cos(last), cy + radius * math.sin(last)), (cx, cy), clockwise)


@st.composite
def lines(draw: st.DrawFn) -> Line:
    """Lines of at least a tenth of a millimetre."""
    start, end = draw(points), draw(points)
    assume(distance(start, end) > 0.1)
    return Line(start, end)


segments = st.one_of(lines(), arcs())


def walked(segment: Segment, count: int = 4000) -> list[Point]:
    """Many points along a segment, made from point_at alone."""
    return [segment.point_at(i / count) for i in range(count + 1)]


def test_a_quarter_circle_has_the_closed_form_length_and_middle() -> None:
    assert QUARTER.length == pytest.approx(10 * math.pi / 2, rel=1e-14)
    assert QUARTER.point_at(0.5) == pytest.approx((10 / math.sqrt(2), 10 / math.sqrt(2)))
    assert QUARTER.tangent_at(0) == pytest.approx((0, 1))
    assert QUARTER.tangent_at(1) == pytest.approx((-1, 0))


def test_the_other_way_round_is_three_quarters() -> None:
    rest = Arc(QUARTER.start, QUARTER.end, QUARTER.centre, clockwise=True)
    assert rest.length == pytest.approx(10 * math.pi * 3 / 2)
    assert rest.bounds() == pytest.approx((-10, -10, 10, 10))


def test_equal_ends_are_the_whole_circle() -> None:
    circle = Arc((3.0, 0.0), (3.0, 0.0), (0.0, 0.0), clockwise=True)
    assert circle.length == pytest.approx(6 * math.pi)
    assert circle.point_at(0.25) == pytest.approx((0, -3))
    assert circle.bounds() == pytest.approx((-3, -3, 3, 3))


@given(segments)
def test_length_is_what_is_walked(segment: Segment) -> None:
    along = walked(segment)
    total = sum(distance(a, b) for a, b in itertools.pairwise(along))
    assert segment.length == pytest.approx(total, rel=1e-6)


@given(segments)
def test_the_ends_come_out_exactly(segment: Segment) -> None:
    assert segment.point_at(0) == segment.start
    assert segment.point_at(1) == segment.end


@given(segments, st.floats(0.001, 0.999))
def test_the_tangent_points_the_way_the_point_moves(segment: Segment, share: float) -> None:
    ahead = sub(segment.point_at(share + 1e-4), segment.point_at(share - 1e-4))
    tangent = segment.tangent_at(share)
    assert math.hypot(*tangent) == pytest.approx(1)
    assert dot(ahead, tangent) == pytest.approx(math.hypot(*ahead), rel=1e-6)


@given(segments, shares)
def test_share_of_undoes_point_at(segment: Segment, share: float) -> None:
    assert segment.share_of(segment.point_at(share)) == pytest.approx(share, abs=1e-8)


def test_share_of_counts_past_the_nearer_end() -> None:
    assert QUARTER.share_of((1.0, -1.0)) == pytest.approx(-0.5)
    assert QUARTER.share_of((-1.0, 1.0)) == pytest.approx(1.5)
    assert Line((0.0, 0.0), (10.0, 0.0)).share_of((15.0, 3.0)) == pytest.approx(1.5)


@given(segments, shares)
def test_reversed_visits_the_same_points_from_the_end(segment: Segment, share: float) -> None:
    back = segment.reversed()
    assert (back.start, back.end) == (segment.end, segment.start)
    assert back.point_at(share) == pytest.approx(segment.point_at(1 - share), abs=1e-7)


@given(segments, st.floats(0, 0.45), st.floats(0.55, 1))
def test_a_part_lies_on_the_segment_and_has_its_share_of_the_length(
    segment: Segment, first: float, last: float
) -> None:
    piece = segment.part(first, last)
    assert piece.length == pytest.approx(segment.length * (last - first), rel=1e-6)
    assert piece.point_at(0.5) == pytest.approx(segment.point_at((first + last) / 2), abs=1e-6)


@given(segments)
def test_bounds_are_the_extremes_of_what_is_walked(segment: Segment) -> None:
    along = walked(segment)
    xs, ys = [x for x, _ in along], [y for _, y in along]
    seen = (min(xs), min(ys), max(xs), max(ys))
    assert segment.bounds() == pytest.approx(seen, abs=1e-3)


@given(segments, st.floats(-5, 5))
def test_a_parallel_is_everywhere_as_far_to_the_left_as_asked(segment: Segment, offset: float) -> None:
    beside = segment.parallel(offset)
    if beside is None:
        assert segment.radius <= abs(offset) + 1e-6
        return
    for share in (0.0, 0.3, 1.0):
        aside = sub(beside.point_at(share), segment.point_at(share))
        assert cross(segment.tangent_at(share), aside) == pytest.approx(offset, abs=1e-6)
        assert dot(segment.tangent_at(share), aside) == pytest.approx(0, abs=1e-6)


def test_the_parallel_inside_an_arc_vanishes_at_its_radius() -> None:
    assert QUARTER.parallel(10) is None
    assert QUARTER.parallel(12) is None
    outside = QUARTER.parallel(-2)
    assert outside is not None
    assert outside.radius == pytest.approx(12)


@given(arcs(), st.floats(0.001, 50))
def test_the_chords_leave_the_arc_by_no_more_than_the_tolerance(arc: Arc, tolerance: float) -> None:
    line = arc.to_polyline(tolerance)
    assert (line[0], line[-1]) == (arc.start, arc.end)
    for a, b in itertools.pairwise(line):
        middle = ((a[0] + b[0]) / 2, (a[1] + b[1]) / 2)
        assert arc.radius - distance(middle, arc.centre) <= tolerance * (1 + 1e-6) + 1e-9


@given(arcs(), st.floats(0.001, 0.1))
def test_no_more_chords_than_needed(arc: Arc, tolerance: float) -> None:
    """One chord fewer would leave the arc by more than the tolerance (or span over a quarter turn)."""
    chords = len(arc.to_polyline(tolerance)) - 1
    assume(chords > 1)
    step = abs(arc.sweep) / (chords - 1)
    assert arc.radius * (1 - math.cos(step / 2)) > tolerance * (1 - 1e-6) or step > math.pi / 2


def test_a_coarse_circle_is_still_a_square() -> None:
    circle = Arc((1.0, 0.0), (1.0, 0.0), (0.0, 0.0), clockwise=False)
    assert len(circle.to_polyline(100)) == 5


def test_a_tolerance_of_nothing_is_refused() -> None:
    with pytest.raises(GeometryFault, match="above 0"):
        QUARTER.to_polyline(0)


@given(arcs())
def test_a_bulge_gives_back_the_arc_it_was_taken_from(arc: Arc) -> None:
    again = arc_from_bulge(arc.start, arc.end, math.tan(arc.sweep / 4))
    assert isinstance(again, Arc)
    assert again.clockwise == arc.clockwise
    # The centre of a flat arc hangs on the last digits of its ends; what is cut is the arc itself.
    assert again.point_at(0.5) == pytest.approx(arc.point_at(0.5), abs=1e-6)
    assert again.length == pytest.approx(arc.length, rel=1e-6)


def test_bulge_one_is_the_half_circle_to_the_right_of_the_chord() -> None:
    half = arc_from_bulge((0.0, 0.0), (10.0, 0.0), 1)
    assert half.length == pytest.approx(5 * math.pi)
    assert half.point_at(0.5) == pytest.approx((5, -5))


def test_a_flat_bulge_is_a_line() -> None:
    assert arc_from_bulge((0.0, 0.0), (10.0, 0.0), 0.0) == Line((0.0, 0.0), (10.0, 0.0))


@given(arcs().filter(lambda arc: abs(abs(arc.sweep) - math.pi) > 0.01))
def test_a_radius_gives_back_the_arc_it_was_taken_from(arc: Arc) -> None:
    large = abs(arc.sweep) > math.pi
    again = arc_from_radius(arc.start, arc.end, arc.radius, arc.clockwise, large)
    assert again.point_at(0.5) == pytest.approx(arc.point_at(0.5), abs=1e-5)
    assert again.length == pytest.approx(arc.length, rel=1e-5)


def test_half_the_chord_is_the_smallest_radius() -> None:
    half = arc_from_radius((0.0, 0.0), (10.0, 0.0), 5, clockwise=False, large=False)
    assert half.length == pytest.approx(5 * math.pi)
    with pytest.raises(GeometryFault, match=r"4\.9 mm can't span the 10 mm"):
        arc_from_radius((0.0, 0.0), (10.0, 0.0), 4.9, clockwise=False, large=False)


@pytest.mark.parametrize(
    "build",
    [
        lambda: Line((1.0, 2.0), (1.0, 2.0)),
        lambda: Line((1.0, 2.0), (math.nan, 2.0)),
        lambda: arc_from_bulge((1.0, 2.0), (1.0, 2.0), 0.5),
        lambda: arc_from_radius((1.0, 2.0), (1.0, 2.0), 5, True, False),
        lambda: Arc((1.0, 2.0), (3.0, 2.0), (1.0, 2.0), True),
        lambda: Arc((1.0, 0.0), (0.0, 1.1), (0.0, 0.0), True),
    ],
)
def test_what_is_no_segment_is_refused(build: object) -> None:
    with pytest.raises(GeometryFault):
        build()  # type: ignore[operator]


@given(arcs(), st.floats(0, 2 * math.pi))
def test_an_arc_holds_the_points_of_its_circle_within_its_sweep(arc: Arc, angle: float) -> None:
    on_circle = add(arc.centre, (arc.radius * math.cos(angle), arc.radius * math.sin(angle)))
    share = arc.share_of(on_circle)
    assume(min(abs(share), abs(share - 1)) > 1e-5)
    assert arc.holds(on_circle) == (0 < share < 1)
