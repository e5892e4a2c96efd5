"""The screens of the floor screen and the ways between them."""

from __future__ import annotations

from dataclasses import replace

import pytest
from site_samples import CROWDED, PENS, SHEET

from builder.rendering.floor_data import FLOOR_MM, FLOOR_TEXT_MM, floor_data, short


@pytest.mark.parametrize(
    ("text", "cut"),
    [
        ("Sew the box, then the cross. Don't lift the foot.", "Sew the box"),
        ("Turn over and look along every line for skipped stitches.", "Turn over and look …"),
        ("Lay **flat**.", "Lay flat"),
        ("Press", "Press"),
        ("Rindfleischetikettierung prüfen", "Rindfleischetikettie …"),
    ],
)
def test_the_next_step_is_named_by_its_first_clause(text: str, cut: str) -> None:
    assert short(text) == cut


def test_back_and_next_lead_through_all_screens_and_then_to_the_first_step() -> None:
    screens = floor_data(SHEET, PENS)["screens"]
    anchors = [screen["anchor"] for screen in screens]
    assert anchors == ["set-up", "step-lay", "step-fold", "step-box", "step-look"]
    assert [screen["next"] for screen in screens] == [*anchors[1:], "step-lay"]
    assert [screen["back"] for screen in screens] == ["", *anchors[:-1]]


def test_the_dots_tell_done_now_and_ahead() -> None:
    screen = floor_data(SHEET, PENS)["screens"][2]
    assert [dot["state"] for dot in screen["dots"]] == ["done word", "done", "now", "ahead", "ahead"]
    assert screen["place"] == "step 2 of 4"
    assert screen["onward"] == "next: Sew the box"


def test_many_steps_are_told_to_the_style_sheet() -> None:
    assert all(screen["many"] for screen in floor_data(CROWDED, PENS)["screens"])
    assert not any(screen["many"] for screen in floor_data(SHEET, PENS)["screens"])


def test_figures_are_laid_out_for_the_screen_and_not_for_paper() -> None:
    drawn = []
    pens = replace(PENS, figure=lambda figure: drawn.append(figure) or "")  # type: ignore[func-returns-value]
    floor_data(SHEET, pens)
    assert {(figure.width_mm, figure.height_mm, figure.text_mm) for figure in drawn} == {(*FLOOR_MM, FLOOR_TEXT_MM)}
