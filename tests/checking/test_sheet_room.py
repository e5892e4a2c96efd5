"""The room rules reckon with is the room the themes give."""

from __future__ import annotations

from pathlib import Path

import pytest

from builder.checking import sheet_room
from builder.checking.sheet_room import lines_needed, photo_widths_mm
from builder.model import COLUMN_GAP_MM, SHEET_EDGE_MM, Step, column_mm
from tests.conftest import ROOT

SHEETS = ROOT / "themes" / "manila" / "sheets"
LETTER, A4 = column_mm("Letter", 3.5), column_mm("A4", 3.5)


@pytest.mark.parametrize(
    ("file", "words"),
    [
        ("frame.typ", f"#let edge = (x: {SHEET_EDGE_MM:g}mm,"),
        ("frame.typ", f"#let column-gap = {COLUMN_GAP_MM:g}mm"),
        ("marks.typ", f"#let drill-hole-width(size) = size.capital * {sheet_room.DRILL_HOLE}mm"),
        ("step.typ", f"#let gutter(size) = size.capital * {sheet_room.GUTTER}mm"),
        ("step.typ", f"#let between = {sheet_room.BETWEEN_MM:g}mm"),
        ("step.typ", f"#let least-em = {sheet_room.LEAST_EM}"),
    ],
)
def test_theme_has_the_measures_of_the_rules(file: str, words: str) -> None:
    """A theme that changes them makes the rules lie."""
    assert words in Path(SHEETS / file).read_text(encoding="utf-8")


def step(**keys: str) -> Step:
    """A step with these keys."""
    return Step.model_validate({"step": "one", "do": "Lay it.", **keys})


def test_a_step_with_a_picture_has_half_the_width() -> None:
    """The same words take more than twice the lines."""
    text = "Sew the hem from end to end in one run, with the folded edge on the right."
    alone = lines_needed("do", text, step(), LETTER, 600)
    beside = lines_needed("do", text, step(sew="hem-seam"), LETTER, 600)
    assert 1 < alone < 2
    assert beside > 2 * alone


def test_reasons_are_smaller_and_emphasis_takes_no_room() -> None:
    """Stars are marks, not letters."""
    one = step()
    assert lines_needed("why", "Sew it", one, A4, 600) < lines_needed("key", "Sew it", one, A4, 600)
    assert lines_needed("do", "**Sew** it", one, A4, 600) == lines_needed("do", "Sew it", one, A4, 600)
    assert lines_needed("do", "縫う", one, A4, 600) == 0


def test_photo_fills_half_the_page_or_its_height() -> None:
    """Beside a figure a photo is 44 mm high at most."""
    assert photo_widths_mm([(1600, 400)], step(), LETTER) == [pytest.approx(95.95)]
    assert photo_widths_mm([(1600, 1600)], step(), LETTER) == [pytest.approx(68)]
    assert photo_widths_mm([(1600, 1600)], step(shows="panel"), LETTER) == [pytest.approx(44)]
    assert photo_widths_mm([(900, 1200)] * 2, step(), LETTER) == [pytest.approx((95.95 - 4) / 2)] * 2


def test_unlike_pictures_of_a_pair_have_one_height() -> None:
    """The wide one is as high as the narrow one beside it."""
    wide, narrow = photo_widths_mm([(1600, 900), (900, 1600)], step(), LETTER)
    assert wide * 9 / 16 == pytest.approx(narrow * 16 / 9)
    assert wide + 4 + narrow == pytest.approx(95.95)
