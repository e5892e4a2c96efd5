"""Placings: rigid, composable, invertible, and turning over as a page does."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.geometry.outline import Vertex, polygon, rectangle
from builder.geometry.path import box_and_cross
from builder.geometry.placing import IN_PLACE, Placing, compose
from builder.geometry.segment import Arc, Line
from builder.geometry.vector import Point, distance

numbers = st.floats(-300, 300)
points = st.tuples(numbers, numbers)
angles = st.one_of(st.floats(-400, 400), st.sampled_from([0.0, 90.0, 180.0, 270.0, -90.0]))
placings = st.builds(Placing, numbers, numbers, angles, st.booleans())


def test_turned_over_then_turned_then_moved() -> None:
    """(3, 1) over to (−3, 1), a quarter left to (−1, −3), moved by (10, 20)."""
    assert Placing(10, 20, 90, flipped=True).point((3, 1)) == (9, 17)
    assert Placing(10, 20, 90).point((3, 1)) == (9, 23)


def test_turning_over_keeps_up_up() -> None:
    assert Placing(flipped=True).point((5, 7)) == (-5, 7)


@given(placings, points, points)
def test_no_distance_changes(placing: Placing, a: Point, b: Point) -> None:
    assert distance(placing.point(a), placing.point(b)) == pytest.approx(distance(a, b), abs=1e-9)


@given(placings, placings, points)
def test_compose_is_one_after_the_other(outer: Placing, inner: Placing, point: Point) -> None:
    both = outer.point(inner.point(point))
    assert compose(outer, inner).point(point) == pytest.approx(both, abs=1e-8)
    assert inner.then(outer).point(point) == pytest.approx(both, abs=1e-8)


@given(placings, points)
def test_the_inverse_undoes(placing: Placing, point: Point) -> None:
    assert placing.inverse().point(placing.point(point)) == pytest.approx(point, abs=1e-8)
    assert placing.point(placing.inverse().point(point)) == pytest.approx(point, abs=1e-8)


@given(st.sampled_from([0, 90, 180, 270]), st.booleans(), st.tuples(st.integers(-99, 99), st.integers(-99, 99)))
def test_quarter_turns_come_back_exactly(turn: int, flipped: bool, point: tuple[int, int]) -> None:
    placing = Placing(12, -7, turn, flipped)
    assert placing.inverse().point(placing.point(point)) == point


@given(points)
def test_in_place_moves_nothing(point: Point) -> None:
    assert IN_PLACE.point(point) == point


@given(placings, st.floats(0, 1), st.booleans())
def test_an_arc_moves_point_by_point(placing: Placing, share: float, clockwise: bool) -> None:
    """The sense of an arc is only right if its inner points land where the points themselves land."""
    arc = Arc((10.0, 0.0), (0.0, 10.0), (0.0, 0.0), clockwise)
    moved = placing.segment(arc)
    assert moved.length == pytest.approx(arc.length)
    assert moved.point_at(share) == pytest.approx(placing.point(arc.point_at(share)), abs=1e-8)


def test_turning_over_swaps_the_sense_of_an_arc() -> None:
    arc = Arc((10.0, 0.0), (0.0, 10.0), (0.0, 0.0), clockwise=False)
    over = Placing(flipped=True).segment(arc)
    assert isinstance(over, Arc)
    assert over.clockwise
    turned = Placing(turn_deg=33).segment(arc)
    assert isinstance(turned, Arc)
    assert not turned.clockwise


@given(placings)
def test_a_path_keeps_its_order_and_lengths(placing: Placing) -> None:
    path = box_and_cross(38.1, 30)
    moved = placing.path(path)
    assert moved.run_lengths == pytest.approx(path.run_lengths)
    assert [orders for _, orders in moved.distinct()] == [orders for _, orders in path.distinct()]
    assert moved.start == placing.point(path.start)


@given(placings)
def test_an_outline_stays_counter_clockwise_and_its_edges_keep_their_names(placing: Placing) -> None:
    corners = [
        Vertex((0, 0)),
        Vertex((80, 0), bulge=0.2, corner=5),
        Vertex((70, 50)),
        Vertex((0, 40), bulge=-0.1),
    ]
    part = polygon(corners, ["hem", "side", "top", None])
    moved = placing.outline(part)
    assert moved.area() == pytest.approx(part.area())
    assert moved.centroid() == pytest.approx(placing.point(part.centroid()), abs=1e-7)
    for name in ("hem", "side", "top"):
        ends = {placing.point(part.edge(name)[0].start), placing.point(part.edge(name)[-1].end)}
        assert {moved.edge(name)[0].start, moved.edge(name)[-1].end} == ends


def test_the_left_edge_lies_right_when_the_panel_is_turned_over() -> None:
    over = Placing(flipped=True).outline(rectangle(60, 40))
    assert over.edge("left") == (Line((0, 0), (0, 40)),)
    assert over.bounds() == (-60, 0, 0, 40)
    assert over.edge("right")[0].start[0] == -60


def test_over_twice_is_back() -> None:
    over = Placing(60, 0, 0, flipped=True)
    assert compose(over, over).point((11.0, 5.0)) == (11, 5)


def test_a_turn_composes_to_less_than_a_whole_one() -> None:
    both = compose(Placing(turn_deg=300), Placing(turn_deg=100))
    assert both.turn_deg == pytest.approx(40)
    assert math.isclose(compose(Placing(flipped=True), Placing(turn_deg=30)).turn_deg, 330)
