"""The second line of a piece with allowances, in closed form and against shapely."""

from __future__ import annotations

import math

import pytest
import shapely
from hypothesis import assume, given
from hypothesis import strategies as st

from builder.geometry.allowance import moved_out
from builder.geometry.offset import MITRE_LIMIT, inset_outline
from builder.geometry.outline import Outline, Vertex, polygon, rectangle
from builder.geometry.vector import GeometryFault, Point, distance, sub, turn_deg

SIDES = ["bottom", "right", "top", "left"]


@st.composite
def convex(draw: st.DrawFn) -> list[Point]:
    """Corners on an ellipse, none sharp enough to be cut off."""
    steps = draw(st.lists(st.floats(20, 100), min_size=3, max_size=8))
    total = sum(steps)
    assume(max(steps) * 360 / total < 150)
    wide, tall = draw(st.floats(60, 150)), draw(st.floats(60, 150))
    angle, corners = draw(st.floats(0, 360)), []
    for step in steps:
        angle += step * 360 / total
        corners.append((wide * math.cos(math.radians(angle)), tall * math.sin(math.radians(angle))))
    return corners


def mitre_area(outline: Outline, out: float) -> float:
    """A + P·d + d²·Σ tan(turn/2): parallels of the sides, and a kite at each corner. Plane geometry."""
    segments = outline.segments
    turns = [
        math.radians(turn_deg(a.tangent_at(1), b.tangent_at(0)))
        for a, b in zip(segments, [*segments[1:], segments[0]], strict=True)
    ]
    return outline.area() + outline.perimeter() * out + out * out * math.fsum(math.tan(turn / 2) for turn in turns)


@given(convex(), st.floats(0.5, 40))
def test_a_convex_piece_grows_by_its_sides_and_kites(corners: list[Point], out: float) -> None:
    """Exact for one allowance all round, when no corner is too sharp for its mitre."""
    outline = polygon(corners)
    segments = outline.segments
    turns = [
        turn_deg(a.tangent_at(1), b.tangent_at(0)) for a, b in zip(segments, [*segments[1:], segments[0]], strict=True)
    ]
    assume(all(1 / math.cos(math.radians(turn / 2)) < MITRE_LIMIT for turn in turns))
    assert moved_out(outline, lambda name: out).area() == pytest.approx(mitre_area(outline, out), rel=1e-9)


@given(st.floats(40, 400), st.floats(40, 400), st.lists(st.floats(0, 30), min_size=4, max_size=4))
def test_a_rectangle_keeps_square_corners(width: float, height: float, outs: list[float]) -> None:
    """Every side moves by its own allowance, and corners stay square."""
    low, right, top, left = outs
    moved = moved_out(rectangle(width, height), lambda name: dict(zip(SIDES, outs, strict=True))[name or ""])
    assert moved.bounds() == pytest.approx((-left, -low, width + right, height + top))
    assert moved.area() == pytest.approx((width + left + right) * (height + low + top))
    assert list(moved.edges) == SIDES


@given(convex(), st.lists(st.floats(1, 25), min_size=8, max_size=8))
def test_different_allowances_agree_with_cut_half_planes(corners: list[Point], outs: list[float]) -> None:
    """A convex piece is what is inside all its sides: so is the moved one, where no mitre is cut off."""
    names = [f"e{number}" for number in range(len(corners))]
    outline = polygon(corners, names)
    table = dict(zip(names, outs, strict=False))
    try:
        moved = moved_out(outline, lambda name: table[name or ""])
    except GeometryFault:
        assume(False)
        raise
    assume(len(moved.segments) == len(corners))
    whole = shapely.box(-2000, -2000, 2000, 2000)
    for name in names:
        side = outline.edge(name)[0]
        (dx, dy), (px, py) = side.tangent_at(0), side.point_at(0)
        px, py = px + dy * table[name], py - dx * table[name]
        far = 4000.0
        a, b = (px - dx * far, py - dy * far), (px + dx * far, py + dy * far)
        whole = whole.intersection(
            shapely.Polygon([a, b, (b[0] - dy * far, b[1] + dx * far), (a[0] - dy * far, a[1] + dx * far)])
        )
    assert moved.area() == pytest.approx(whole.area, rel=1e-6)


@given(st.floats(2, 30), st.floats(2, 30), st.just(0.0) | st.floats(0.5, 40), st.booleans())
def test_rounded_corners_stay_as_far_off_as_the_nearer_side(
    one: float, other: float, radius: float, inward: bool
) -> None:
    """Between two different allowances the corner is nowhere nearer to the old line than the smaller of both."""
    outline = rectangle(300, 200, radius)
    sign = -1 if inward else 1
    moved = moved_out(outline, lambda name: sign * (one if name in ("bottom", "top") else other))
    apart = min(outline.distance_to_boundary(point) for point in moved.to_polyline(0.05))
    assert apart >= min(one, other) - 0.06
    assert moved.bounds() == pytest.approx((-sign * other, -sign * one, 300 + sign * other, 200 + sign * one))


def test_the_seam_line_of_a_cut_edge_and_back() -> None:
    """Out and in again is where one began, arcs included."""
    flap = polygon(
        [Vertex((0, 0)), Vertex((200, 0), bulge=0.2), Vertex((200, 120), corner=15), Vertex((0, 120))], SIDES
    )
    table = {"bottom": 25.0, "right": 10.0, "top": 10.0, "left": 12.0}
    cut = moved_out(flap, lambda name: table[name or ""])
    back = moved_out(cut, lambda name: -table[name or ""])
    assert back.area() == pytest.approx(flap.area(), rel=1e-9)
    assert all(distance(a, b) < 1e-6 for a, b in zip(back.corners(), flap.corners(), strict=True))


def test_a_sharp_point_is_cut_off() -> None:
    """Its mitre would reach over four times the allowance: it is rounded, or cut straight between two allowances."""
    spike = polygon([(0, 0), (300, 20), (0, 40)], ["low", "high", "back"])
    same = moved_out(spike, lambda name: 10.0)
    assert same.bounds()[2] <= 310 + 1e-6
    different = moved_out(spike, lambda name: {"low": 10.0, "high": 12.0, "back": 5.0}[name or ""])
    assert different.bounds()[2] <= 300 + 4 * 12
    assert list(different.edges) == ["low", "high", "back"]


def test_straight_neighbours_step_where_their_allowance_changes() -> None:
    """A side of two names: the line steps square to it."""
    piece = polygon([(0, 0), (100, 0), (200, 0), (200, 80), (0, 80)], ["near", "far", "right", "top", "left"])
    moved = moved_out(piece, lambda name: {"near": 10.0, "far": 25.0}.get(name or "", 5.0))
    step = next(one for one in moved.segments if one.start[0] == pytest.approx(100) == one.end[0])
    assert sub(step.end, step.start) == pytest.approx((0, -15))
    assert moved.area() == pytest.approx(
        200 * 80 + 100 * 10 + 100 * 25 + 5 * 80 * 2 + 5 * 200 + 5 * 10 + 5 * 25 + 2 * 25
    )


def test_one_allowance_is_the_parallel_ring() -> None:
    """No second way for the usual case."""
    outline = rectangle(200, 100, 20)
    assert moved_out(outline, lambda name: 8.0) == inset_outline(outline, -8.0)


def test_an_allowance_that_uses_a_side_up_is_refused() -> None:
    """With the place."""
    with pytest.raises(GeometryFault, match=r"leave nothing of the side|collapses|crosses"):
        moved_out(rectangle(100, 20), lambda name: -12.0 if name in ("bottom", "top") else -3.0)
