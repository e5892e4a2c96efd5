"""Cutting to a window."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely.geometry import LineString, Polygon, box

from builder.geometry import Line, clip_area, clip_segment, rectangle
from builder.geometry.clip import beyond_fold

WINDOW = (10.0, 10.0, 60.0, 40.0)
coordinates = st.integers(-50, 120).map(float)
points = st.tuples(coordinates, coordinates)


@given(points, points)
def test_clipped_lines_agree_with_shapely(a: tuple[float, float], b: tuple[float, float]) -> None:
    """Length inside the window; lines along its border may count or not."""
    expected = LineString([a, b]).intersection(box(*WINDOW)).length if a != b else 0.0
    found = sum(piece.length for piece in clip_segment(Line(a, b), WINDOW)) if a != b else 0.0
    on_border = (a[0] == b[0] and a[0] in (10, 60)) or (a[1] == b[1] and a[1] in (10, 40))
    assert found == pytest.approx(expected, abs=1e-6) or on_border


@given(st.floats(5, 100), st.floats(5, 100))
def test_clipped_area_of_a_rectangle(width: float, height: float) -> None:
    """Area as shapely has it."""
    corners = clip_area(rectangle(width, height).segments, WINDOW)
    expected = box(0, 0, width, height).intersection(box(*WINDOW)).area
    found = Polygon(corners).area if len(corners) > 2 else 0.0
    assert found == pytest.approx(expected, abs=1e-6)


def test_rounded_corner_stays_an_arc() -> None:
    """A part of an arc is an arc with the same centre."""
    outline = rectangle(100, 100, 30)
    arcs = [
        piece for segment in outline.segments for piece in clip_segment(segment, (0, 0, 15, 15)) if piece.radius < 100
    ]
    assert all(piece.radius == pytest.approx(30) for piece in arcs)


def test_what_is_folded_under_is_gone() -> None:
    """A 20 mm hem off the top of a 100 × 60 panel."""
    corners = beyond_fold(rectangle(100, 60).segments, Line((100, 40), (0, 40)), (50, 30))
    assert Polygon(corners).area == pytest.approx(4000)
