"""States of parts and what was made before."""

from __future__ import annotations

from pathlib import Path

from builder.model import earlier_work, find_feature
from tests.plants import linked


def test_a_made_name_without_a_file_is_the_next_state(tmp_path: Path) -> None:
    """Its outline is that of the first needed part, through the chain."""
    states = linked("", tmp_path).model.states
    assert states["panel-hemmed"].base == "panel"
    assert states["panel-snapped"].base == "panel"
    assert states["panel-snapped"].maker == "press-snap"


def test_work_accumulates(tmp_path: Path) -> None:
    """What was sewn before is earlier; an operation's own work is not."""
    states = linked("", tmp_path).model.states
    assert states["panel"].worked == {("panel", "top-notch")}
    assert earlier_work("panel-hemmed", states) == {("panel", "top-notch")}
    before = earlier_work("panel-snapped", states)
    assert before == {("panel", "top-notch"), ("panel", "hem-fold"), ("panel", "hem-seam")}


def test_earlier_follows_needs_not_the_order_of_files(tmp_path: Path) -> None:
    """Renaming the operations changes nothing."""
    model = linked("", tmp_path).model
    assert list(model.operations) == ["cut-panel", "press-snap", "sew-hem"]
    assert ("panel", "hem-seam") in earlier_work("panel-snapped", model.states)


def test_a_feature_is_the_made_parts_first(tmp_path: Path) -> None:
    """The full form names any."""
    model = linked("", tmp_path).model
    homes = model.homes["sew-hem"]
    short, full = find_feature("hem-seam", homes), find_feature("panel/hem-seam", homes)
    assert short == full
    assert short is not None
    assert (short.part, short.feature) == ("panel", "hem-seam")
    assert find_feature("hem-seem", homes) is None


def test_a_ring_of_states_has_no_state(tmp_path: Path) -> None:
    """And ends."""
    example = "operations/sew-hem.yaml: {makes: a}\noperations/press-snap.yaml: {makes: b}"
    states = linked(example, tmp_path).model.states
    assert "panel-hemmed" not in states
