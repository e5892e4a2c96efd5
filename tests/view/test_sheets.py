"""What the sheets of the demo say."""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest

from builder.model import HAZARDS, KINDS
from builder.pipeline import check_plant, plant_views_of
from builder.view import PlantViews, SheetView

DEMO = Path(__file__).resolve().parents[2] / "instructions"


@cache
def views() -> PlantViews:
    """Views of the demo, made once."""
    return plant_views_of(check_plant(DEMO))


def sheet(stem: str) -> SheetView:
    """One sheet of the demo."""
    return next(one for one in views().sheets if one.stem == stem)


def test_every_operation_has_a_sheet() -> None:
    """None is left out quietly."""
    checked = check_plant(DEMO)
    assert checked.linked is not None
    assert {one.operation for one in views().sheets} == set(checked.linked.model.operations)


def test_every_hazard_of_a_station_is_on_its_sheets() -> None:
    """Those of the kind of machine and those typed, and the sentence that defers to the manual."""
    checked = check_plant(DEMO)
    assert checked.linked is not None
    for one in views().sheets:
        station = checked.linked.model.stations[one.station]
        expected = {*KINDS[station.kind].hazards, *station.hazards}
        hazards = [caution for caution in one.cautions if caution.hazard in HAZARDS]
        assert {caution.hazard for caution in hazards} == expected
        for caution in hazards:
            assert caution.text == HAZARDS[caution.hazard].text
            assert caution.sign.startswith("W")
        if expected:
            assert any("manual" in notice for notice in one.notices)


def test_only_what_is_earlier_or_now_is_drawn() -> None:
    """Before the box is sewn no box is drawn; at its step it is drawn as now, afterwards as earlier."""
    steps = {step.name: step.figure for step in sheet("sew-handle-end").steps}

    def whens(name: str) -> set[str]:
        figure = steps[name]
        assert figure is not None
        return {stroke.when for stroke in figure.strokes if stroke.role == "box"}

    assert whens("lay") == set()
    assert whens("box") == {"now"}
    assert whens("look") == {"earlier"}


def test_turning_the_part_turns_the_drawing() -> None:
    """From the wrong side the tie notch is on the other edge."""
    steps = {step.name: step.figure for step in sheet("sew-handle-end").steps}
    right, wrong = steps["lay"], steps["look"]
    assert right is not None
    assert wrong is not None
    assert (right.side, wrong.side) == ("right side", "wrong side")
    notch = [s for s in right.strokes if s.role == "notch"]
    turned = [s for s in wrong.strokes if s.role == "notch"]
    assert max(s.path[0].start[0] for s in notch) > 300
    assert min(s.path[0].start[0] for s in turned) < 10


def test_a_small_seam_on_a_large_part_is_shown_as_a_detail() -> None:
    """With the whole part as a locator beside it."""
    figure = {step.name: step.figure for step in sheet("sew-handle-end").steps}["box"]
    assert figure is not None
    assert figure.locator is not None
    assert figure.bounds[2] - figure.bounds[0] < 200


def test_a_figure_carries_its_checked_dimension_with_tolerance() -> None:
    """Picture and table say the same."""
    step = next(step for step in sheet("sew-handle-end").steps if step.name == "box")
    assert step.figure is not None
    texts = [line.text for line in step.figure.dimensions if line.strong]
    assert [f"{check.value} ({check.other})" for check in step.checks] == texts


@pytest.mark.parametrize("stem", [one.stem for one in views().sheets])
def test_figures_have_words(stem: str) -> None:
    """Every figure has a text alternative and every step an action."""
    for step in sheet(stem).steps:
        assert step.do
        if step.figure is not None:
            assert len(step.figure.alt) > 12


def test_many_alike_are_named_once_with_their_number() -> None:
    """Six equal folds have one label; two have one each."""
    figure = {step.name: step.figure for step in sheet("pleat-strip").steps}["press"]
    assert figure is not None
    assert [one.text for one in figure.callouts] == ["6 × edge"]


def test_a_detail_shows_what_is_worked_to() -> None:
    """The loop is measured from the panel's side, so the side is in the drawing in every size."""
    step = {step.name: step for step in sheet("tack-bar-loops").steps}
    place = next(one for one in step.values() if any("side of the panel" in check.what for check in one.checks))
    for figure in place.figures():
        assert any(line.strong for line in figure.dimensions)
