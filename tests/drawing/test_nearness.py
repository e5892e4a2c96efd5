"""Distances of points from polylines."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely.geometry import LineString, Point

from builder.drawing.nearness import distance, pieces_of

# Hundredths of a millimetre: the library gives up on pieces too short for a float to square.
NUMBERS = st.integers(-5000, 5000).map(lambda number: number / 100)
POINTS = st.tuples(NUMBERS, NUMBERS)


@given(st.lists(POINTS, min_size=2, max_size=6), POINTS)
def test_the_distance_is_that_of_an_independent_library(
    points: list[tuple[float, float]], at: tuple[float, float]
) -> None:
    """Polylines that cross themselves and stand still included."""
    assert distance(at, pieces_of(points)) == pytest.approx(Point(at).distance(LineString(points)), abs=1e-6)


def test_nothing_is_infinitely_far() -> None:
    """A polyline of one point has no piece."""
    assert distance((1.0, 2.0), pieces_of([(0.0, 0.0)])) == float("inf")
