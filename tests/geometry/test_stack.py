"""Stacks under a seam, each counted by hand."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path

from builder.geometry import ShapeBook, layers_of, stacks_along
from tests.plants import linked

HALF = "{fold: line, points: [{left: 150 mm, bottom: 0 mm}, {left: 150 mm, top: 0 mm}]}"


def stacks(
    folder: Path, features: str, seam: str, done: Iterable[str], part: str = "panel", more: str = ""
) -> set[tuple[str, ...]]:
    """Stacks under a feature of the small plant's panel (300 × 200 mm) or of another part.

    done : features worked, as `part/feature` or of the part itself
    """
    found = linked(f"parts/panel.yaml: {{features: {features}}}\n{more}", folder)
    book = ShapeBook(found.model.parts, found.model.states, found.dimensions.definitions)
    shape = book.shape(part, found.dimensions.values)
    assert shape is not None, book.faults
    work = {(name.partition("/")[0], name.partition("/")[2]) if "/" in name else (part, name) for name in done}
    return set(stacks_along(shape.features[seam], layers_of(shape, work)))


STRAP = """
materials/all.yaml: {materials: {webbing: {title: Webbing, form: webbing, width: 25 mm}}}
parts/strap.yaml: {part: strap, title: Strap, material: webbing, outline: {strip: {length: 100 mm}}}
"""
ACROSS = "{seam: line, points: [{left: 10 mm, bottom: 50 mm}, {left: 290 mm, bottom: 50 mm}]}"


def test_a_plain_panel_is_one_layer(tmp_path: Path) -> None:
    """Nothing folded, nothing laid on."""
    assert stacks(tmp_path, f"{{across: {ACROSS}}}", "across", ()) == {("panel",)}


def test_a_strip_lies_under_a_part_of_the_seam(tmp_path: Path) -> None:
    """Beside the strip one layer, over it two."""
    features = f"{{patch: {{strip: strap, at: {{left: 40 mm, bottom: 40 mm}}}}, across: {ACROSS}}}"
    assert stacks(tmp_path, features, "across", ["patch"], more=STRAP) == {("panel",), ("panel", "strap")}


def test_a_strip_not_yet_laid_is_no_layer(tmp_path: Path) -> None:
    """It is laid later."""
    features = f"{{patch: {{strip: strap, at: {{left: 40 mm, bottom: 40 mm}}}}, across: {ACROSS}}}"
    assert stacks(tmp_path, features, "across", (), more=STRAP) == {("panel",)}


def test_a_folded_end_counts_twice(tmp_path: Path) -> None:
    """30 of 100 mm folded under: 70 mm lie there, the first 30 of them twice."""
    patch = "{strip: strap, at: {left: 40 mm, bottom: 40 mm}, folded under: 30 mm}"
    short = "{seam: line, points: [{left: 45 mm, bottom: 50 mm}, {left: 65 mm, bottom: 50 mm}]}"
    found = stacks(tmp_path / "a", f"{{patch: {patch}, short: {short}}}", "short", ["patch"], more=STRAP)
    assert found == {("panel", "strap", "strap")}
    whole = stacks(tmp_path / "b", f"{{patch: {patch}, across: {ACROSS}}}", "across", ["patch"], more=STRAP)
    assert whole == {("panel",), ("panel", "strap"), ("panel", "strap", "strap")}


def test_a_hem_is_two_layers_on_either_side_of_its_fold(tmp_path: Path) -> None:
    """Fold at 15 mm: a seam 12 or 25 mm from the raw edge goes through both layers, one 35 mm from it through one."""
    features = """{near: {seam: top, inset: 12 mm}, under: {seam: top, inset: 25 mm}, below: {seam: line,
      points: [{left: 20 mm, top: 35 mm}, {right: 20 mm, top: 35 mm}]}}"""
    hem = ["hem-fold"]
    below = stacks(tmp_path / "a", features, "below", hem)
    near = stacks(tmp_path / "b", features, "near", hem)
    assert below == {("panel",)}
    assert max(near, key=len) == ("panel", "panel")
    assert ("panel", "panel") in stacks(tmp_path / "c", features, "under", hem)


def test_a_hem_turned_twice_is_three_layers(tmp_path: Path) -> None:
    """Folds at 10 and 25 mm from the edge: 30 to 35 mm from it three layers lie, at 28 mm two."""
    folds = "one: {fold: top, inset: 10 mm}, two: {fold: top, inset: 25 mm}"
    line = "{{seam: line, points: [{{left: 40 mm, top: {0} mm}}, {{right: 40 mm, top: {0} mm}}]}}"
    features = f"{{{folds}, a: {line.format(33)}, b: {line.format(28)}}}"
    assert stacks(tmp_path / "a", features, "a", ["one", "two"]) == {("panel",) * 3}
    assert stacks(tmp_path / "b", features, "b", ["one", "two"]) == {("panel",) * 2}


def test_folded_in_half_everything_is_double(tmp_path: Path) -> None:
    """A fold in the middle."""
    assert stacks(tmp_path, f"{{half: {HALF}, across: {ACROSS}}}", "across", ["half"]) == {("panel", "panel")}


BODY = """
parts/lining.yaml: {part: lining, title: Lining, material: cloth,
  outline: {rectangle: {width: 300 mm, height: 300 mm}}}
parts/body.yaml:
  part: body
  title: Body
  from:
    - {part: lining, layer: 1}
    - {part: panel, layer: 2, SIDE at: {left: 0 mm, bottom: 0 mm}}
  features:
    up: {seam: line, points: [{left: 90 mm, bottom: 10 mm}, {left: 90 mm, top: 10 mm}]}
"""


def test_a_sub_assembly_is_the_layers_of_its_parts(tmp_path: Path) -> None:
    """Where the panel ends, the lining alone lies under the seam; the panel's hem is folded and ends at its fold."""
    for name, side in (("right", ""), ("wrong", "side: wrong,")):
        body = BODY.replace("SIDE", side)
        plain = stacks(tmp_path / name / "a", "{}", "up", (), "body", body)
        assert plain == {("lining",), ("lining", "panel")}
        hemmed = stacks(tmp_path / name / "b", "{}", "up", ["panel/hem-fold"], "body", body)
        assert hemmed == {("lining",), ("lining", "panel"), ("lining", "panel", "panel")}


def test_nothing_of_a_folded_part_lies_beyond_its_fold(tmp_path: Path) -> None:
    """A seam 8 mm above the fold of the panel's hem, where the flat panel would still be."""
    beyond = "features: {over: {seam: line, points: [{left: 40 mm, bottom: 193 mm}, {right: 40 mm, bottom: 193 mm}]}}"
    body = BODY.replace("SIDE", "").partition("  features:")[0] + f"  {beyond}\n"
    assert stacks(tmp_path / "a", "{}", "over", (), "body", body) == {("lining", "panel")}
    assert stacks(tmp_path / "b", "{}", "over", ["panel/hem-fold"], "body", body) == {("lining",)}


def test_a_bartack_goes_through_what_lies_under_its_edge(tmp_path: Path) -> None:
    """Half on the strip, half beside it."""
    tack = "{bartack: 28, length: 20 mm, width: 3 mm, at: {left: 40 mm, bottom: 50 mm}, stands: across}"
    features = f"{{patch: {{strip: strap, at: {{left: 40 mm, bottom: 40 mm}}}}, tack: {tack}}}"
    assert stacks(tmp_path, features, "tack", ["patch"], more=STRAP) == {("panel",), ("panel", "strap")}
