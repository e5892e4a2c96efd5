"""Parts divided by a fold, against shapely; folding twice leads back; edges made by closing seams."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely import LineString, Polygon
from shapely.ops import split

from builder.geometry import Line, Outline, PartShape, Path, inside_edge, left_half, mirrored_over, sewn_edge, trimmed
from builder.geometry.outline import polygon, rectangle
from builder.geometry.path import polyline
from builder.geometry.shape import FeatureShape
from builder.model import Part, Seam

PLACES = st.tuples(st.floats(-80, 80), st.floats(-80, 80))


def shape(outline: Outline, *features: FeatureShape) -> PartShape:
    return PartShape("part", Part(title="Part"), outline, {one.name: one for one in features})


def seam(*points: tuple[float, float]) -> FeatureShape:
    return FeatureShape("seam", "seam", Seam(seam=("line",)), (polyline(list(points)),))


@given(PLACES, st.floats(0, 6.28), st.floats(0.2, 0.8))
def test_both_halves_are_shapelys(at: tuple[float, float], turn: float, share: float) -> None:
    """A ring that is not convex, cut along any line that passes through it."""
    ring = polygon([(0, 0), (200, 0), (200, 150), (120, 150), (100, 60), (80, 150), (0, 150)])
    way = math.cos(turn), math.sin(turn)
    start = 100 + at[0], 75 * share
    line = Line(start, (start[0] + 10 * way[0], start[1] + 10 * way[1]))
    far = LineString(
        [(start[0] - 999 * way[0], start[1] - 999 * way[1]), (start[0] + 999 * way[0], start[1] + 999 * way[1])]
    )
    whole = Polygon(ring.to_polyline(0.01))
    left = sum(
        one.area
        for one in split(whole, far).geoms
        if way[0] * (one.representative_point().y - start[1]) - way[1] * (one.representative_point().x - start[0]) > 0
    )
    sides = left_half(shape(ring), line), left_half(shape(ring), Line(line.end, line.start))
    areas = [one.outline.area() if one is not None else 0.0 for one in sides]
    assert areas == pytest.approx([left, whole.area - left], abs=1e-3)


@given(PLACES, PLACES, PLACES)
def test_folding_over_twice_leads_back_and_the_line_stays(
    a: tuple[float, float], b: tuple[float, float], point: tuple[float, float]
) -> None:
    if math.dist(a, b) < 1:
        b = (a[0] + 5, a[1])
    over = mirrored_over(Line(a, b))
    assert over.point(over.point(point)) == pytest.approx(point, abs=1e-6)
    assert over.point(a) == pytest.approx(a, abs=1e-6)
    assert over.point(b) == pytest.approx(b, abs=1e-6)
    assert math.dist(over.point(point), a) == pytest.approx(math.dist(point, a), abs=1e-6)


def test_a_seam_over_the_line_is_divided_there() -> None:
    """100 mm of it, 40 of them to the left; nothing of it where all lies to the right."""
    part = shape(rectangle(100, 50), seam((0, 10), (100, 10)))
    half = left_half(part, Line((40, 0), (40, 50)))
    assert half is not None
    assert half.features["seam"].paths[0].length == pytest.approx(40)
    gone = left_half(shape(rectangle(100, 50), seam((60, 10), (100, 10))), Line((40, 0), (40, 50)))
    assert gone is not None
    assert not gone.features


def test_a_closing_seam_is_the_edge() -> None:
    """8 mm of a 100 mm edge go inside between the seam's ends; the rest of the edge stays."""
    outline = rectangle(200, 100)
    whole = sewn_edge(outline, polyline([(8, 100), (8, 0)]))
    assert whole.area() == pytest.approx(200 * 100 - 8 * 100)
    short = sewn_edge(outline, polyline([(8, 20), (8, 90)]))
    assert short.area() == pytest.approx(200 * 100 - 8 * 70)
    corner = sewn_edge(outline, polyline([(8, 100), (8, 8), (192, 8), (192, 100)]))
    assert corner.bounds() == pytest.approx((8, 8, 192, 100))
    assert corner.area() == pytest.approx(184 * 92)


def test_a_seam_all_round_is_the_new_outline() -> None:
    ring = Path(rectangle(100, 50).segments)
    assert sewn_edge(rectangle(120, 70), ring.reversed()).area() == pytest.approx(100 * 50)


def test_raw_edges_lie_as_far_inside_as_they_lay_outside() -> None:
    path = polyline([(8, 0), (8, 100)])
    (line,) = inside_edge(sewn_edge(rectangle(200, 100), path), path, 8.0)
    assert line.bounds() == pytest.approx((16, 0, 16, 100))


def test_what_is_caught_in_the_seam_ends_there() -> None:
    closing = polyline([(8, 0), (8, 100)])
    edge = sewn_edge(rectangle(200, 100), closing)
    cut = trimmed(seam((0, 50), (200, 50)), edge, [closing])
    assert cut is not None
    assert cut.paths[0].length == pytest.approx(192)
