"""Finer points of the rules on what a machine is set to and takes."""

from __future__ import annotations

from pathlib import Path

import pytest

from builder.checking import rule_book
from builder.finding import Finding
from builder.pipeline import check_plant
from tests.checking.overlay import lay_over


def found(example: str, tmp_path: Path) -> list[Finding]:
    """Findings of the small plant with an example laid over it."""
    return list(check_plant(lay_over(example, tmp_path / "plant")).findings)


BOX = """
stations/all.yaml:
  stations:
    lockstitch:
      settings: {program: {set at: panel, verify: value}}
      programs: {"14": {stitches: 60, length: 38 mm, width: 32 mm}}
parts/panel.yaml:
  features: {corner: {box: cross, width: WIDTH, height: HEIGHT, at: {left: 20 mm, bottom: 20 mm}}}
operations/sew-hem.yaml:
  settings: {program: "14"}
  steps: [{step: corner, sew: corner, do: Sew the corner., time: 2 s}]
"""


@pytest.mark.parametrize(("width", "height", "rules"), [(38, 32, []), (32, 38, []), (32, 32, ["program-differs"])])
def test_a_box_program_fits_either_way_round(width: int, height: int, rules: list[str], tmp_path: Path) -> None:
    """A box may be clamped lying or standing."""
    example = BOX.replace("WIDTH", f"{width} mm").replace("HEIGHT", f"{height} mm")
    assert [one.rule for one in found(example, tmp_path)] == rules


def test_when_one_of_two_tacks_fits_the_other_one_is_wrong(tmp_path: Path) -> None:
    """The finding stands at the step of the tack that differs, not at the program."""
    good = rule_book()["program-differs"].good
    long = "{bartack: 42, length: 20 mm, width: 3 mm, at: {left: 90 mm, bottom: 50 mm}}"
    both = good.replace("features: {tack:", f"features: {{long: {long}, tack:").replace(
        "do: Tack it., time: 2 s}", "do: Tack it., time: 2 s}, {step: more, sew: long, do: Tack it., time: 2 s}"
    )
    findings = found(both, tmp_path)
    assert [one.message for one in findings] == ["program P28 sews 28 stitches, long has 42"]
    assert "feature:long" in findings[0].about


FOAM = """
materials/all.yaml:
  materials: {cloth: {thickness: 6 mm, STRUCTURE}}
stations/all.yaml:
  stations: {lockstitch: {foot lift: 8 mm}}
"""


def test_foam_is_pressed_to_slip_under_the_foot(tmp_path: Path) -> None:
    """Two layers of 6 mm: 12 mm of leather stay, 6 mm of foam pass under 8 mm."""
    hard = found(FOAM.replace("STRUCTURE", "structure: leather"), tmp_path / "a")
    assert [one.message for one in hard] == [
        "hem-seam goes through 12 mm of goods (2 x cloth); the foot of Lockstitch lifts 8 mm"
    ]
    assert found(FOAM.replace("STRUCTURE", "structure: foam"), tmp_path / "b") == []


@pytest.mark.parametrize(
    ("structure", "needle", "rules"),
    [
        ("mesh", "Nm 100 R", ["needle-point-for-goods"]),
        ("knit", "Nm 100 SES", []),
        ("leather", "Nm 100 LR", []),
        ("leather", "Nm 100 SUK", ["needle-point-for-goods"]),
        ("woven", "Nm 100", []),
        ("mesh", "Nm 100 XYZ", []),
    ],
)
def test_points_against_goods(structure: str, needle: str, rules: list[str], tmp_path: Path) -> None:
    """A point nobody typed, or a maker's own code, is no finding."""
    example = f"""
materials/all.yaml: {{materials: {{cloth: {{structure: {structure}}}}}}}
operations/sew-hem.yaml: {{settings: {{needle: {needle}}}}}
"""
    assert [one.rule for one in found(example, tmp_path)] == rules


def test_a_thread_that_states_its_needles_comes_before_the_table(tmp_path: Path) -> None:
    """Nm 140 is much for tex 70, but the thread's maker says so."""
    example = """
materials/all.yaml: {materials: {thread-70: {needles: Nm 110..140}}}
operations/sew-hem.yaml: {settings: {needle: Nm 140 R}}
"""
    assert found(example, tmp_path) == []


def test_a_part_may_lie_either_way_on_the_bed_but_only_whole(tmp_path: Path) -> None:
    """300 x 200 mm: a bed of 200 x 300 mm takes it, one of 199 x 400 mm doesn't."""
    bed = "stations/all.yaml: {{stations: {{laser: {{bed: {{width: {} mm, length: {} mm}}}}}}}}"
    assert found(bed.format(200, 300), tmp_path / "a") == []
    assert [one.rule for one in found(bed.format(199, 400), tmp_path / "b")] == ["bed-too-small"]


def test_a_large_size_alone_is_named(tmp_path: Path) -> None:
    """The reference size fits the bed, size L doesn't."""
    example = """
stations/all.yaml: {stations: {laser: {bed: {width: 250 mm, length: 320 mm}}}}
products/pouch.yaml: {sizes: {M: {}, L: {panel.width: 340 mm}}}
"""
    findings = found(example, tmp_path)
    assert [one.rule for one in findings] == ["bed-too-small"]
    assert "in size L" in findings[0].message
