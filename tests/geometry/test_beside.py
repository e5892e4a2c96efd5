"""Lines beside lines, and seams beside other features."""

from __future__ import annotations

from pathlib import Path as Folder

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely.geometry import LineString, Polygon

from builder.geometry import GeometryFault, Path, ShapeBook, band, path_beside, polyline
from tests.geometry.test_shapes import features
from tests.geometry.test_shaping import fault
from tests.plants import linked

AREA = "{patch: {strip: patch, at: {left: 50 mm, bottom: 40 mm}}, "
PATCH = (
    "parts/patch.yaml: {part: patch, title: P, material: cloth, outline: {rectangle: {width: 100 mm, height: 60 mm}}}"
)


@given(
    turn=st.floats(-100, 100).filter(lambda one: abs(one) > 5),
    off=st.floats(-15, 15).filter(lambda one: abs(one) > 0.5),
    last=st.floats(60, 200),
)
def test_a_line_beside_a_line_is_where_shapely_has_it(turn: float, off: float, last: float) -> None:
    """An independent judge: shapely's offset curve with mitred corners."""
    points = [(0.0, 0.0), (120.0, 0.0), (120.0 + last * 0.6, turn)]
    ours = LineString(path_beside(polyline(points), off).to_polyline(0.01))
    theirs = LineString(points).offset_curve(off, join_style="mitre", mitre_limit=4.0)
    assert ours.hausdorff_distance(theirs) < 0.01


@given(width=st.floats(2, 40), rise=st.floats(-40, 40))
def test_a_band_is_as_large_as_shapely_has_it(width: float, rise: float) -> None:
    """With square ends."""
    points = [(0.0, 0.0), (100.0, 0.0), (200.0, rise)]
    theirs = LineString(points).buffer(width / 2, cap_style="flat", join_style="mitre")
    ours = band(polyline(points), width)
    assert ours.area() == pytest.approx(theirs.area, rel=1e-6)
    assert Polygon(ours.to_polyline(0.01)).symmetric_difference(theirs).area < 1e-3


def test_a_line_that_collapses_is_refused() -> None:
    """A parallel on the inner side of a corner farther off than its legs are long."""
    with pytest.raises(GeometryFault):
        path_beside(polyline([(0, 0), (10, 0), (10, 10)]), 12.0)


def beside(text: str, folder: Folder) -> Path:
    """The path of a seam beside a patch of 100 × 60 mm at (50, 40)."""
    found = linked(f"{PATCH}\nparts/panel.yaml: {{features: {AREA}{text}}}}}", folder)
    book = ShapeBook(found.model.parts, found.model.states, found.dimensions.definitions)
    built = book.shape("panel", found.dimensions.values)
    assert not book.faults, book.faults
    assert built is not None
    return built.features["a"].paths[0]


def test_a_seam_inside_three_sides_is_the_seam_on_the_patch(tmp_path: Folder) -> None:
    """Both ways to type a patch pocket's edge stitching give one path."""
    along = beside("a: {seam: along, of: patch, off: 3 mm, sides: [left, bottom, right]}", tmp_path / "1")
    on = beside("a: {seam: [left, bottom, right], on: patch, inset: 3 mm}", tmp_path / "2")
    assert along == on
    assert (along.start, along.end) == ((53, 100), (147, 100))
    assert along.length == pytest.approx(57 + 94 + 57)


def test_a_seam_outside_ends_square_to_the_corners(tmp_path: Folder) -> None:
    """Below 0 it lies outside, mitred at the corners between its sides."""
    path = beside("a: {seam: along, of: patch, off: -3 mm, sides: [left, bottom]}", tmp_path)
    assert path.start == pytest.approx((47, 100))
    assert path.end == pytest.approx((150, 37))
    assert path.length == pytest.approx(63 + 103)


def test_all_round_outside_starts_in_the_middle_of_a_side(tmp_path: Folder) -> None:
    """As a seam all round does."""
    path = beside("a: {seam: along, of: patch, off: -3 mm, start: top}", tmp_path)
    assert path.start == path.end == pytest.approx((100, 103))
    assert path.length == pytest.approx(2 * (106 + 66))


def test_a_seam_beside_a_seam_and_a_box(tmp_path: Folder) -> None:
    """To the left of a line, inside a closed one that goes round counter-clockwise."""
    text = """{one: {seam: bottom, inset: 20 mm}, a: {seam: along, of: one, off: 5 mm},
      box: {box: plain, width: 40 mm, height: 30 mm, at: {left: 100 mm, bottom: 100 mm}},
      b: {seam: along, of: box, off: 4 mm}}"""
    built = features(text, tmp_path)
    assert built.features["a"].paths[0].bounds()[1] == pytest.approx(25)
    assert built.features["b"].paths[0].bounds() == pytest.approx((104, 104, 136, 126))


def test_two_ways_to_say_where_are_refused(tmp_path: Folder) -> None:
    """`of` without `along`, `on` with `of`, sides of a line, a feature below."""
    seam = "one: {seam: bottom, inset: 20 mm}"
    assert "only a `seam: along` has" in fault(f"{{{seam}, a: {{seam: top, of: one}}}}", tmp_path / "1")
    both = f"{AREA}a: {{seam: along, of: patch, on: patch}}}}"
    assert "`of` and `on`" in fault(both, tmp_path / "2", PATCH)
    assert "has none" in fault(f"{{{seam}, a: {{seam: along, of: one, sides: left}}}}", tmp_path / "3")
    assert "below it" in fault("{a: {seam: along, of: two}, two: {seam: bottom, inset: 20 mm}}", tmp_path / "4")
