"""Sheets laid over what is larger than one of them."""

from __future__ import annotations

from itertools import combinations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely.geometry import Point as ShapelyPoint
from shapely.geometry import Polygon, box

from builder.geometry import GeometryFault, Outline, Tiling, fewest_sheets, polygon, rectangle, tiled
from builder.geometry.tiling import holds

WINDOW = (190.0, 200.0)
OVERLAP = 15.0
sides = st.floats(5, 1500)


def _ell(width: float, height: float, arm: float) -> Outline:
    """An L: a part whose box has an empty corner."""
    w, h = width * arm, height * arm
    return polygon([(0, 0), (width, 0), (width, h), (w, h), (w, height), (0, height)])


outlines = st.one_of(
    st.builds(rectangle, sides, sides),
    st.builds(_ell, sides, sides, st.floats(0.1, 0.6)),
)


def _laid(outline: Outline) -> Tiling:
    return tiled([outline], *WINDOW, overlap_mm=OVERLAP, margin_mm=3.0)


@given(outlines)
def test_every_point_of_the_outline_lies_on_a_sheet(outline: Outline) -> None:
    """And so does every corner, with the clear margin about it."""
    tiling = _laid(outline)
    for segment in outline.segments:
        for share in (number / 40 for number in range(41)):
            x, y = segment.point_at(share)
            assert any(holds(tile.window, (x, y)) for tile in tiling.tiles)
    left, _, _, top = outline.bounds()
    assert min(tile.window[0] for tile in tiling.tiles) <= left - 3 + 1e-6
    assert max(tile.window[3] for tile in tiling.tiles) >= top + 3 - 1e-6


@given(outlines)
def test_the_whole_area_lies_on_sheets(outline: Outline) -> None:
    """As shapely adds the windows up: no hole where four sheets meet."""
    tiling = _laid(outline)
    rest = Polygon([segment.start for segment in outline.segments])
    for tile in tiling.tiles:
        rest = rest.difference(box(*tile.window))
    assert rest.area < 1e-6


@given(outlines)
def test_neighbours_share_the_overlap_and_two_crosses(outline: Outline) -> None:
    """Exactly 15 mm, and each joint's ends are crosses of both sheets, 7.5 mm inside both windows."""
    tiling = _laid(outline)
    by_number = {tile.number: tile for tile in tiling.tiles}
    for joint in tiling.joints:
        first, second = by_number[joint.first], by_number[joint.second]
        shared = box(*first.window).intersection(box(*second.window))
        left, bottom, right, top = shared.bounds
        assert min(right - left, top - bottom) == pytest.approx(OVERLAP)
        for end in joint.line:
            assert end in tiling.crosses_of(first)
            assert end in tiling.crosses_of(second)
            assert shared.boundary.distance(ShapelyPoint(end)) == pytest.approx(OVERLAP / 2)
    assert len({joint.letter for joint in tiling.joints}) == len(tiling.joints)


@given(outlines)
def test_all_sheets_hang_together(outline: Outline) -> None:
    """From the first, every sheet is reached by joints: nothing lies loose."""
    tiling = _laid(outline)
    reached = {tiling.tiles[0].number}
    for _ in tiling.tiles:
        reached |= {b for j in tiling.joints for a, b in ((j.first, j.second), (j.second, j.first)) if a in reached}
    assert reached == {tile.number for tile in tiling.tiles}


@given(outlines)
def test_no_two_sheets_show_the_same_and_numbers_count_in_reading_order(outline: Outline) -> None:
    """Numbers 1, 2, 3 by row, then by column."""
    tiling = _laid(outline)
    assert [tile.number for tile in tiling.tiles] == list(range(1, len(tiling.tiles) + 1))
    places = [(tile.row, tile.column) for tile in tiling.tiles]
    assert places == sorted(set(places))
    for a, b in combinations(tiling.tiles, 2):
        assert box(*a.window).intersection(box(*b.window)).area < 0.5 * WINDOW[0] * WINDOW[1]


def test_one_sheet_has_nothing_to_join() -> None:
    """A part that fits needs no cross and no letter."""
    tiling = _laid(rectangle(100, 100))
    assert (len(tiling.tiles), tiling.joints, tiling.crosses) == (1, (), ())
    assert tiling.longest(0) is None


def test_a_metre_of_strip() -> None:
    """Counted by hand: 1006 mm over windows of 190, each 175 farther: 1 + ⌈(1006 − 190) ÷ 175⌉ = 6 sheets, 5 joints."""
    tiling = _laid(rectangle(1000, 100))
    assert (len(tiling.tiles), len(tiling.joints), tiling.columns, tiling.rows) == (6, 5, 6, 1)
    span = tiling.longest(0)
    assert span is not None
    # From 7.5 mm inside the first window to 7.5 mm inside the last one.
    assert span[1][0] - span[0][0] == pytest.approx(6 * 190 - 5 * 15 - 15)


def test_sheets_nothing_lies_on_are_left_out() -> None:
    """The empty corner of an L costs no paper."""
    tiling = _laid(_ell(700, 700, 0.1))
    assert len(tiling.tiles) < tiling.columns * tiling.rows


def test_a_quarter_turn_is_taken_where_it_saves_paper() -> None:
    """195 mm of height don't fit a width of 190: lying it takes fewer sheets than standing, or the other way round."""
    turn, tiling = fewest_sheets([rectangle(560, 195)], *WINDOW, overlap_mm=OVERLAP, margin_mm=0.0)
    lying = len(tiled([rectangle(560, 195)], *WINDOW, overlap_mm=OVERLAP).tiles)
    standing = len(tiled([rectangle(195, 560)], *WINDOW, overlap_mm=OVERLAP).tiles)
    assert lying != standing
    assert len(tiling.tiles) == min(lying, standing)
    assert turn == (0.0 if lying < standing else 90.0)


def test_paper_that_is_all_overlap_is_refused() -> None:
    """And so is nothing to lay sheets over."""
    with pytest.raises(GeometryFault):
        tiled([rectangle(10, 10)], 20, 200)
    with pytest.raises(GeometryFault):
        tiled([], 200, 200)
