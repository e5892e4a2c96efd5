"""Heat on what a colour puts in the place of a material."""

from __future__ import annotations

from pathlib import Path

import pytest

from builder.pipeline import check_plant
from tests.checking.overlay import lay_over

MOSS = """
materials/all.yaml:
  materials:
    cloth-moss: {title: Moss cloth, form: sheet, width: 1.5 m, mass: 250 g/m2, composition: [COMPOSITION],
      evidence: {kind: safety data sheet, document: SS-2, date: 2026-01-10}}
products/pouch.yaml: {colours: {slate: {}, moss: {cloth: cloth-moss}}}
"""


@pytest.mark.parametrize(
    ("composition", "rules"),
    [("nylon", []), ("'nylon, PVC coating'", ["heat-chlorinated"]), ("unknown", ["heat-composition"])],
)
def test_a_colour_goes_through_the_same_laser(composition: str, rules: list[str], tmp_path: Path) -> None:
    """The goods of a second colour are held to the same declaration as those of the reference."""
    plant = lay_over(MOSS.replace("COMPOSITION", composition), tmp_path / "plant")
    findings = check_plant(plant).findings
    assert [one.rule for one in findings] == rules
    assert all("cloth-moss" in one.message for one in findings)
