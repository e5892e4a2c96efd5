"""Rules on slots, grids, turned bartacks, buckles and labels: what they find, and what they leave alone."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.checking.test_shape_rules import findings, panel, rules

SLOT = "vents: {slot: 30 mm, width: 4 mm, at: {left: 60 mm, bottom: 80 mm}"
BUCKLE = "buckle: {hardware: snap, look: buckle, width: 40 mm, height: 20 mm, at: {left: 60 mm, bottom: 80 mm}}"
TACK = "tack: {bartack: 28, length: 30 mm, width: 3 mm, turn: 45 deg, at: {left: 100 mm, bottom: 100 mm}}"
SETS = (
    "operations/press-snap.yaml:\n  steps: [{step: press, set: [snap-place, buckle], do: Press the snap., time: 4 s}]\n"
)
SEWS = "operations/sew-hem.yaml:\n  steps: [{step: more, sew: NAME, do: Sew it., time: 2 s}]\n"


def test_a_slot_is_cut_with_the_outline(tmp_path: Path) -> None:
    """No step has to name it."""
    assert rules(panel(SLOT + "}"), tmp_path) == []


@pytest.mark.parametrize(
    ("turn", "expected"),
    [("0 deg", ["feature-outside-part"]), ("90 deg", [])],
)
def test_a_slot_past_the_edge_is_found_as_it_is_turned(turn: str, expected: list[str], tmp_path: Path) -> None:
    """Half of its length lies outside, or half of its width inside."""
    text = f"vents: {{slot: 30 mm, width: 4 mm, turn: {turn}, at: {{left: 12 mm, bottom: 80 mm}}}}"
    assert rules(panel(text), tmp_path) == expected


def test_a_slot_near_the_edge_wants_half_its_width(tmp_path: Path) -> None:
    """Its end counts, not its middle."""
    text = "vents: {slot: 30 mm, width: 8 mm, at: {left: 17 mm, bottom: 80 mm}}"
    (one,) = findings(panel(text), tmp_path)
    assert one.rule == "hole-near-edge"
    assert "2 mm" in one.message
    assert "it wants 4 mm" in one.message


def test_slots_run_into_one_another_at_their_ends(tmp_path: Path) -> None:
    """A pitch shorter than the slots, and one longer."""
    for pitch, expected in (("29 mm", ["features-collide"]), ("32 mm", [])):
        text = SLOT + f", count: 3, pitch: {pitch}}}"
        assert rules(panel(text), tmp_path / pitch) == expected
    side_by_side = SLOT + ", turn: 60 deg, count: 3, pitch: 6 mm}"
    assert rules(panel(side_by_side), tmp_path / "turned") == []


def test_stitches_over_a_slot(tmp_path: Path) -> None:
    """A seam across its end, and one just past it."""
    for place, expected in (("91 mm", True), ("94 mm", False)):
        line = f"row: {{seam: line, points: [{{left: {place}, bottom: 20 mm}}, {{left: {place}, bottom: 100 mm}}]}}"
        text = panel(f"{line}, {SLOT.replace('60 mm', '77 mm')}}}") + SEWS.replace("NAME", "row")
        assert ("features-collide" in rules(text, tmp_path / place)) == expected


def test_a_grid_that_runs_off_its_part(tmp_path: Path) -> None:
    """Told by how many fit."""
    text = "vents: {hole: 5 mm, at: {left: 40 mm, bottom: 60 mm}, count: 3, pitch: 50 mm, rows: 4, row pitch: 60 mm}"
    (one,) = findings(panel(text), tmp_path)
    assert one.rule == "row-off-strip"
    assert one.message == "vents runs off panel: 9 of 12 fit"


def test_a_turned_bartack_meets_what_lies_in_its_way(tmp_path: Path) -> None:
    """Its box is larger than it is: what lies in a corner of the box is left alone."""
    hit = panel(TACK + ", a: {hole: 6 mm, at: {left: 93 mm, bottom: 107 mm}}") + SEWS.replace("NAME", "tack")
    miss = panel(TACK + ", a: {hole: 6 mm, at: {left: 107 mm, bottom: 107 mm}}") + SEWS.replace("NAME", "tack")
    assert "features-collide" in rules(hit, tmp_path / "hit")
    assert "features-collide" not in rules(miss, tmp_path / "miss")


def test_a_needle_into_a_buckle(tmp_path: Path) -> None:
    """A seam under its rectangle; one beside it, inside the circle about it, is left alone."""
    for place, expected in (("85 mm", True), ("98 mm", False)):
        line = f"row: {{seam: line, points: [{{left: 20 mm, bottom: {place}}}, {{right: 20 mm, bottom: {place}}}]}}"
        text = panel(f"{BUCKLE}, {line}") + SETS + SEWS.replace("NAME", "row")
        assert ("features-collide" in rules(text, tmp_path / place)) == expected


def test_a_label_stands_out_beyond_the_edge_that_catches_it_only(tmp_path: Path) -> None:
    """Caught it is meant to; laid on it is a mistake."""
    caught = "label: {tag: snap, width: 20 mm, height: 30 mm, in: bottom, at: {left: 80 mm}, overhang: 20 mm}"
    laid = "label: {tag: snap, width: 20 mm, height: 30 mm, at: {left: 80 mm, bottom: -20 mm}}"
    assert rules(panel(caught), tmp_path / "caught") == ["label-not-caught"]
    assert rules(panel(laid), tmp_path / "laid") == ["feature-outside-part"]


def test_a_label_of_nothing_known_is_a_finding(tmp_path: Path) -> None:
    """It names a material or a part."""
    text = panel("label: {tag: snapp, width: 20 mm, height: 30 mm, at: {left: 80 mm, bottom: 20 mm}}")
    assert "name-unknown" in rules(text, tmp_path)


def test_a_drill_hole_is_a_mark_whatever_lies_on_it(tmp_path: Path) -> None:
    """It is made to be covered and sewn over, and may stand at an edge."""
    mark = "mark: {drill hole: 4 mm, at: {left: 3 mm, bottom: 60 mm}}"
    on_hem = "on-hem: {drill hole: 1 mm, at: {left: 50 mm, top: 12 mm}}"
    assert rules(panel(f"{mark}, {on_hem}"), tmp_path) == []
