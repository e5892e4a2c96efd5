"""From typed parts to shapes in millimetres."""

from __future__ import annotations

from pathlib import Path

import pytest

from builder.geometry import PartShape, ShapeBook
from tests.plants import linked


def shape(example: str, folder: Path, part: str = "panel") -> PartShape:
    """The shape of a part of the small plant with an example laid over it."""
    found = linked(example, folder)
    book = ShapeBook(found.model.parts, found.model.states, found.dimensions.definitions)
    built = book.shape(part, found.dimensions.values)
    assert not book.faults, book.faults
    assert built is not None
    return built


def features(text: str, folder: Path) -> PartShape:
    """The small plant's panel, 300 × 200 mm, with further features."""
    return shape(f"parts/panel.yaml: {{features: {text}}}", folder)


def test_places_from_every_edge_and_centre_line(tmp_path: Path) -> None:
    """Inward from edges, right and up from centre lines."""
    text = """{a: {hole: 4 mm, at: {left: 20 mm, bottom: 30 mm}}, b: {hole: 4 mm, at: {right: 20 mm, top: 30 mm}},
      c: {hole: 4 mm, at: {centre: 5 mm, middle: -5 mm}}}"""
    built = features(text, tmp_path)
    assert [built.features[name].points[0] for name in "abc"] == [(20, 30), (280, 170), (155, 95)]


def test_a_box_is_placed_by_its_own_edges(tmp_path: Path) -> None:
    """`right: 10 mm` is the gap beside the box, not the place of its corner."""
    built = features("{a: {box: plain, width: 40 mm, height: 30 mm, at: {right: 10 mm, top: 10 mm}}}", tmp_path)
    assert built.features["a"].paths[0].bounds() == pytest.approx((250, 160, 290, 190))


def test_a_seam_follows_the_order_of_its_edges(tmp_path: Path) -> None:
    """Down the right side from the top means clockwise."""
    built = features("{a: {seam: [top, right], inset: 10 mm}, b: {seam: [right, top], inset: 10 mm}}", tmp_path)
    one, other = built.features["a"].paths[0], built.features["b"].paths[0]
    assert one.start == pytest.approx(other.end)
    assert one.length == pytest.approx(other.length)
    assert one.start[1] > 150
    assert one.end[1] < 50


def test_a_row_by_count_and_pitch(tmp_path: Path) -> None:
    """From the first, across or up."""
    text = "{a: {bartack: 28, length: 10 mm, width: 3 mm, count: 3, pitch: 25 mm, at: {left: 50 mm, bottom: 60 mm}}}"
    built = features(text, tmp_path)
    assert built.features["a"].points == ((50, 60), (75, 60), (100, 60))
    assert built.features["a"].regions[0].area() == pytest.approx(30)


def test_a_feature_on_a_strip_is_placed_on_the_strip(tmp_path: Path) -> None:
    """Relative to the strip's own rectangle, turned as it is."""
    example = """
materials/all.yaml: {materials: {tape: {title: Tape, form: tape, width: 25 mm}}}
parts/tie.yaml: {part: tie, title: Tie, material: tape, outline: {strip: {length: 120 mm}}}
parts/panel.yaml:
  features:
    tie-strip: {strip: tie, at: {left: 40 mm, bottom: 20 mm}, turn: 90 deg, folded under: 20 mm}
    tie-box: {box: cross, on: tie-strip, width: 20 mm, height: 20 mm, at: {left: 2.5 mm, bottom: 3 mm}}
"""
    built = shape(example, tmp_path)
    assert built.features["tie-strip"].regions[0].bounds() == pytest.approx((40, 20, 65, 120))
    assert built.features["tie-box"].paths[0].bounds() == pytest.approx((42.5, 23, 62.5, 43))


def test_a_sub_assembly_places_and_flips_its_parts(tmp_path: Path) -> None:
    """The outline is that of the first; a part wrong side up is mirrored and stays in place."""
    example = """
parts/patch.yaml:
  part: patch
  title: Patch
  material: cloth
  outline: {rectangle: {width: 60 mm, height: 40 mm}}
  features: {mark: {hole: 2 mm, at: {left: 10 mm, bottom: 10 mm}}}
parts/body.yaml:
  part: body
  title: Body
  from: [{part: panel}, {part: patch, at: {left: 100 mm, bottom: 50 mm}, side: wrong, layer: 2}]
"""
    built = shape(example, tmp_path, "body")
    assert built.bounds == pytest.approx((0, 0, 300, 200))
    patch = built.components[1]
    assert patch.placing.outline(patch.shape.outline).bounds() == pytest.approx((100, 50, 160, 90))
    assert patch.placing.point((10, 10)) == pytest.approx((150, 60))


def test_sizes_that_agree_share_their_shape(tmp_path: Path) -> None:
    """Built once for equal dimensions, whatever else a size changes."""
    found = linked("", tmp_path)
    book = ShapeBook(found.model.parts, found.model.states, found.dimensions.definitions)
    assert book.shape("panel", found.dimensions.values) is book.shape("panel-hemmed", dict(found.dimensions.values))
