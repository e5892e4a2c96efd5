"""The oblique projection: straight lines stay straight, parallels parallel, arcs close to their ellipse."""

from __future__ import annotations

import math

from hypothesis import given
from hypothesis import strategies as st

from builder.geometry import Arc, Line, oblique, oblique_path

LENGTHS = st.floats(-500, 500)
POINTS = st.tuples(LENGTHS, LENGTHS)


@given(POINTS, POINTS, st.floats(0, 1), LENGTHS)
def test_a_share_of_a_line_stays_that_share(a: tuple[float, float], b: tuple[float, float], s: float, z: float) -> None:
    """An affine map."""
    between = (a[0] + s * (b[0] - a[0]), a[1] + s * (b[1] - a[1]))
    (ax, ay), (bx, by) = oblique(a, z), oblique(b, z)
    assert math.dist(oblique(between, z), (ax + s * (bx - ax), ay + s * (by - ay))) < 1e-9


@given(POINTS, LENGTHS)
def test_height_goes_straight_up(point: tuple[float, float], height: float) -> None:
    (x0, y0), (x1, y1) = oblique(point), oblique(point, height)
    assert (x1, y1) == (x0, y0 + height)


@given(st.floats(1, 200), st.floats(0, 6.2))
def test_an_arc_follows_its_ellipse(radius: float, turn: float) -> None:
    """Every corner of the polyline lies on the projected circle, and no chord leaves it by more than the tolerance."""
    start = (radius * math.cos(turn), radius * math.sin(turn))
    end = (-radius * math.sin(turn), radius * math.cos(turn))
    lines = oblique_path([Arc(start, end, (0.0, 0.0), False)], 0.0, 0.05)
    for line in lines:
        for x, y in (line.start, line.point_at(0.5), line.end):
            back = ((x - 0.38 / 0.46 * y), y / 0.46)
            assert abs(math.hypot(*back) - radius) <= 0.05 + 1e-6
    assert math.dist(lines[0].start, oblique(start)) < 1e-9
    assert math.dist(lines[-1].end, oblique(end)) < 1e-9


def test_a_line_stays_one_line() -> None:
    assert len(oblique_path([Line((0, 0), (10, 10))], 5.0)) == 1
