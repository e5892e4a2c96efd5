"""Every sheet of the demo, read back from its PDF: legible at its station, cautions and all, inside the margins."""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache
from pathlib import Path

import pytest
from markdown_it import MarkdownIt

from builder.pipeline import check_plant, planner_of, trees_of
from builder.rendering import Planner
from builder.view import SheetView
from tests.rendering import sheet_pdf

DEMO = Path(__file__).resolve().parents[2] / "instructions"
ROUNDING_MM = 0.02
MARGIN_MM = 3.0


@cache
def planner() -> Planner:
    """The demo's planner, made once."""
    checked = check_plant(DEMO)
    return planner_of(checked, trees_of(checked))


SHEETS = planner().views.sheets


@cache
def pdf(stem: str) -> bytes:
    """A sheet's PDF, made once."""
    return next(file for file in planner().files() if file.path == f"sheets/{stem}.pdf").make()


@pytest.fixture(scope="module", autouse=True)
def _close() -> Iterator[None]:
    yield
    planner().close()


def letters(text: str) -> str:
    """Letters and figures only: breaks, blanks and marks move."""
    return re.sub(r"\W", "", text)


def plain(text: str) -> str:
    """Words without emphasis marks."""
    return "".join(
        child.content
        for token in MarkdownIt("zero").enable("emphasis").parseInline(text)
        for child in token.children or ()
    )


@pytest.mark.parametrize("view", SHEETS, ids=lambda view: view.stem)
def test_no_capital_is_under_the_limit_and_none_leaves_the_page(view: SheetView) -> None:
    """2.5 mm on paper, figures included; nothing in the printer's margin."""
    width, height = (215.9, 279.4) if view.paper == "Letter" else (210.0, 297.0)
    for piece in sheet_pdf.pieces(pdf(view.stem)):
        assert piece.capital >= 2.5 - ROUNDING_MM, piece
        assert MARGIN_MM <= piece.x <= width - MARGIN_MM, piece
        assert MARGIN_MM <= piece.y <= height - MARGIN_MM, piece


@pytest.mark.parametrize("view", SHEETS, ids=lambda view: view.stem)
def test_action_lines_and_cautions_stand_at_the_stations_distance(view: SheetView) -> None:
    """20 minutes of arc at the reading distance; the whole of each line, on its page."""
    large = "".join(
        letters(piece.text)
        for piece in sheet_pdf.pieces(pdf(view.stem))
        if piece.capital >= view.capital_mm - ROUNDING_MM
    )
    for step in view.steps:
        assert letters(plain(step.said)) in large, step.said
        assert letters(plain(step.key)) in large, step.key
    for caution in view.cautions:
        assert letters(caution.text) in large, caution.text
        assert letters(caution.signal) in large


@pytest.mark.parametrize("view", SHEETS, ids=lambda view: view.stem)
def test_all_that_the_sheet_says_is_printed(view: SheetView) -> None:
    """Cautions, protection, notices, settings, checks, faults, sizes and the code, and no seconds of a step."""
    text = letters(" ".join(sheet_pdf.page_texts(pdf(view.stem))))
    said = [view.code, view.title, view.tag, view.revision, *view.notices]
    said += [one.text for one in view.protection]
    said += [one.value for one in view.settings]
    said += [word for one in view.measures for word in (one.what, one.gauge, one.plan)]
    said += [value for one in view.measures for value, _ in one.lines()]
    said += [word for one in view.faults for word in (one.sign, one.cause, one.remedy, one.stop)]
    said += [word for row in view.sizes for word in (row.size, row.fingerprint)]
    said += [plain(step.why) for step in view.steps]
    for words in said:
        assert letters(words) in text, words
    for number in range(1, len(sheet_pdf.read(pdf(view.stem)).pages) + 1):
        assert f"page{number}of" in text


@pytest.mark.parametrize("view", SHEETS, ids=lambda view: view.stem)
def test_sheets_are_tagged_and_say_their_language(view: SheetView) -> None:
    """PDF/UA-1: marked, with language, title and an alternative on every figure; fonts embedded."""
    root = sheet_pdf.read(pdf(view.stem)).trailer["/Root"]
    assert root["/MarkInfo"]["/Marked"]
    assert root["/Lang"] == view.language
    figures = [node for kind, node in sheet_pdf.nodes(pdf(view.stem)) if kind == "/Figure"]
    assert figures
    assert all(node.get("/Alt") for node in figures)
    assert all(sheet_pdf.faces(pdf(view.stem)).values())


def test_sheets_are_byte_identical_when_made_again() -> None:
    """By another press."""
    view = SHEETS[0]
    checked = check_plant(DEMO)
    other = planner_of(checked, trees_of(checked))
    again = next(file for file in other.files() if file.path == f"sheets/{view.stem}.pdf").make()
    other.close()
    assert again == pdf(view.stem)
