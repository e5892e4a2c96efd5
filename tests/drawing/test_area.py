"""Whether a point or a box lies in an area."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely.geometry import Point, Polygon

from builder.drawing.area import Area, crossings
from builder.drawing.box import Box

RING = [(0.0, 0.0), (10.0, 0.0), (10.0, 8.0), (5.0, 3.0), (0.0, 8.0)]


@given(st.floats(-2, 12), st.floats(-2, 10))
def test_a_point_in_the_area_is_found_in_it(x: float, y: float) -> None:
    """By an independent library, off the border."""
    ring = Polygon(RING)
    if ring.exterior.distance(Point(x, y)) > 1e-6:
        assert Area(RING).holds((x, y)) == ring.contains(Point(x, y))


@pytest.mark.parametrize(("box", "expected"), [(Box(1, 1, 9, 2.5), True), (Box(-1, 1, 9, 2.5), False)])
def test_a_box_is_in_the_area_with_its_corners(box: Box, expected: bool) -> None:
    """One corner outside is enough to be outside."""
    assert Area(RING).holds_box(box) is expected


def test_a_level_line_crosses_the_ring_from_left_to_right() -> None:
    """Twice for each part it passes."""
    assert crossings(RING, 5.0) == pytest.approx([0.0, 3.0, 7.0, 10.0])
