"""Typed outlines to shapes: what an engineer writes in a part file, and where the lines then lie."""

from __future__ import annotations

from pathlib import Path

import pytest

from builder.geometry import PartShape
from tests.checking.overlay import lay_over
from tests.geometry.test_shapes import shape
from tests.plants import found


def panel(outline: str, folder: Path, features: str = "{}") -> PartShape:
    """A part with this outline."""
    text = f"""
parts/flap.yaml:
  part: flap
  title: Flap
  material: cloth
  outline: {outline}
  features: {features}
"""
    return shape(text, folder, "flap")


FLAP = """
    half:
      - {x: 0 mm, y: 0 mm, edge: bottom}
      - {x: 100 mm, y: 0 mm, edge: right}
      - {x: 80 mm, y: 120 mm, corner: 10 mm, edge: top, bow: 12 mm}
      - {x: 0 mm, y: 120 mm}
"""


def test_a_bow_and_a_radius_are_typed_at_their_corner(tmp_path: Path) -> None:
    """They may be expressions over other dimensions."""
    built = panel(
        """
    polygon:
      - {x: 0 mm, y: 0 mm, edge: bottom, bow: 8 mm}
      - {x: 200 mm, y: 0 mm, edge: right, radius: "=-1 * corner-2.x"}
      - {x: 200 mm, y: 100 mm, edge: top}
      - {x: 0 mm, y: 100 mm, edge: left, bow: "=corner-1.bow / 2"}
""",
        tmp_path,
    )
    assert built.bounds == pytest.approx((-4, -8, 200, 100))
    assert built.outline.edge("right")[0].radius == pytest.approx(200)


def test_a_half_is_mirrored_about_its_centre_line(tmp_path: Path) -> None:
    """Both halves, four edges, and the line itself."""
    built = panel(FLAP, tmp_path)
    assert sorted(built.outline.edges) == ["bottom", "left", "right", "top"]
    assert built.outline.centroid()[0] == pytest.approx(0)
    assert built.centre_line is not None
    assert built.centre_line.start == (0, 0)


def test_an_allowance_lies_outside_the_typed_seam_line(tmp_path: Path) -> None:
    """A seam without inset follows it, along one edge and all round; its inset is a dimension like any other."""
    built = panel(
        "{rectangle: {width: 200 mm, height: 100 mm}, allowance: 10 mm, typed: seam line}",
        tmp_path,
        "{one: {seam: bottom}, all: {seam: all}, own: {seam: top, inset: 3 mm}}",
    )
    assert built.bounds == pytest.approx((-10, -10, 210, 110))
    assert built.features["one"].paths[0].bounds() == pytest.approx((-10, 0, 210, 0))
    assert built.features["all"].paths[0].bounds() == pytest.approx((0, 0, 200, 100))
    assert built.features["own"].paths[0].start[1] == pytest.approx(107)


def test_a_table_of_allowances(tmp_path: Path) -> None:
    """Each edge its own; a seam over several follows the seam line and runs on to the cut edge."""
    built = panel(
        "{rectangle: {width: 200 mm, height: 100 mm}, allowance: {all: 10 mm, bottom: 25 mm}, typed: seam line}",
        tmp_path,
        "{round: {seam: all}, low: {seam: bottom}, two: {seam: [bottom, right]}, back: {seam: [right, bottom]}}",
    )
    assert built.bounds == pytest.approx((-10, -25, 210, 110))
    assert built.features["round"].paths[0].bounds() == pytest.approx((0, 0, 200, 100))
    assert built.features["low"].paths[0].bounds() == pytest.approx((-10, 0, 210, 0))
    two = built.features["two"].paths[0]
    assert (two.start, two.end) == (pytest.approx((-10, 0)), pytest.approx((200, 110)))
    assert built.features["back"].paths[0].start == pytest.approx(two.end)


def test_a_typed_cut_edge_has_its_seam_line_inside(tmp_path: Path) -> None:
    """An edge without an entry has none, and the seam stops where the cut edge is."""
    built = panel(
        "{rectangle: {width: 200 mm, height: 100 mm}, allowance: {bottom: 25 mm, left: 10 mm}}",
        tmp_path,
        "{two: {seam: [left, bottom]}}",
    )
    assert built.bounds == (0, 0, 200, 100)
    path = built.features["two"].paths[0]
    assert (path.start, path.end) == (pytest.approx((10, 100)), pytest.approx((200, 25)))


def test_a_half_with_an_allowance(tmp_path: Path) -> None:
    """Arcs, rounded corners and mirrored edges together: the seam line is the outline without its allowance."""
    built = panel(FLAP + "    allowance: {all: 8 mm, top: 15 mm}\n    typed: seam line\n", tmp_path)
    assert built.seam_line is not None
    assert sorted(built.outline.edges) == ["bottom", "left", "right", "top"]
    low, high = built.outline.bounds()[1], built.outline.bounds()[3]
    assert (low, high) == pytest.approx((-8, 120 + 12 + 15), abs=0.6)
    assert all(built.outline.distance_to_boundary(point) >= 8 - 1e-6 for point in built.seam_line.to_polyline(0.1))


@pytest.mark.parametrize(
    ("outline", "words"),
    [
        ("{polygon: [{x: 0 mm, y: 0 mm, bow: 3 mm, radius: 9 mm}]}", "each says the whole arc"),
        ("{rectangle: {width: 2 in, height: 1 in}, layer: CUT}", "`layer:` belongs to an outline with a `drawing:`"),
        ("{rectangle: {width: 2 in, height: 1 in}, typed: seam line}", "no `allowance:` outside it"),
        ("{strip: {length: 2 in}, allowance: 3 mm}", "a strip has the width of its material"),
        ("{half: [{x: 0 mm, y: 0 mm}, {x: 0 mm, y: 9 mm, edge: top}]}", "the last corner of a half"),
        ("{rectangle: {width: 2 in, height: 1 in}, allowance: wide}", "asks for a length"),
        ("{rectangle: {width: 2 in, height: 1 in}, allowance: {all: 3}}", "which unit?"),
    ],
)
def test_keys_that_can_not_stand_together(outline: str, words: str, tmp_path: Path) -> None:
    """One message each, at the key."""
    text = f"parts/flap.yaml: {{part: flap, title: Flap, material: cloth, outline: {outline}}}"
    faults = found(text, tmp_path)
    assert len(faults) == 1
    assert words in faults[0].message
    assert faults[0].place.file == "parts/flap.yaml"


@pytest.mark.parametrize(
    ("outline", "words"),
    [
        ("{rectangle: {width: 2 in, height: 1 in}, allowance: {bottm: 3 mm}}", "No edge is called bottm"),
        ("{half: [{x: 0 mm, y: 0 mm}, {x: 9 mm, y: 0 mm}, {x: 3 mm, y: 9 mm}]}", "should lie on its centre line"),
        ("{polygon: [{x: 0 mm, y: 0 mm, bow: 9 mm}, {x: 9 mm, y: 0 mm}, {x: 3 mm, y: 9 mm}]}", "half a turn"),
    ],
)
def test_what_can_not_be_built_says_why(outline: str, words: str, tmp_path: Path) -> None:
    """As a finding of the rule book."""
    from builder.pipeline import check_plant

    text = f"parts/flap.yaml: {{part: flap, title: Flap, material: cloth, outline: {outline}}}"
    findings = check_plant(lay_over(text, tmp_path / "plant")).findings
    assert any(one.rule == "shape-impossible" and words in one.message for one in findings)
