"""Corners to rings: arcs by radius and bow in closed form, mirrored halves against the whole typed out."""

from __future__ import annotations

import math

import pytest
import shapely
from hypothesis import assume, given
from hypothesis import strategies as st

from builder.geometry.corners import Spot, bulge_of_bow, bulge_of_radius, mirrored_name, ring_of, whole_of_half
from builder.geometry.outline import Outline
from builder.geometry.vector import GeometryFault


def mirrored(half: list[Spot]) -> Outline:
    """The ring of a half."""
    return ring_of(whole_of_half(half)[0])


@given(st.floats(0.5, 1000), st.floats(-1, 1))
def test_a_bow_gives_the_area_of_its_segment(chord: float, share: float) -> None:
    """The circular segment's area from bow and chord: r²/2·(θ − sin θ), r = (c²/4 + h²)/2h."""
    bow = share * chord / 2
    square = [Spot((0, 0), bow=bow), Spot((chord, 0)), Spot((chord, chord)), Spot((0, chord))]
    height = abs(bow)
    if height < 1e-6 * chord:
        return
    radius = (chord * chord / 4 + height * height) / (2 * height)
    angle = 4 * math.atan(2 * height / chord)
    segment = radius * radius / 2 * (angle - math.sin(angle))
    assert ring_of(square).area() == pytest.approx(chord * chord + math.copysign(segment, bow), rel=1e-9)


@given(st.floats(1, 1000), st.floats(1, 100), st.booleans())
def test_radius_and_bow_say_the_same_arc(chord: float, factor: float, inward: bool) -> None:
    """bow = r − √(r² − c²/4); a radius below 0 bows inward."""
    radius = chord / 2 * factor
    bow = radius - math.sqrt(max(0.0, radius * radius - chord * chord / 4))
    sign = -1 if inward else 1
    assert bulge_of_radius(chord, sign * radius) == pytest.approx(bulge_of_bow(chord, sign * bow), rel=1e-6, abs=1e-9)


def test_half_a_turn_is_the_most() -> None:
    """A half circle is still drawn, a little more is refused with the length it lacks."""
    assert bulge_of_bow(100, 50) == pytest.approx(1)
    assert bulge_of_radius(100, -50) == pytest.approx(-1)
    with pytest.raises(GeometryFault, match="more than half a turn"):
        bulge_of_bow(100, 51)
    with pytest.raises(GeometryFault, match="needs 50 or more"):
        bulge_of_radius(100, 49)


@pytest.mark.parametrize("turned", [False, True])
def test_outward_is_outward_whichever_way_the_corners_run(turned: bool) -> None:
    """Clockwise corners don't turn a bow inside out."""
    corners = [(0.0, 0.0), (100.0, 0.0), (100.0, 60.0), (0.0, 60.0)]
    spots = [Spot(at, bow=5) for at in (corners[::-1] if turned else corners)]
    assert ring_of(spots).bounds() == pytest.approx((-5, -5, 105, 65))


def test_a_half_with_square_sides_has_four_edges() -> None:
    """What crosses the centre line square is one edge and one line; its bow is that of the whole edge."""
    half = [
        Spot((0, 0), edge="bottom"),
        Spot((100, 0), edge="right"),
        Spot((80, 200), edge="top", bow=12),
        Spot((0, 200)),
    ]
    whole = mirrored(half)
    assert sorted(whole.edges) == ["bottom", "left", "right", "top"]
    assert all(len(whole.edge(name)) == 1 for name in whole.edges)
    assert whole.edge("bottom")[0].length == pytest.approx(200)
    assert whole.edge("top")[0].point_at(0.5) == pytest.approx((0, 212))
    assert whole.bounds() == pytest.approx((-100, 0, 100, 212))


def test_a_point_on_the_centre_line_stays_a_corner() -> None:
    """A flap with a point: its two sides are two edges, the mirrored one with a suffix."""
    half = [Spot((0, 0), edge="tip"), Spot((60, 40), edge="side-right"), Spot((60, 120), edge="top"), Spot((0, 120))]
    whole = mirrored(half)
    assert sorted(whole.edges) == ["side-left", "side-right", "tip", "tip-mirrored", "top"]
    assert whole.area() == pytest.approx(2 * (60 * 120 - 60 * 40 / 2))


def test_a_level_centre_line_swaps_top_and_bottom() -> None:
    """Typed from left to right above the line."""
    half = [Spot((150, 0), edge="right"), Spot((150, 30), edge="top"), Spot((0, 20), edge="left"), Spot((0, 0))]
    whole = mirrored(half)
    assert sorted(whole.edges) == ["bottom", "left", "right", "top"]
    assert whole.edge("bottom")[0].start[1] == pytest.approx(-20)
    assert whole.bounds() == pytest.approx((0, -30, 150, 30))


def test_a_lens_of_two_corners() -> None:
    """One bowed side along the centre line and its image."""
    lens = mirrored([Spot((0, 0), edge="top", bow=10), Spot((80, 0))])
    assert sorted(lens.edges) == ["bottom", "top"]
    assert lens.bounds() == pytest.approx((0, -10, 80, 10))


@given(
    st.lists(st.tuples(st.floats(5, 100), st.floats(1, 40), st.floats(-0.4, 0.4)), min_size=2, max_size=6),
    st.booleans(),
)
def test_a_mirrored_piece_is_its_own_mirror_image(steps: list[tuple[float, float, float]], upright: bool) -> None:
    """Area twice that of the half, centre of area on the line, each side as long as its image."""
    y, places = 0.0, []
    for x, rise, bow in steps:
        places.append((x, y, bow * rise))
        y += rise
    spots = [
        Spot((0, 0), edge="start"),
        *(Spot((x, at), edge=f"e{n}-right", bow=b / 4) for n, (x, at, b) in enumerate(places)),
    ]
    spots[-1] = Spot(spots[-1].at, edge="end")
    spots.append(Spot((0, spots[-1].at[1])))
    if not upright:
        spots = [Spot((one.at[1], one.at[0]), 0, one.edge, None, one.bow) for one in spots]
    try:
        whole = mirrored(spots)
    except GeometryFault:  # bows that cross their neighbours
        assume(False)
        raise
    axis = 0 if upright else 1
    assert whole.centroid()[axis] == pytest.approx(0, abs=1e-6)
    assert whole.area() == pytest.approx(shapely.Polygon(whole.to_polyline(1e-3)).area, rel=2e-3)
    for number in range(len(places) - 1):
        one, other = f"e{number}-right", f"e{number}-left" if upright else f"e{number}-right-mirrored"
        assert whole.edge(one)[0].length == pytest.approx(whole.edge(other)[0].length)


def test_ends_off_the_centre_line_are_told_where_they_are() -> None:
    """With both coordinates of both."""
    with pytest.raises(GeometryFault, match=r"\(0, 0\), and its last, \(3, 200\)"):
        mirrored([Spot((0, 0)), Spot((100, 0)), Spot((3, 200))])
    with pytest.raises(GeometryFault, match="at least 2 corners"):
        mirrored([Spot((0, 0))])


def test_words_of_a_name_swap_whole() -> None:
    """`leftover` holds no side."""
    assert mirrored_name("leftover") == "leftover-mirrored"
    assert mirrored_name("left") == "right"
