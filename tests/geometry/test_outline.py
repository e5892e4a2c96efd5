"""Outlines: closed forms, the oracle shapely, and every refusal."""

from __future__ import annotations

import math
import pickle

import pytest
import shapely
from hypothesis import assume, given
from hypothesis import strategies as st

from builder.geometry.outline import GeometryFault, Outline, Vertex, polygon, rectangle, ring
from builder.geometry.segment import Arc, Line
from builder.geometry.vector import Point, distance

L_SHAPE = [(0, 0), (100, 0), (100, 50), (50, 50), (50, 100), (0, 100)]
sizes = st.floats(1, 500)


@st.composite
def stars(draw: st.DrawFn) -> list[Vertex]:
    """Star-shaped rings round a centre, some edges gently bulged, listed either way round."""
    count = draw(st.integers(3, 9))
    radii = draw(st.lists(st.floats(20, 60), min_size=count, max_size=count))
    bulges = draw(st.lists(st.sampled_from([0.0, 0.0, 0.15, -0.1]), min_size=count, max_size=count))
    cx, cy = draw(st.tuples(st.floats(-300, 300), st.floats(-300, 300)))
    angles = [2 * math.pi * i / count for i in range(count)]
    ring_of = [
        Vertex((cx + r * math.cos(a), cy + r * math.sin(a)), bulge)
        for r, a, bulge in zip(radii, angles, bulges, strict=True)
    ]
    return ring_of if draw(st.booleans()) else ring_of[::-1]


def built(vertices: list[Vertex]) -> Outline:
    """The outline, unless the bulges happen to make it cross itself."""
    try:
        return polygon(vertices)
    except GeometryFault as fault:
        assume("crosses" not in fault.message)
        raise


def oracle(outline: Outline, tolerance: float = 1e-5) -> shapely.Polygon:
    """The same outline, its arcs as very many chords."""
    return shapely.Polygon(outline.to_polyline(tolerance))


def test_a_rectangle_has_its_four_edges_in_order_from_the_bottom() -> None:
    panel = rectangle(200, 120)
    assert dict(panel.edges) == {"bottom": (0, 1), "right": (1, 2), "top": (2, 3), "left": (3, 4)}
    assert panel.edge("bottom") == (Line((0, 0), (200, 0)),)
    assert panel.edge("left") == (Line((0, 120), (0, 0)),)
    assert (panel.area(), panel.perimeter(), panel.bounds()) == (24000, 640, (0, 0, 200, 120))
    assert panel.centroid() == pytest.approx((100, 60))
    assert panel.corners() == ((0, 0), (200, 0), (200, 120), (0, 120))


@given(sizes, sizes, st.floats(0.01, 0.49))
def test_a_rounded_rectangle_has_the_closed_form_area_and_perimeter(w: float, h: float, share: float) -> None:
    r = share * min(w, h)
    panel = rectangle(w, h, r)
    assert panel.area() == pytest.approx(w * h - (4 - math.pi) * r * r)
    assert panel.perimeter() == pytest.approx(2 * (w + h) - (8 - 2 * math.pi) * r)
    assert panel.centroid() == pytest.approx((w / 2, h / 2))
    assert panel.bounds() == pytest.approx((0, 0, w, h), abs=1e-9)


def test_a_corner_arc_lies_between_the_edges_and_belongs_to_none() -> None:
    panel = rectangle(200, 120, corner=20)
    assert len(panel.segments) == 8
    assert dict(panel.edges) == {"bottom": (0, 1), "right": (2, 3), "top": (4, 5), "left": (6, 7)}
    corner = panel.segments[1]
    assert isinstance(corner, Arc)
    assert corner.centre == pytest.approx((180, 20))
    assert not corner.clockwise
    assert panel.edge("bottom")[0].length == pytest.approx(160)


def test_a_stadium_keeps_the_name_of_the_edge_its_corners_ate_as_an_empty_range() -> None:
    stadium = rectangle(100, 40, corner=20)
    assert stadium.area() == pytest.approx(60 * 40 + math.pi * 400)
    assert stadium.edge("right") == ()
    assert len(stadium.segments) == 6
    assert stadium.edges["right"] == (2, 2)


def test_two_half_circles_are_a_circle() -> None:
    circle = polygon([Vertex((-30, 5), bulge=1), Vertex((30, 5), bulge=1)])
    assert circle.area() == pytest.approx(math.pi * 900)
    assert circle.centroid() == pytest.approx((0, 5))
    assert circle.contains((0, 5))
    assert circle.bounds() == pytest.approx((-30, -25, 30, 35))


def test_a_whole_circle_may_be_one_segment() -> None:
    circle = ring([Arc((9.0, 0.0), (9.0, 0.0), (4.0, 0.0), clockwise=True)], {"rim": (0, 1)})
    assert circle.area() == pytest.approx(25 * math.pi)
    assert circle.contains((4.0, 0.0))
    assert not circle.contains((-1.1, 0.0))
    assert not circle.segments[0].clockwise  # type: ignore[union-attr]


def test_the_centroid_of_a_half_disc_is_four_r_over_three_pi() -> None:
    half = polygon([Vertex((0, 0)), Vertex((10, 0), bulge=1), Vertex((-10, 0))])
    assert half.centroid() == pytest.approx((0, 40 / (3 * math.pi)))


def test_the_centroid_holds_for_more_than_a_half_turn_and_for_a_bite() -> None:
    for bulge in (2.0, -0.6):
        shape = polygon([Vertex((0, 0)), Vertex((60, 0), bulge=bulge), Vertex((60, 40)), Vertex((0, 40))])
        expected = oracle(shape).centroid
        assert shape.centroid() == pytest.approx((expected.x, expected.y), abs=1e-3)


@given(stars())
def test_area_perimeter_and_centroid_agree_with_the_oracle(vertices: list[Vertex]) -> None:
    outline = built(vertices)
    shape = oracle(outline)
    assert outline.area() > 0
    assert outline.area() == pytest.approx(shape.area, rel=1e-5)
    assert outline.perimeter() == pytest.approx(shape.length, rel=1e-5)
    assert outline.centroid() == pytest.approx((shape.centroid.x, shape.centroid.y), abs=1e-3)


@given(stars(), st.floats(-1.5, 1.5), st.floats(-1.5, 1.5))
def test_contains_and_distance_agree_with_the_oracle(vertices: list[Vertex], dx: float, dy: float) -> None:
    outline = built(vertices)
    shape = oracle(outline)
    left, bottom, right, top = outline.bounds()
    point = ((left + right) / 2 + dx * (right - left) / 2, (bottom + top) / 2 + dy * (top - bottom) / 2)
    away = shape.exterior.distance(shapely.Point(point))
    assert outline.distance_to_boundary(point) == pytest.approx(away, abs=2e-5)
    if away > 1e-4:
        assert outline.contains(point) == shape.contains(shapely.Point(point))
        assert outline.contains(point, away + 1e-4)


@given(st.integers(0, 100), st.integers(-60, 160))
def test_contains_holds_on_the_lines_through_the_corners_too(x: int, y: int) -> None:
    """Whole numbers hit chords, corners and edges exactly; that is where a ray test goes wrong."""
    lens = polygon([Vertex((0, 0), bulge=1), Vertex((100, 0)), Vertex((100, 100), bulge=1), Vertex((0, 100))])
    beyond = math.hypot(x - 50, y if y < 0 else y - 100)
    inside = 0 <= y <= 100 or beyond < 50
    if lens.distance_to_boundary((x, y)) > 1e-6:
        assert lens.contains((x, y)) == inside


def test_tolerance_widens_the_inside() -> None:
    panel = rectangle(100, 50)
    assert not panel.contains((100.4, 25))
    assert panel.contains((100.4, 25), 0.5)
    assert not panel.contains((100.6, 25), 0.5)
    assert panel.contains((100, 25), 1e-9)


@given(stars())
def test_either_direction_gives_the_same_counter_clockwise_ring(vertices: list[Vertex]) -> None:
    straight = [vertex.at for vertex in vertices]
    names = [f"edge-{i}" for i in range(len(straight))]
    one = polygon(straight, names)
    # Walked backwards, the edge that leaves corner i is the one that arrived there before.
    other = polygon(straight[::-1], [*names[:-1][::-1], names[-1]])
    assert one.area() == pytest.approx(other.area())
    for name in names:
        assert one.edge(name)[0].start == other.edge(name)[0].start
        assert one.edge(name)[0].end == other.edge(name)[0].end


def test_edges_of_one_name_are_one_edge_even_across_the_start_of_the_list() -> None:
    shape = polygon(L_SHAPE, ["outer", "right", None, "inner", "top", "outer"])
    assert [segment.start for segment in shape.edge("outer")] == [(0, 100), (0, 0)]
    assert shape.edges["right"] == (2, 3)
    assert set(shape.edges) == {"outer", "right", "inner", "top"}


def test_one_name_all_round_is_the_whole_ring() -> None:
    assert dict(polygon(L_SHAPE, ["rim"] * 6).edges) == {"rim": (0, 6)}


def test_a_fault_numbers_the_corners_as_they_were_typed() -> None:
    corners = [Vertex(at, corner=60 if at == (50, 100) else 0) for at in L_SHAPE]
    with pytest.raises(GeometryFault, match=r"corner 5 at \(50, 100\)"):
        polygon(corners, ["outer", None, None, None, None, "outer"])


def test_a_rounded_corner_inside_an_edge_belongs_to_it() -> None:
    corners = [Vertex((0, 0)), Vertex((80, 0), corner=10), Vertex((80, 50)), Vertex((0, 50))]
    shape = polygon(corners, ["hem", "hem", "top", "back"])
    assert [type(segment) for segment in shape.edge("hem")] == [Line, Arc, Line]


def test_one_name_in_two_places_is_refused() -> None:
    with pytest.raises(GeometryFault, match="both named side"):
        polygon(L_SHAPE, ["side", None, "side", None, None, None])


def test_a_concave_corner_is_rounded_the_other_way() -> None:
    corners = [Vertex(at, corner=10 if at == (50, 50) else 0) for at in L_SHAPE]
    shape = polygon(corners)
    arc = next(segment for segment in shape.segments if isinstance(segment, Arc))
    assert arc.clockwise
    assert arc.centre == pytest.approx((60, 60))
    assert shape.area() == pytest.approx(7500 + (1 - math.pi / 4) * 100)


def test_a_corner_beside_a_bulged_edge_touches_both_smoothly() -> None:
    shape = polygon([Vertex((0, 0)), Vertex((80, 0), bulge=0.3, corner=6), Vertex((80, 60)), Vertex((0, 60))])
    arc = next(segment for segment in shape.segments if segment.radius == pytest.approx(6))
    index = shape.segments.index(arc)
    for before, after in ((shape.segments[index - 1], arc), (arc, shape.segments[index + 1])):
        assert distance(before.end, after.start) < 1e-9
        assert before.tangent_at(1) == pytest.approx(after.tangent_at(0), abs=1e-9)
    sharp = polygon([Vertex((0, 0)), Vertex((80, 0), bulge=0.3), Vertex((80, 60)), Vertex((0, 60))])
    assert shape.area() < sharp.area()


@given(st.floats(25, 155), st.floats(0.1, 4))
def test_a_rounded_corner_takes_off_the_closed_form_area(angle_deg: float, radius: float) -> None:
    """A corner of angle α loses r²(cot(α/2) − (π − α)/2)."""
    alpha = math.radians(angle_deg)
    tip: list[Point] = [(0, 0), (50, 0), (50 * math.cos(alpha), 50 * math.sin(alpha))]
    sharp = polygon(tip).area()
    rounded = polygon([Vertex(tip[0], corner=radius), tip[1], tip[2]]).area()
    lost = radius**2 * (1 / math.tan(alpha / 2) - (math.pi - alpha) / 2)
    assert sharp - rounded == pytest.approx(lost, rel=1e-6, abs=1e-9)


def refused(points: list[Point | Vertex]) -> GeometryFault:
    """The fault a polygon raises."""
    with pytest.raises(GeometryFault) as caught:
        polygon(points)
    return caught.value


def test_fewer_than_three_corners_are_refused() -> None:
    assert "at least 3 corners, not 2" in refused([(0, 0), (10, 0)]).message
    assert "at least 3 corners, not 0" in refused([]).message


def test_corners_on_one_line_have_no_area() -> None:
    fault = refused([(0, 0), (10, 0), (4, 0)])
    assert fault.message == "The outline from (0, 0) to (10, 0) has no area."


def test_a_bow_tie_is_refused_at_its_crossing_although_its_area_is_nothing() -> None:
    fault = refused([(0, 0), (10, 10), (10, 0), (0, 10)])
    assert fault.at == pytest.approx((5, 5))
    assert "(5, 5)" in fault.message


def test_a_corner_touching_another_edge_is_refused() -> None:
    fault = refused([(0, 0), (40, 0), (40, 30), (20, 0), (0, 30)])
    assert fault.at == pytest.approx((20, 0))


def test_a_spike_is_refused() -> None:
    assert "crosses or touches itself" in refused([(0, 0), (40, 0), (40, 30), (70, 30), (0, 30)]).message


def test_arcs_that_cross_are_refused() -> None:
    fault = refused([Vertex((0, 0), bulge=-1.0), Vertex((40, 0)), Vertex((40, 10)), Vertex((0, 10))])
    assert fault.at is not None
    assert fault.at[1] == pytest.approx(10)


def test_neighbours_that_cross_away_from_their_corner_are_refused() -> None:
    """From (40, 0) the line to (−10, 30) leaves the half circle again at t = 10/17 of the way."""
    fault = refused([Vertex((0, 0), bulge=-1.0), Vertex((40, 0)), Vertex((-10, 30))])
    assert fault.at == pytest.approx((40 - 500 / 17, 300 / 17))


def test_the_same_corner_twice_is_refused_with_both_numbers() -> None:
    assert "Corners 2 and 3 are the same point (10, 0)" in refused([(0, 0), (10, 0), (10, 0), (0, 9)]).message
    assert "Corners 4 and 1 are the same point (0, 0)" in refused([(0, 0), (10, 0), (0, 9), (0, 0)]).message


def test_a_radius_too_big_for_an_edge_is_refused_with_its_corner() -> None:
    fault = refused([Vertex((0, 0)), Vertex((30, 0)), Vertex((30, 8), corner=25), Vertex((0, 40))])
    assert fault.at == (30, 8)
    assert "25 mm of corner 3 at (30, 8) is too big" in fault.message


def test_two_radii_too_big_for_the_edge_between_them_are_refused() -> None:
    with pytest.raises(GeometryFault, match="need 60 mm of its 50 mm"):
        rectangle(100, 50, corner=30)


def test_a_straight_corner_can_not_be_rounded() -> None:
    assert "no corner to round at (20, 0)" in refused([(0, 0), Vertex((20, 0), corner=3), (40, 0), (0, 9)]).message


@pytest.mark.parametrize("bad", [math.nan, math.inf])
def test_what_is_not_a_number_is_refused(bad: float) -> None:
    assert "not a finite number" in refused([(0, 0), (bad, 0), (0, 9)]).message


def test_a_negative_radius_is_refused() -> None:
    assert "radius below 0" in refused([(0, 0), Vertex((20, 0), corner=-1), (0, 9)]).message


@pytest.mark.parametrize("size", [(0, 10), (10, -1), (math.nan, 10)])
def test_a_rectangle_without_a_size_is_refused(size: tuple[float, float]) -> None:
    with pytest.raises(GeometryFault, match="no area"):
        rectangle(*size)


def test_the_number_of_names_must_match_the_corners() -> None:
    with pytest.raises(GeometryFault, match="3 corners need 3 edge names, not 2"):
        polygon([(0, 0), (10, 0), (0, 9)], ["a", "b"])


def test_an_open_ring_is_refused_at_its_gap() -> None:
    with pytest.raises(GeometryFault, match=r"open: one segment ends at \(10, 9\)"):
        ring([Line((0, 0), (10, 0)), Line((10, 0), (10, 9)), Line((10, 8), (0, 0))])
    with pytest.raises(GeometryFault, match="needs segments"):
        ring([])


def test_an_unknown_edge_is_refused_with_the_known_ones() -> None:
    with pytest.raises(GeometryFault, match="no edge named botom; its edges: bottom, right, top, left"):
        rectangle(10, 20).edge("botom")


def test_an_outline_is_frozen_hashable_and_survives_pickling() -> None:
    panel = rectangle(30, 20, 3)
    with pytest.raises(TypeError):
        panel.edges["bottom"] = (0, 4)  # type: ignore[index]
    again = pickle.loads(pickle.dumps(panel))
    assert again == panel
    assert hash(again) == hash(panel)
    assert again.edge("top") == panel.edge("top")


def test_the_polyline_of_an_outline_closes() -> None:
    line = rectangle(30, 20, 3).to_polyline(0.1)
    assert line[0] == line[-1]
    assert shapely.Polygon(line).area == pytest.approx(rectangle(30, 20, 3).area(), rel=0.01)
