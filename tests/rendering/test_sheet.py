"""Sheets read back from their PDF: legible, whole, tagged, and the same every time."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace
from functools import cache
from pathlib import Path

import pytest

from builder.rendering.markdown import plain
from builder.rendering.sheet import SheetFault, SheetPress, render_booklet, render_sheet
from builder.rendering.sheet_text import sheet_text, spoken_letters
from builder.view import Setting, SheetView
from tests.rendering import sheet_pdf
from tests.rendering.samples import ALL, FAR, HANDLE_END, LASER, PHOTOS, POCKET
from tests.rendering.stand_in import PENS

CAPITAL_OF_EM = 0.668  # the face\'s own capital height, read from its OS/2 table

TEMPLATES = Path(__file__).parents[2] / "themes" / "manila" / "sheets"
PRINTER_MARGIN_MM = 3.0
LEAST_CAPITAL_MM = 2.5

each_sample = pytest.mark.parametrize("view", ALL, ids=lambda view: view.stem)


@pytest.fixture(scope="module")
def press() -> Iterator[SheetPress]:
    with SheetPress(TEMPLATES, pens=PENS) as made:
        yield made


@pytest.fixture(scope="module")
def pdf_of(press: SheetPress):  # type: ignore[no-untyped-def]
    return cache(lambda view: render_sheet(view, PHOTOS, press))


def letters(text: str) -> str:
    """A text without blanks, as breaks and kerning move those."""
    return re.sub(r"\s", "", text)


def page_of(pdf: bytes, text: str) -> list[int]:
    """Pages that show a text, from 1."""
    return [n for n, page in enumerate(sheet_pdf.page_texts(pdf), 1) if letters(text) in letters(page)]


@pytest.mark.parametrize(
    ("view", "pages"), [(HANDLE_END, 2), (POCKET, 4), (LASER, 3)], ids=["handle", "pocket", "laser"]
)
def test_pages_are_as_many_as_the_steps_need(view: SheetView, pages: int, pdf_of) -> None:  # type: ignore[no-untyped-def]
    assert len(sheet_pdf.read(pdf_of(view)).pages) == pages


@each_sample
def test_no_page_is_empty(view: SheetView, pdf_of) -> None:  # type: ignore[no-untyped-def]
    furniture = letters(plain(view.title) + view.code)
    for text in sheet_pdf.page_texts(pdf_of(view)):
        assert len(letters(text)) > len(furniture) + 120


@each_sample
def test_everything_a_sheet_shows_is_in_its_text(view: SheetView, pdf_of) -> None:  # type: ignore[no-untyped-def]
    shown = letters("".join(sheet_pdf.page_texts(pdf_of(view))))
    wanted = [
        view.title,
        view.code,
        view.station_title,
        *view.products,
        *view.notices,
        *view.incoming,
        *view.outgoing,
        view.pieces_an_hour,
        view.bundle,
        view.tag,
        f"revision {view.revision}",
        view.date,
        *view.recorded_by,
        *(c.text for c in view.cautions),
        *(c.signal for c in view.cautions),
        *(p.text for p in view.protection),
        *(text for s in view.settings for text in (s.name, s.value, s.other, *places(s))),
        *(plain(text) for s in view.steps for text in (s.key, s.why)),
        *(text for m in view.measures for text in (m.what, m.value, m.other, m.gauge, m.plan)),
        *(text for f in view.faults for text in (f.sign, f.grade, f.cause, f.remedy, f.stop)),
        *(row.size for row in view.sizes),
        *view.size_names,
    ]
    assert [text for text in wanted if letters(text) not in shown] == []


def places(setting: Setting) -> list[str]:
    """Where it is set and how it is proved, as sentences begin."""
    return [text[:1].upper() + text[1:] for text in (setting.set_at, setting.verify)]


@each_sample
def test_step_seconds_stay_off_the_sheet(view: SheetView, pdf_of) -> None:  # type: ignore[no-untyped-def]
    text = " ".join(sheet_pdf.page_texts(pdf_of(view)))
    assert [step.seconds for step in view.steps if step.seconds and step.seconds in text] == []


@each_sample
def test_no_capital_is_under_the_least(view: SheetView, pdf_of) -> None:  # type: ignore[no-untyped-def]
    small = [piece for piece in sheet_pdf.pieces(pdf_of(view)) if piece.capital < LEAST_CAPITAL_MM]
    assert small == []


@each_sample
def test_what_is_worked_to_stands_at_the_reading_distance_height(view: SheetView, pdf_of) -> None:  # type: ignore[no-untyped-def]
    """Action line, key point, check's value, and caution: any of their words set smaller is a fault."""
    large = letters("".join(p.text for p in sheet_pdf.pieces(pdf_of(view)) if p.capital >= view.capital_mm))
    wanted = [plain(text) for step in view.steps for text in (step.do.replace("→", ""), step.key)]
    wanted += [check.value for step in view.steps for check in step.checks]
    wanted += [caution.text for caution in view.cautions] + [item.text for item in view.protection]
    assert [text for text in wanted if letters(text) not in large] == []


@each_sample
def test_a_step_is_whole_on_one_page(view: SheetView, pdf_of) -> None:  # type: ignore[no-untyped-def]
    pdf = pdf_of(view)
    for step in view.steps:
        texts = [plain(text.replace("→", "")) for text in (step.do, step.key, step.why) if text]
        pages = [set(page_of(pdf, text)) for text in texts]
        assert set.intersection(*pages), step.name


@each_sample
def test_steps_stand_in_order(view: SheetView, pdf_of) -> None:  # type: ignore[no-untyped-def]
    pages = [page_of(pdf_of(view), plain(step.do.replace("→", "")))[0] for step in view.steps]
    assert pages == sorted(pages)


@each_sample
def test_every_page_has_code_tag_revision_and_its_number(view: SheetView, pdf_of) -> None:  # type: ignore[no-untyped-def]
    texts = sheet_pdf.page_texts(pdf_of(view))
    for number, text in enumerate(texts, start=1):
        for wanted in (
            view.code,
            view.tag,
            f"revision {view.revision}",
            view.date,
            f"page {number} of {len(texts)}",
        ):
            assert letters(wanted) in letters(text)


def right_end(piece: sheet_pdf.Piece) -> float:
    """Where a run of text ends, mm from the left edge of the page."""
    return piece.x + sheet_text(piece.text, spoken_letters(), bold=piece.bold)["em"] * piece.capital / CAPITAL_OF_EM


@pytest.mark.parametrize(
    "view",
    [*ALL, replace(LASER, capital_mm=5.8, paper="Letter", stem="far-laser")],
    ids=lambda view: view.stem,
)
def test_nothing_comes_near_the_paper_edge(view: SheetView, pdf_of) -> None:  # type: ignore[no-untyped-def]
    pdf = pdf_of(view)
    box = sheet_pdf.read(pdf).pages[0].mediabox
    width, height = float(box.width) * sheet_pdf.MM, float(box.height) * sheet_pdf.MM
    for piece in sheet_pdf.pieces(pdf):
        assert piece.x > PRINTER_MARGIN_MM, piece
        assert right_end(piece) < width - PRINTER_MARGIN_MM, piece
        assert PRINTER_MARGIN_MM + piece.capital < piece.y < height - PRINTER_MARGIN_MM, piece


@each_sample
def test_no_two_texts_overlap(view: SheetView, pdf_of) -> None:  # type: ignore[no-untyped-def]
    """Capitals of two runs on a page never share a place; runs of one line follow each other."""
    spots = [
        (p.page, p.x, right_end(p) - 0.4 * p.capital, p.y - p.capital, p.y, p.text)
        for p in sheet_pdf.pieces(pdf_of(view))
        if len(p.text) > 1  # letters inside figures come one by one, they are the drawing room's matter
    ]
    for number, (page, left, right, top, bottom, text) in enumerate(spots):
        for other_page, x1, x2, y1, y2, other in spots[number + 1 :]:
            apart = page != other_page or right <= x1 or x2 <= left or bottom <= y1 or y2 <= top
            assert apart, (page, text, other)


def test_labels_inside_a_figure_print_at_their_own_size(pdf_of) -> None:  # type: ignore[no-untyped-def]
    """A figure that was scaled to fit would have smaller letters than it was drawn with."""
    labels = [p for p in sheet_pdf.pieces(pdf_of(HANDLE_END)) if abs(p.capital - 2.8) < 0.002 and not p.bold]
    assert letters("drill holes") in letters("".join(p.text for p in labels))


@each_sample
def test_pdf_is_tagged_ua_with_title_and_language(view: SheetView, pdf_of) -> None:  # type: ignore[no-untyped-def]
    reader = sheet_pdf.read(pdf_of(view))
    root = reader.trailer["/Root"]
    assert root["/MarkInfo"]["/Marked"]
    assert root["/Lang"] == "en"
    assert root["/ViewerPreferences"]["/DisplayDocTitle"]
    assert reader.metadata is not None
    assert reader.metadata.title == f"{view.code} {view.title}"
    assert b"pdfuaid" in root["/Metadata"].get_object().get_data()


@each_sample
def test_every_picture_has_an_alternative(view: SheetView, pdf_of) -> None:  # type: ignore[no-untyped-def]
    figures = [node for kind, node in sheet_pdf.nodes(pdf_of(view)) if kind == "/Figure"]
    assert all(str(node.get("/Alt", "")) for node in figures)
    alts = {str(node["/Alt"]) for node in figures}
    assert {step.figure.alt for step in view.steps if step.figure} <= alts
    assert {photo.alt for step in view.steps for photo in step.photos} <= alts
    assert f"QR code: {view.qr}" in alts


@each_sample
def test_headings_and_table_heads_are_tagged(view: SheetView, pdf_of) -> None:  # type: ignore[no-untyped-def]
    kinds = [kind for kind, _ in sheet_pdf.nodes(pdf_of(view))]
    assert kinds.count("/H1") == 1
    assert kinds.count("/H2") >= len(view.steps) + 2
    assert kinds.count("/Table") == kinds.count("/THead") >= 3
    assert "/TH" in kinds


@each_sample
def test_only_the_sheets_own_faces_are_used_and_all_are_embedded(view: SheetView, pdf_of) -> None:  # type: ignore[no-untyped-def]
    faces = sheet_pdf.faces(pdf_of(view))
    assert faces
    assert all(faces.values())
    assert all(name.startswith("AtkinsonHyperlegible") for name in faces)


def test_equal_input_gives_equal_bytes(pdf_of, press: SheetPress) -> None:  # type: ignore[no-untyped-def]
    first = pdf_of(POCKET)
    render_sheet(LASER, PHOTOS, press)
    assert render_sheet(POCKET, PHOTOS, press) == first
    with SheetPress(TEMPLATES, pens=PENS) as other:
        assert render_sheet(POCKET, PHOTOS, other) == first


def test_text_is_never_read_as_markup(press: SheetPress) -> None:
    hostile = '#panic("x") $a$ \\ @b <c> `d` // "e" {n} _f_'
    view = replace(HANDLE_END, title=hostile, steps=(replace(HANDLE_END.steps[0], do=hostile, key=hostile),))
    assert letters("".join(sheet_pdf.page_texts(render_sheet(view, PHOTOS, press)))).count(letters(hostile)) >= 2


def test_paper_follows_the_view(pdf_of) -> None:  # type: ignore[no-untyped-def]
    sizes = {view.stem: sheet_pdf.read(pdf_of(view)).pages[0].mediabox for view in (HANDLE_END, LASER)}
    assert (round(sizes["HND-20"].width), round(sizes["HND-20"].height)) == (612, 792)
    assert (round(sizes["PAN-10"].width), round(sizes["PAN-10"].height)) == (595, 842)


@pytest.mark.parametrize("paper", ["Tabloid", "A3 landscape", "A4"])
def test_other_papers_hold_the_whole_sheet(paper: str, press: SheetPress) -> None:
    pdf = render_sheet(replace(FAR, paper=paper), PHOTOS, press)
    shown = letters("".join(sheet_pdf.page_texts(pdf)))
    assert all(letters(plain(step.do)) in shown for step in FAR.steps)


def test_paper_as_wide_as_two_sheets_carries_two_columns_of_steps(press: SheetPress) -> None:
    """Down the left column, then down the right one; both begin below the head card."""
    steps = tuple(replace(HANDLE_END.steps[0], number=n, name=f"s{n}", do=f"Lay panel {n}.") for n in range(1, 7))
    wide = replace(HANDLE_END, paper="Tabloid landscape", steps=steps, measures=(), faults=(), settings=())
    found = [piece for piece in sheet_pdf.pieces(render_sheet(wide, PHOTOS, press)) if piece.text.startswith("Lay")]
    assert [piece.text for piece in found] == [step.do for step in steps]
    columns = [(piece.page, piece.x > 431.8 / 2) for piece in found]
    assert columns == sorted(columns)
    assert {right for _, right in columns} == {False, True}
    assert min(columns.count(column) for column in set(columns) if column != columns[-1]) >= 2
    top = sheet_pdf.pieces(render_sheet(replace(wide, paper="Tabloid"), PHOTOS, press))
    assert all(piece.x < 279.4 / 2 for piece in top if piece.text.startswith("Lay"))


def test_a_bare_sheet_has_no_empty_sections(press: SheetPress) -> None:
    bare = replace(
        HANDLE_END,
        cautions=(),
        protection=(),
        settings=(),
        measures=(),
        faults=(),
        incoming=(),
        outgoing=(),
        pieces_an_hour="",
        bundle="",
        picture=None,
        qr="",
        recorded_by=(),
        date="",
        steps=HANDLE_END.steps[:1],
    )
    pdf = render_sheet(bare, PHOTOS, press)
    assert len(sheet_pdf.read(pdf).pages) == 1
    assert "/Table" not in [kind for kind, _ in sheet_pdf.nodes(pdf)]


def test_a_sheet_of_short_steps_only_stands_on_one_page(press: SheetPress) -> None:
    steps = tuple(replace(HANDLE_END.steps[0], figure=None, number=n, name=f"s{n}") for n in range(1, 4))
    view = replace(HANDLE_END, steps=steps, measures=(), faults=(), settings=())
    assert len(sheet_pdf.read(render_sheet(view, PHOTOS, press)).pages) == 1


def test_a_wide_figure_keeps_its_width_and_sends_the_words_above(press: SheetPress) -> None:
    figure = replace(HANDLE_END.steps[0].figure, width_mm=150.0, height_mm=80.0)
    view = replace(HANDLE_END, steps=(replace(HANDLE_END.steps[0], figure=figure),))
    found = sheet_pdf.pieces(render_sheet(view, PHOTOS, press))
    labels = [p for p in found if abs(p.capital - 2.8) < 0.002]
    action = next(p for p in found if p.text.startswith("Lay"))
    assert letters("drill holes") in letters("".join(p.text for p in labels))
    assert all(action.y < label.y for label in labels)


def test_bytes_that_are_no_picture_are_a_fault(press: SheetPress) -> None:
    with pytest.raises(SheetFault):
        render_sheet(POCKET, dict.fromkeys(PHOTOS, b"not a picture"), press)


def test_booklet_numbers_each_sheet_by_itself_and_lists_all(press: SheetPress) -> None:
    pdf = render_booklet((HANDLE_END, POCKET), PHOTOS, press, "Lockstitch", duplex=False)
    texts = sheet_pdf.page_texts(pdf)
    assert len(texts) == 1 + 2 + 4
    numbers = [match.group() for text in texts[1:] if (match := re.search(r"page \d of \d", text))]
    assert numbers == [
        "page 1 of 2",
        "page 2 of 2",
        "page 1 of 4",
        "page 2 of 4",
        "page 3 of 4",
        "page 4 of 4",
    ]
    for wanted in ("Lockstitch", HANDLE_END.title, POCKET.title, HANDLE_END.code, POCKET.code):
        assert letters(wanted) in letters(texts[0])


def test_a_booklet_for_both_sides_begins_each_sheet_on_the_front_of_a_leaf(press: SheetPress) -> None:
    three = replace(HANDLE_END, stem="three", steps=HANDLE_END.steps * 3)
    reader = sheet_pdf.read(render_booklet((HANDLE_END, three, POCKET), PHOTOS, press, "Lockstitch"))
    texts = [page.extract_text() for page in reader.pages]
    firsts = [number for number, text in enumerate(texts, start=1) if "page 1 of" in text]
    empty = [number for number, text in enumerate(texts, start=1) if "left empty" in text]
    assert len(firsts) == 3
    assert all(number % 2 == 1 for number in firsts)
    # Only backs are empty: behind the contents, and behind a sheet of an odd number of pages.
    assert all(number % 2 == 0 for number in empty)
    assert len(texts) == 1 + sum(int(count) for count in re.findall(r"page 1 of (\d)", " ".join(texts))) + len(empty)
    for number, first in zip(re.findall(r"\n(\d+)\s*(?=\n|$)", texts[0]), firsts, strict=False):
        assert int(number) in firsts, first
    assert {tuple(page.mediabox[2:]) for page in reader.pages} == {tuple(reader.pages[0].mediabox[2:])}


def test_booklet_has_a_bookmark_for_each_sheet(press: SheetPress) -> None:
    reader = sheet_pdf.read(render_booklet((HANDLE_END, LASER), PHOTOS, press, "All"))
    titles = [str(mark.title) for mark in reader.outline if not isinstance(mark, list)]
    assert titles == ["All", HANDLE_END.title, LASER.title]


def test_a_booklet_needs_a_sheet(press: SheetPress) -> None:
    with pytest.raises(ValueError, match="needs a sheet"):
        render_booklet((), PHOTOS, press, "None")
