"""Cautions, settings and faults as a sheet says them."""

from __future__ import annotations

from pathlib import Path

import pytest

from builder.pipeline import check_plant, plant_views_of
from builder.view import SheetView
from builder.view.controls import own_caution
from tests.checking.overlay import lay_over

DEMO = Path(__file__).resolve().parents[2] / "instructions"


@pytest.mark.parametrize(
    ("typed", "signal", "text"),
    [
        ("WARNING: hot foot.", "WARNING", "hot foot."),
        ("Hot foot.", "CAUTION", "Hot foot."),
        ("Note: x", "CAUTION", "Note: x"),
    ],
)
def test_a_caution_in_own_words_never_lacks_a_signal_word(typed: str, signal: str, text: str) -> None:
    """A sign never stands without one; the mildest when none is typed."""
    caution = own_caution(typed)
    assert (caution.signal, caution.text, caution.sign) == (signal, text, "W001")


def sheet(example: str, tmp_path: Path, stem: str) -> SheetView:
    """A sheet of the small plant with an example laid over it."""
    views = plant_views_of(check_plant(lay_over(example, tmp_path / "plant")))
    return next(one for one in views.sheets if one.stem == stem)


def test_power_off_brings_the_plants_lock_out_before_all_else(tmp_path: Path) -> None:
    """On a step as its first caution; a fault says that the power is off first, and a notice how."""
    view = sheet(
        """
plant.yaml: {lock out: Pull the plug.}
operations/sew-hem.yaml:
  steps: [{step: hem, power: 'off', cautions: ["CAUTION: hot."]}]
  faults: [{sign: skipped stitches, class: major, cause: needle bent, do: Change the needle., power: 'off'}]
""",
        tmp_path,
        "sew-hem",
    )
    cautions = next(step.cautions for step in view.steps if step.name == "hem")
    assert [(one.sign, one.text) for one in cautions] == [("M021", "Pull the plug."), ("W001", "hot.")]
    assert (view.faults[0].power, view.faults[0].remedy) == ("Power off first.", "Change the needle.")
    assert "Power off first. Pull the plug." in view.notices


def test_lots_to_be_matched_stand_first_among_what_comes_in(tmp_path: Path) -> None:
    """So that they are compared before the first step."""
    view = sheet("operations/sew-hem.yaml: {lots: matched}", tmp_path, "sew-hem")
    assert "lot numbers" in view.incoming[0]


def test_a_material_that_can_hurt_is_a_caution_and_what_spoils_it_a_notice() -> None:
    """A text with a signal word never stands behind NOTICE."""
    views = plant_views_of(check_plant(DEMO))
    view = next(one for one in views.sheets if one.stem == "cut-board-stiff")
    assert [one.signal for one in view.cautions if "edges cut skin" in one.text] == ["CAUTION"]
    for one in views.sheets:
        assert not [text for text in one.notices if text.startswith(("DANGER", "WARNING", "CAUTION"))], one.stem


def test_a_measure_that_differs_has_a_line_for_each_size() -> None:
    """The size stands before its value, the other unit beside it."""
    views = plant_views_of(check_plant(DEMO))
    view = next(one for one in views.sheets if one.stem == "bind-bar-mesh")
    differing, same = view.measures
    assert [value.partition(" ")[0] for value, _ in differing.lines()] == ["S", "M", "L"]
    assert same.lines() == ((same.value, same.other),)
