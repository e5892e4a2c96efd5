"""Templates as PDF, measured in the PDF's own vectors: what a steel rule would find on a print at 100 %."""

from __future__ import annotations

import io
from collections.abc import Iterator
from functools import cache
from itertools import pairwise
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest
from pypdf import PdfReader

from builder.geometry import ShapeBook
from builder.model import Template
from builder.rendering import ENTRY, SheetPress, render_template, theme_of
from builder.view import PAPERS, TemplateSheet, TemplateView
from builder.view.templates import TemplateMaker
from tests.plants import linked
from tests.rendering.vectors import Vector, vectors

CUT_MM, SQUARE_MM, CROSS_MM, EXACT = 0.5, 0.15, 0.2, 0.1
LONG = """
plant.yaml: {template limit: 0.5 mm}
parts/panel.yaml:
  outline: {rectangle: {width: 1000 mm, height: 500 mm, corner: 10 mm}}
templates/panel.yaml: {template: panel, title: Long panel, kind: part, of: panel, number: P-1, date: 2026-10-12}
"""


@cache
def made(paper: str) -> tuple[TemplateView, PdfReader]:
    """The metre-long panel on a paper."""
    with TemporaryDirectory() as folder, SheetPress(*theme_of("manila").sheets, entry=ENTRY) as press:
        one = linked(LONG, Path(folder))
        book = ShapeBook(one.model.parts, one.model.states, one.dimensions.definitions)
        maker = TemplateMaker(one.model, one.dimensions, book)
        template: Template = one.model.templates["panel"]
        view = maker.view("panel", template, PAPERS[paper])
        return view, PdfReader(io.BytesIO(render_template(view, press)))


def _crosses(page: list[Vector]) -> list[tuple[float, float]]:
    """Middles of the registration marks: arms of 10 mm across that an upright one of 10 mm crosses in the middle."""
    arms = [one for one in page if one.width == pytest.approx(CROSS_MM, abs=0.01) and max(one.size) < 10.1]
    flat = [one.box for one in arms if one.size == pytest.approx((10, 0), abs=0.01)]
    upright = [one.box for one in arms if one.size == pytest.approx((0, 10), abs=0.01)]
    middles = {(round((b[0] + b[2]) / 2, 2), round((b[1] + b[3]) / 2, 2)) for b in flat}
    return sorted(m for m in middles if any(abs(b[0] - m[0]) < 0.02 and b[1] < m[1] < b[3] for b in upright))


def _cut_edge(page: list[Vector]) -> Vector:
    return next(one for one in page if one.width == pytest.approx(CUT_MM, abs=0.001) and max(one.size) > 900)


@pytest.mark.parametrize("paper", sorted(PAPERS))
def test_the_check_square_is_true_on_every_page(paper: str) -> None:
    """100 mm and 4 in, both ways, sharing their lower left corner; the line is thin, so that a rule reads it."""
    view, pdf = made(paper)
    assert len(pdf.pages) == len(view.sheets)
    for page in pdf.pages:
        squares = [one for one in vectors(page) if one.width == pytest.approx(SQUARE_MM, abs=0.01) and one.size[1] > 99]
        squares = [one for one in squares if one.size[0] > 99]
        assert [one.size for one in squares] == [pytest.approx((side, side), abs=0.01) for side in (101.6, 100)]
        assert squares[0].box[:2] == pytest.approx(squares[1].box[:2], abs=0.01)


@pytest.mark.parametrize("paper", sorted(PAPERS))
def test_paper_is_of_the_named_size(paper: str) -> None:
    """The page is what the printer is told: any other size would be fitted."""
    view, pdf = made(paper)
    for page in pdf.pages:
        box = page.mediabox
        found = float(box.width) * 25.4 / 72, float(box.height) * 25.4 / 72
        assert found == pytest.approx((view.frame.width, view.frame.height), abs=0.05)


@pytest.mark.parametrize("paper", sorted(PAPERS))
def test_a_metre_joined_by_its_marks_is_a_metre(paper: str) -> None:
    """Left edge on the first page, right edge on the last, the pages between laid cross on cross: within 0.1 mm."""
    view, pdf = made(paper)
    xs = [segment.start[0] for segment in view.outline]
    axis = 0 if max(xs) - min(xs) > 900 else 1  # along the metre; the panel may stand
    rows: dict[int, list[tuple[TemplateSheet, list[Vector]]]] = {}
    for sheet, page in zip(view.sheets, pdf.pages, strict=True):
        rows.setdefault(sheet.row if axis == 0 else sheet.column, []).append((sheet, vectors(page)))
    for row in rows.values():
        ordered = row if axis == 0 else row[::-1]
        moved = 0.0
        for (_, before), (_, after) in pairwise(ordered):
            last, first = max(_crosses(before), key=lambda p: p[axis]), min(_crosses(after), key=lambda p: p[axis])
            moved += last[axis] - first[axis]
        start, end = _cut_edge(ordered[0][1]).box[axis], _cut_edge(ordered[-1][1]).box[axis + 2] + moved
        assert end - start == pytest.approx(1000, abs=EXACT)


def test_neighbours_show_the_overlap_and_the_same_crosses() -> None:
    """Two crosses of the joint stand on both pages, equally far apart."""
    view, pdf = made("Letter")
    pages = dict(zip((sheet.number for sheet in view.sheets), (vectors(page) for page in pdf.pages), strict=True))
    for sheet in view.sheets:
        for joint in (one for one in sheet.joints if not one.cut):
            mine, other = _crosses(pages[sheet.number]), _crosses(pages[joint.other])
            upright = joint.line[0][0] == joint.line[1][0]
            axis = 0 if upright else 1
            edge = max(p[axis] for p in mine) if upright else min(p[axis] for p in mine)
            far = min(p[axis] for p in other) if upright else max(p[axis] for p in other)
            here = sorted(p[1 - axis] for p in mine if abs(p[axis] - edge) < 0.02)
            there = sorted(p[1 - axis] for p in other if abs(p[axis] - far) < 0.02)
            assert len(here) >= 2
            assert here[-1] - here[0] == pytest.approx(there[-1] - there[0], abs=0.03)


def test_what_is_cut_keeps_clear_of_the_printers_margin() -> None:
    """The first page's cut edge begins 10 mm and more from the paper's edge, and windows end there."""
    view, pdf = made("Letter")
    wide, _ = view.frame.window
    assert view.frame.margin >= 10
    assert wide == pytest.approx(view.frame.width - 20)
    assert _cut_edge(vectors(pdf.pages[0])).box[0] > 10


def _texts(pdf: PdfReader) -> Iterator[str]:
    for page in pdf.pages:
        yield " ".join((page.extract_text() or "").split())


def test_every_page_says_what_it_is_and_how_to_check_it() -> None:
    """Number, title, revision, sheet n of m, place, code, date, limit, blade, and how to join."""
    view, pdf = made("Letter")
    for number, text in enumerate(_texts(pdf), start=1):
        sheet = view.sheets[number - 1]
        for wanted in (
            "P-1 Long panel",
            "revision A",
            f"sheet {number} of {len(view.sheets)}",
            f"column {sheet.column} of {view.columns}, row {sheet.row} of {view.rows}",
            "Measure before use: 100.0 mm / 4.00 in.",
            "Print at 100 %, no fitting. If it is off by more than 0.5 mm, do not use.",
            "At that limit 1000 mm here is 5 mm off.",
            "cut away from the hand, cut-resistant glove on the holding hand",
            "crosses meeting",
            "NOT YET MEASURED",
            view.tag,
            "2026-10-12",
        ):
            assert wanted in text, (number, wanted, text)


def test_the_joined_measure_is_that_of_the_crosses() -> None:
    """What a rule is to find from cross to cross is what the vectors have."""
    view, pdf = made("Letter")
    assert len(view.joined) == 2
    across = float(view.joined[0].split(" mm")[0])
    row = [vectors(page) for sheet, page in zip(view.sheets, pdf.pages, strict=True) if sheet.row == 1]
    total = sum(_crosses(page)[-1][0] - _crosses(page)[0][0] for page in row)
    assert total == pytest.approx(across, abs=0.1)


def test_the_document_is_tagged_and_made_the_same_twice() -> None:
    """PDF/UA as the sheets are; no clock in it."""
    view, pdf = made("Letter")
    assert pdf.trailer["/Root"]["/MarkInfo"]["/Marked"]
    with SheetPress(*theme_of("manila").sheets, entry=ENTRY) as press:
        assert render_template(view, press) == render_template(view, press)
