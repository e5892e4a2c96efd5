"""Rules on what a step is done once for: which fact is missing, and what to do."""

from __future__ import annotations

from pathlib import Path

import pytest

from builder.finding import Finding
from builder.pipeline import check_plant
from tests.checking.overlay import lay_over, without_idle

FACTS = """
materials/all.yaml:
  materials: {cloth: {thickness: 0.5 mm}, thread-70: {cone: 3000 m}}
stations/all.yaml:
  stations: {lockstitch: {bobbins: {thread-70: {holds: 27 m, left: 1.5 m}}, needle hours: 8 h}}
operations/sew-hem.yaml:
  pieces a sheet: 20
  steps: [{step: change, do: Change it., time: 20 s, per: PER}]
"""


def findings(folder: Path, per: str, drop: str = "", new: str = "") -> list[Finding]:
    """Findings of the small plant with a step done that often, and a fact left out."""
    example = FACTS.replace("PER", per)
    assert drop in example
    return without_idle(check_plant(lay_over(example.replace(drop or "\0", new), folder / "plant")).findings)


@pytest.mark.parametrize("per", ["bobbin", "cone", "needle", "sheet"])
def test_with_its_facts_nothing_is_found(per: str, tmp_path: Path) -> None:
    """All four can be counted."""
    assert findings(tmp_path, per) == []


BOBBINS = "bobbins: {thread-70: {holds: 27 m, left: 1.5 m}}, "
MISSING = [
    ("bobbin", BOBBINS, "", "what a bobbin of thread-70 holds", "station lockstitch"),
    ("cone", ", thread-70: {cone: 3000 m}", "", "how much thread-70 is on a cone", "material thread-70"),
    ("needle", ", needle hours: 8 h", "", "how long its needles last", "needle hours: 8 h"),
    ("sheet", "  pieces a sheet: 20\n", "", "how many pieces a sheet holds", "pieces a sheet: 22"),
    (
        "bobbin",
        "lockstitch: {",
        "lockstitch: {kind: overlock, stitches: ['504'], OVERLOCK",
        "504 has no bobbin",
        "cone",
    ),
]
OVERLOCK = "stitches: ['504'], protection: [finger guard, eye shield, blade guard], "


@pytest.mark.parametrize(("per", "drop", "new", "message", "remedy"), MISSING)
def test_the_missing_fact_is_named_with_its_place(
    per: str, drop: str, new: str, message: str, remedy: str, tmp_path: Path
) -> None:
    """At the `per:` that asks for it."""
    example = FACTS.replace("PER", per).replace(drop, new.replace("OVERLOCK", OVERLOCK))
    if new:
        example = example.replace("  pieces a sheet", "  settings: {stitch: 504}\n  pieces a sheet")
    found = without_idle(check_plant(lay_over(example, tmp_path / "plant")).findings)
    assert [one.rule for one in found] == ["per-without-fact"], [(one.rule, one.message) for one in found]
    assert message in found[0].message
    assert remedy in found[0].remedy
    assert found[0].place.file == "operations/sew-hem.yaml"


UNCOUNTABLE = [
    ("bobbin", "cloth: {thickness: 0.5 mm}, ", "", "thickness of cloth"),
    ("cone", "cloth: {thickness: 0.5 mm}, ", "", "thickness of cloth"),
    ("bobbin", "holds: 27 m", "holds: 1.6 m", "more than a bobbin"),
]


@pytest.mark.parametrize(("per", "drop", "new", "message"), UNCOUNTABLE)
def test_what_keeps_it_from_being_counted_is_named(per: str, drop: str, new: str, message: str, tmp_path: Path) -> None:
    """All facts are typed, and still nothing comes out."""
    (one,) = findings(tmp_path, per, drop, new)
    assert one.rule == "per-uncountable"
    assert message in one.message


def test_once_a_bobbin_where_nothing_is_sewn(tmp_path: Path) -> None:
    """At the laser, and at the lockstitch without a seam."""
    laser = "operations/cut-panel.yaml: {steps: [{step: load, per: bobbin}]}"
    (one,) = without_idle(check_plant(lay_over(laser, tmp_path / "laser")).findings)
    assert (one.rule, one.message) == ("per-without-fact", "step load is done once a bobbin, and Laser doesn't sew")
    plain = FACTS.replace("PER", "needle").replace("steps: [", "steps: [{step: hem, sew: []}, ")
    found = without_idle(check_plant(lay_over(plain, tmp_path / "plain")).findings)
    assert [one.message for one in found if one.rule == "per-uncountable"] == [
        "step change is done once a needle, but nothing is sewn here"
    ]


_TOO_MUCH = "one piece takes more than a bobbin gives"


def test_a_size_too_large_for_a_bobbin_is_named(tmp_path: Path) -> None:
    """Its bobbins give 700 mm: 336 mm of seam and tacks take 448, 636 mm take 848."""
    sizes = "products/pouch.yaml: {sizes: {M: {}, XL: {panel.width: 600 mm}}}"
    example = FACTS.replace("PER", "bobbin").replace("27 m, left: 1.5 m", "2 m, left: 1.3 m")
    found = without_idle(check_plant(lay_over(f"{example}\n{sizes}\n", tmp_path / "plant")).findings)
    assert [(one.rule, one.message) for one in found] == [
        (
            "per-uncountable",
            "step change is done once a bobbin, but one piece takes more than a bobbin gives in size XL",
        )
    ]


def test_a_bobbin_of_a_misspelt_thread_is_one_finding(tmp_path: Path) -> None:
    """The missing fact follows from the name."""
    (one,) = findings(tmp_path, "bobbin", "{thread-70: {holds", "{thread-07: {holds")
    assert one.rule == "name-unknown"
    assert one.place.file == "stations/all.yaml"
    assert [inner.rule for inner in one.folded] == ["per-without-fact"]
