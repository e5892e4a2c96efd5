"""Rules that meet pleats, darts, zips, elastic and seams beside something."""

from __future__ import annotations

from pathlib import Path

import pytest

from builder.pipeline import check_plant
from tests.checking.overlay import lay_over, without_idle

GOODS = """
materials/shaping.yaml:
  materials:
    zip-5: {title: Zip, form: zip, width: 30 mm, composition: [polyester]}
    elastic-20: {title: Elastic, form: tape, width: 20 mm, composition: [polyester]}
"""


def rules(features: str, folder: Path, more: str = "") -> list[str]:
    """Rules of the findings on the small panel, 300 × 200 mm, with further features; `row` is worked by the hem."""
    example = f"{GOODS}{more}parts/panel.yaml:\n  features:\n    {features}\n"
    return [one.rule for one in without_idle(check_plant(lay_over(example, folder / "plant")).findings)]


@pytest.mark.parametrize(
    ("features", "expected"),
    [
        ("row: {pleat: 6 mm, at: {left: 40 mm}, length: 250 mm}", ["feature-outside-part"]),
        ("row: {pleat: 6 mm, at: {left: 40 mm}, length: 150 mm}", []),
        ("row: {dart: 20 mm, depth: 240 mm, edge: left, at: {bottom: 100 mm}}", []),
        ("row: {dart: 20 mm, depth: 240 mm, edge: bottom, at: {left: 100 mm}}", ["feature-outside-part"]),
        ("row: {zip: zip-5, along: left, inset: -8 mm}", []),
        ("row: {zip: zip-6, along: left, inset: -8 mm}", ["name-unknown"]),
        ("row: {elastic: elastic-20, along: left, inset: 8 mm, relaxed: 100 mm}", ["feature-outside-part"]),
        ("row: {elastic: elastic-20, along: left, inset: 28 mm, relaxed: 100 mm}", []),
        ("row: {zip: zip-5, along: bottom, inset: 30 mm}", ["features-collide"]),
        (
            "row: {pleat: 6 mm, at: {left: 138 mm}}\n    hole: {hole: 4 mm, at: {centre: 0 mm, bottom: 30 mm}}",
            ["features-collide"],
        ),
        ("row: {seam: along, of: hem-seam, off: -20 mm}", ["feature-outside-part"]),
        ("row: {seam: along, of: hem-seam, off: 20 mm}", []),
        ("row: {seam: along, of: hem-seem, off: 20 mm}", ["name-unknown"]),
        ("row: {seam: along, off: 20 mm}", ["shape-impossible"]),
    ],
)
def test_where_they_may_lie(features: str, expected: list[str], tmp_path: Path) -> None:
    """On their part, off the snap; a zip may hang over the edge it is sewn to."""
    assert rules(features, tmp_path) == expected


PATCH = """
plant.yaml: {seam allowances: {'301': 5 mm}}
parts/patch.yaml: {part: patch, title: P, material: cloth, outline: {rectangle: {width: 80 mm, height: 60 mm}}}
operations/sew-hem.yaml:
  steps: [{step: patch, place: patch, do: Lay it., time: 2 s}, {step: edge, sew: edge, do: Sew it., time: 2 s}]
"""


@pytest.mark.parametrize(("off", "expected"), [("3 mm", ["seam-allowance-small"]), ("6 mm", []), ("-3 mm", [])])
def test_edge_stitching_needs_the_allowance_of_a_seam_along_an_edge(
    off: str, expected: list[str], tmp_path: Path
) -> None:
    """Inside a patch whose edges are raw; beside it there is no edge to slide out of."""
    patch = "patch: {strip: patch, at: {left: 40 mm, top: 60 mm}}\n    edge: {seam: along, of: patch, "
    assert rules(f"{patch}off: {off}, sides: [left, bottom, right]}}", tmp_path, PATCH) == expected


def test_a_feature_nobody_works_is_named_with_its_verb(tmp_path: Path) -> None:
    """As every other kind."""
    text = "{a: {pleat: 4 mm, at: {left: 40 mm}}, b: {dart: 9 mm, depth: 40 mm, edge: left, at: {bottom: 80 mm}}}"
    findings = check_plant(lay_over(f"parts/panel.yaml: {{features: {text}}}", tmp_path / "plant")).findings
    words = [one.message for one in findings if one.rule == "feature-never-made"]
    assert words == ["no step folds a of panel", "no step sews b of panel"]
