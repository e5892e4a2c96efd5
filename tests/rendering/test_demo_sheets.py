"""Every sheet of the demo, read back from its PDF: legible at its station, cautions and all, inside the margins."""

from __future__ import annotations

import re
import subprocess
from collections import Counter
from collections.abc import Iterator
from functools import cache
from itertools import pairwise
from pathlib import Path

import pytest
import zxingcpp
from markdown_it import MarkdownIt
from PIL import Image

from builder.model import PAPER_MM, face_table, speaking, spoken_family
from builder.pipeline import check_plant, planner_of, trees_of
from builder.rendering import Planner, Tree
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
    width, height = PAPER_MM[view.paper]
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
    assert root["/ViewerPreferences"]["/DisplayDocTitle"]
    assert b"pdfuaid" in root["/Metadata"].get_object().get_data()
    assert sheet_pdf.read(pdf(view.stem)).metadata.title == f"{view.code} {view.title}"  # type: ignore[union-attr]
    assert sheet_pdf.read(pdf(view.stem)).outline
    heads = [int(kind[2:]) for kind, _ in sheet_pdf.nodes(pdf(view.stem)) if re.fullmatch(r"/H[1-6]", kind)]
    assert heads[0] == 1
    assert all(after - before <= 1 for before, after in pairwise(heads))


@pytest.mark.parametrize("view", SHEETS, ids=lambda view: view.stem)
def test_no_step_is_broken_and_no_page_holds_a_line_alone(view: SheetView) -> None:
    """Action line, key point and reason of a step stand on one page; a page has more than head, foot and a line."""
    pages = [letters(text) for text in sheet_pdf.page_texts(pdf(view.stem))]
    for step in view.steps:
        said = [letters(plain(text)) for text in (step.said, step.key, step.why) if text]
        assert any(all(text in page for text in said) for page in pages), step.name
    counts = Counter(piece.page for piece in sheet_pdf.pieces(pdf(view.stem)))
    assert len(counts) == len(pages)
    assert min(counts.values()) >= 8, counts


def square_code(made: bytes, folder: Path) -> str:
    """What a scanner reads from the first page as a printer makes it, 150 dots an inch."""
    file = folder / "sheet.pdf"
    file.write_bytes(made)
    command = ["pdftoppm", "-r", "150", "-gray", "-png", "-singlefile", "-l", "1", str(file), str(folder / "page")]
    subprocess.run(command, check=True)
    with Image.open(folder / "page.png") as page:
        width, height = page.size
        found = zxingcpp.read_barcodes(page.crop((0, 0, width, height // 3)))
    return found[0].text if found else ""


@pytest.mark.parametrize("view", SHEETS, ids=lambda view: view.stem)
def test_the_square_code_reads_as_operation_and_code(view: SheetView, tmp_path: Path) -> None:
    """Decoded from the rasterised page by a library that didn't make it."""
    assert square_code(pdf(view.stem), tmp_path) == f"{view.stem} {view.tag.replace(' ', '')}"


TRANSLATED = [(tree, view) for tree in planner().trees[1:] for view in tree.views.sheets[::12]]


@pytest.mark.parametrize(("tree", "view"), TRANSLATED, ids=lambda one: getattr(one, "stem", ""))
def test_translated_sheets_are_as_good(tree: Tree, view: SheetView, tmp_path: Path) -> None:
    """Its own language and letters, action lines as high, both codes in the square one."""
    with speaking(tree.tongue):
        made = planner()._sheet(view)
        table = face_table(spoken_family())
    root = sheet_pdf.read(made).trailer["/Root"]
    assert root["/Lang"] == tree.tongue.code
    assert all(sheet_pdf.faces(made).values())
    share = table.cap_height / table.units_per_em / sheet_pdf.CAPITAL_OF_EM
    pieces = [(piece.text, piece.capital * share) for piece in sheet_pdf.pieces(made)]
    assert min(capital for _, capital in pieces) >= 2.5 - ROUNDING_MM
    large = "".join(letters(text) for text, capital in pieces if capital >= view.capital_mm - ROUNDING_MM)
    for step in view.steps:
        # Lines from right to left come out of a PDF word by word in another order.
        said = plain(step.said)
        wanted = said.split() if tree.tongue.right_to_left else [said]
        assert all(letters(one) in large for one in wanted), step.said
    assert square_code(made, tmp_path) == view.qr
    assert view.qr.split()[2] == tree.tongue.code


def test_sheets_are_byte_identical_when_made_again() -> None:
    """By another press."""
    view = SHEETS[0]
    checked = check_plant(DEMO)
    other = planner_of(checked, trees_of(checked))
    again = next(file for file in other.files() if file.path == f"sheets/{view.stem}.pdf").make()
    other.close()
    assert again == pdf(view.stem)
