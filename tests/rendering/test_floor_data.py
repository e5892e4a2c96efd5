"""The screens of the floor screen and the ways between them."""

from __future__ import annotations

from dataclasses import replace

import pytest

from builder.rendering.floor_data import FLOOR_HEIGHT_MM, FLOOR_TEXT_MM, FLOOR_WIDTH_MM, floor_data, short
from tests.rendering.site_samples import CROWDED, PENS, SHEET


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
    assert anchors == ["notices", "settings", "sizes", "step-lay", "step-fold", "step-box", "step-look"]
    assert [screen["next"] for screen in screens] == [*anchors[1:], "step-lay"]
    assert [screen["back"] for screen in screens] == ["", *anchors[:-1]]


def test_the_dots_tell_done_now_and_ahead() -> None:
    screen = floor_data(SHEET, PENS)["screens"][4]
    assert [dot["state"] for dot in screen["dots"]] == ["done", "done", "now", "ahead", "ahead"]
    assert [dot["text"] for dot in screen["dots"]] == ["set up", "1", "2", "3", "4"]
    assert screen["place"] == "step 2 of 4"
    assert screen["onward"] == "next: Sew the box"


def test_the_screens_before_the_steps_share_one_dot() -> None:
    screen = floor_data(SHEET, PENS)["screens"][1]
    assert [dot["state"] for dot in screen["dots"]] == ["now", "ahead", "ahead", "ahead", "ahead"]
    assert screen["place"] == "set up 2 of 3"
    assert screen["onward"] == "next: sizes"


def test_cautions_too_many_for_two_rows_are_named_on_the_steps_and_said_in_full_first() -> None:
    data = floor_data(CROWDED, PENS)
    assert all(screen["brief"] == (screen["kind"] != "cautions") for screen in data["screens"])
    assert data["screens"][0]["kind"] == "cautions"
    assert not any(screen["brief"] for screen in floor_data(SHEET, PENS)["screens"])


def test_each_sign_is_drawn_once_and_used_everywhere() -> None:
    data = floor_data(replace(SHEET, cautions=SHEET.cautions * 2), PENS)
    ids = [sign["id"] for sign in data["signs"]]
    used = {item["drawing"].split('href="#')[1].split('"')[0] for item in (*data["cautions"], *data["protection"])}
    assert ids == ["sign-M004", "sign-W024"]
    assert used == set(ids)


def test_many_steps_are_told_to_the_style_sheet() -> None:
    assert all(screen["many"] for screen in floor_data(CROWDED, PENS)["screens"])
    assert not any(screen["many"] for screen in floor_data(SHEET, PENS)["screens"])


def test_figures_are_laid_out_for_the_screen_and_not_for_paper() -> None:
    drawn = []
    pens = replace(PENS, figure=lambda figure: drawn.append(figure) or "")  # type: ignore[func-returns-value]
    floor_data(SHEET, pens)
    sizes = {(figure.width_mm, figure.height_mm, figure.text_mm) for figure in drawn}
    assert sizes == {(FLOOR_WIDTH_MM, FLOOR_HEIGHT_MM[2], FLOOR_TEXT_MM)}
