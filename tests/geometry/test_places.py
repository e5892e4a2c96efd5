"""Places measured from another feature, and labels, which are placed along an edge or laid on."""

from __future__ import annotations

from pathlib import Path

import pytest

from builder.geometry import ShapeBook
from tests.geometry.test_shapes import features
from tests.plants import found as findings
from tests.plants import linked

BOX = "zip: {box: plain, width: 40 mm, height: 20 mm, at: {left: 100 mm, bottom: 80 mm}}"


def faults(text: str, folder: Path) -> list[str]:
    """What can't be built of the panel with further features."""
    found = linked(f"parts/panel.yaml: {{features: {text}}}", folder)
    book = ShapeBook(found.model.parts, found.model.states, found.dimensions.definitions)
    book.shape("panel", found.dimensions.values)
    return [fault.message for fault in book.faults.values()]


@pytest.mark.parametrize(
    ("at", "corner"),
    [
        ("right of: 12 mm, bottom: 0 mm", (152, 80)),
        ("right of: 12 mm, top: 0 mm", (152, 90)),
        ("right of: 12 mm, middle: 3 mm", (152, 88)),
        ("left of: 12 mm, middle: 0 mm", (58, 85)),
        ("above: 5 mm, centre: 0 mm", (105, 105)),
        ("below: 5 mm, left: 2 mm", (102, 65)),
        ("left: 2 mm, bottom: 1 mm", (102, 81)),
        ("right of: -5 mm, below: -5 mm", (135, 75)),
    ],
)
def test_a_place_beside_a_feature(at: str, corner: tuple[float, float], tmp_path: Path) -> None:
    """`right of` is the gap beside it; `bottom`, `middle` and the rest measure in its box as they do in the part's."""
    text = f"{{{BOX}, a: {{box: plain, width: 30 mm, height: 10 mm, at: {{from: zip, {at}}}}}}}"
    box = features(text, tmp_path).features["a"].paths[0].bounds()
    assert box[:2] == pytest.approx(corner)


def test_a_hole_is_measured_to_its_centre_and_from_the_centres_of_a_row(tmp_path: Path) -> None:
    """As everywhere: what is placed by its centre has its distance to its centre."""
    text = """{row: {hole: 4 mm, at: {left: 50 mm, bottom: 60 mm}, count: 3, pitch: 25 mm},
      a: {hole: 8 mm, at: {from: row, right of: 30 mm, middle: 0 mm}}}"""
    assert features(text, tmp_path).features["a"].points == ((130, 60),)


def test_a_notch_may_stand_across_from_a_feature(tmp_path: Path) -> None:
    """The edge gives the other coordinate."""
    text = f"{{{BOX}, a: {{notch: top, at: {{from: zip, right of: 0 mm}}}}}}"
    assert features(text, tmp_path).features["a"].points[0] == pytest.approx((140, 200))


def test_a_feature_below_in_the_file_is_refused(tmp_path: Path) -> None:
    """So that no two are measured from each other."""
    text = f"{{a: {{hole: 4 mm, at: {{from: zip, right of: 5 mm}}}}, {BOX}}}"
    assert faults(text, tmp_path) == ["a is measured from zip, which stands below it in the file"]


def test_a_gap_beside_nothing_is_refused(tmp_path: Path) -> None:
    """It would be silently left out otherwise."""
    assert faults("{a: {hole: 4 mm, at: {right of: 5 mm}}}", tmp_path) == [
        "a is placed `right of` of nothing: name a feature with `from:`"
    ]


def test_a_component_cant_be_placed_from_a_feature(tmp_path: Path) -> None:
    """A place is measured inside one part."""
    example = """
parts/body.yaml: {part: body, title: Body, from: [{part: panel}, {part: panel, at: {from: hem-seam, left: 3 mm}}]}
"""
    found = linked(example, tmp_path)
    book = ShapeBook(found.model.parts, found.model.states, found.dimensions.definitions)
    assert book.shape("body", found.dimensions.values) is None
    (fault,) = book.faults.values()
    assert fault.path == ("from",)
    assert "between features of one part" in fault.message


def test_a_feature_nobody_typed_is_a_finding(tmp_path: Path) -> None:
    """With the near name offered."""
    text = f"parts/panel.yaml: {{features: {{{BOX}, a: {{hole: 4 mm, at: {{from: zipp, right of: 5 mm}}}}}}}}"
    (one,) = findings(text, tmp_path)
    assert "zipp" in one.message
    assert "zip" in one.remedy


def test_a_gap_is_a_dimension_with_a_name(tmp_path: Path) -> None:
    """A size may change it, and others may rest on it."""
    text = f"parts/panel.yaml: {{features: {{{BOX}, a: {{hole: 4 mm, at: {{from: zip, right of: 5 mm}}}}}}}}"
    assert linked(text, tmp_path).dimensions.values["panel/a.right-of"].value == 5


def test_a_label_laid_on_is_placed_by_its_lower_left_corner(tmp_path: Path) -> None:
    """Turned, by the corner of the box it then takes."""
    text = """{a: {tag: snap, width: 40 mm, height: 15 mm, at: {left: 20 mm, bottom: 30 mm}},
      b: {tag: snap, width: 40 mm, height: 15 mm, turn: 90 deg, at: {left: 80 mm, bottom: 30 mm}, folded: ends}}"""
    built = features(text, tmp_path).features
    assert built["a"].regions[0].bounds() == pytest.approx((20, 30, 60, 45))
    assert built["b"].regions[0].bounds() == pytest.approx((80, 30, 95, 70))
    assert not built["a"].paths
    assert len(built["b"].paths) == 2


@pytest.mark.parametrize(
    ("edge", "at", "box"),
    [
        ("bottom", "left: 40 mm", (40, -5, 60, 40)),
        ("top", "left: 40 mm", (40, 160, 60, 205)),
        ("left", "bottom: 40 mm", (-5, 40, 40, 60)),
        ("right", "bottom: 40 mm", (260, 40, 305, 60)),
        ("right", "top: 40 mm", (260, 140, 305, 160)),
    ],
)
def test_a_label_caught_in_an_edge_lies_inward_from_it(
    edge: str, at: str, box: tuple[float, float, float, float], tmp_path: Path
) -> None:
    """Its width along the edge from the place typed, its overhang outside."""
    text = f"{{a: {{tag: snap, width: 20 mm, height: 45 mm, in: {edge}, at: {{{at}}}, overhang: 5 mm}}}}"
    assert features(text, tmp_path).features["a"].regions[0].bounds() == pytest.approx(box)


@pytest.mark.parametrize(("overhang", "fold"), [(0, 45), (5, 40), (40, -40)])
def test_the_fold_of_a_loop_is_its_end_away_from_the_edge(overhang: int, fold: int, tmp_path: Path) -> None:
    """Inside where most of it lies inside, outside where most of it stands out."""
    text = f"""{{a: {{tag: snap, width: 20 mm, height: 45 mm, in: bottom, at: {{left: 40 mm}}, overhang: {overhang} mm,
      folded: centre}}}}"""
    (path,) = features(text, tmp_path).features["a"].paths
    assert path.start[1] == pytest.approx(fold)
    assert path.end[1] == pytest.approx(fold)


def test_a_label_that_hangs_free_is_refused(tmp_path: Path) -> None:
    """No seam catches what stands out by all of its height."""
    text = "{a: {tag: snap, width: 20 mm, height: 10 mm, in: bottom, at: {left: 40 mm}, overhang: 10 mm}}"
    assert "doesn't catch it" in faults(text, tmp_path)[0]


@pytest.mark.parametrize(("cut", "runs", "depth"), [("v", 2, 4), ("slit", 1, 4), ("castle", 3, 4)])
def test_a_notch_is_cut_as_typed(cut: str, runs: int, depth: float, tmp_path: Path) -> None:
    """Two lines to a V, one to a slit, three to a castle; all as deep as typed."""
    text = f"{{a: {{notch: bottom, cut: {cut}, depth: 4 mm, at: {{left: 40 mm}}}}}}"
    shape = features(text, tmp_path).features["a"]
    (path,) = shape.paths
    assert len(path.runs) == runs
    assert path.bounds()[1::2] == pytest.approx((0, depth))
