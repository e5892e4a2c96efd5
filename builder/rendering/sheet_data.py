"""A sheet's view object as the plain data its template reads: one JSON document, nothing left to decide but places.

The template gets texts as runs, pictures as SVG with their size in mm, and every UI word. Not here: facts (view),
drawing (drawing room), and positions on paper (the theme's templates).
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any, Protocol

from builder.model import PAPER_MM, isolated, photo_rows, say, show_date, step_columns
from builder.rendering.qr import qr_code
from builder.rendering.sheet_text import Letters, SheetText, sheet_text, spoken_letters, type_sizes
from builder.rendering.sheet_words import ENGLISH, filled

if TYPE_CHECKING:
    from builder.view import AnyFigure, Caution, FaultLine, Measure, Photo, Setting, SheetView, StepView

Json = dict[str, Any]

QR_MODULE_MM = 0.75
"""Printed width of a QR module: about nine dots at 300 dpi."""

VERDICT_MM = 5.0
_GENERAL_WARNING = "W001"  # ISO 7010: the sign for a caution that has none of its own
_SIGNALS = ("DANGER", "WARNING", "CAUTION")  # ANSI Z535, the worst first
_FINGERPRINT_SHOWN = 8
_PRINTED_FINGERPRINT = 12


class DrawnFigure(Protocol):
    """What the drawing room returns, as far as a sheet needs it."""

    @property
    def svg(self) -> str: ...
    @property
    def width_mm(self) -> float: ...
    @property
    def height_mm(self) -> float: ...


class DrawnOverlay(Protocol):
    """What the drawing room returns of a picture's callouts, as far as a sheet needs it."""

    @property
    def svg(self) -> str: ...


Draw = Callable[["AnyFigure"], DrawnFigure]
Overlays = Callable[["Photo"], DrawnOverlay]
Sign = Callable[[str, float], str]


@dataclass(frozen=True, slots=True)
class KeptPhoto:
    """A photo where the template finds it, with its width and height in pixels, as it is seen upright."""

    path: str
    width: int
    height: int


@dataclass(frozen=True, slots=True)
class Pens:
    """What draws for a sheet: figures and signs come from the drawing room, words from a language."""

    draw: Draw
    sign: Sign
    english: Mapping[str, str] = field(default_factory=lambda: ENGLISH)
    overlay: Overlays = field(default_factory=lambda: _drawn_overlay)
    verdict: Sign = field(default_factory=lambda: _drawn_verdict)

    @property
    def words(self) -> Mapping[str, str]:
        """The sheet's own words in the language spoken now."""
        return {name: say(text) for name, text in self.english.items()}

    @property
    def letters(self) -> Letters:
        """The faces of the language spoken now."""
        return spoken_letters()

    def text(self, text: str, *, bold: bool = False) -> SheetText:
        """A text without Markdown."""
        return sheet_text(isolated(text), self.letters, bold=bold)

    def marked(self, text: str, *, bold: bool = False) -> SheetText:
        """A Markdown text, emphasis only."""
        return sheet_text(isolated(text), self.letters, bold=bold, marked=True)


def _drawn_overlay(photo: Photo) -> DrawnOverlay:
    from builder.drawing import draw_callouts

    return draw_callouts(photo)


def _drawn_verdict(verdict: str, side: float) -> str:
    from builder.drawing import verdict_svg

    return verdict_svg(verdict, side)


def default_pens() -> Pens:
    """The drawing room's own functions and English words."""
    from builder.drawing import draw, sign_svg

    return Pens(draw, sign_svg)


def sheet_data(view: SheetView, photos: Mapping[str, KeptPhoto], pens: Pens) -> Json:
    """Everything the template prints of one sheet.

    photos : where the template finds each photo, by its name
    Raises KeyError for a photo that is not there, ValueError for an unknown paper.
    """
    return {
        "id": view.stem,
        **_look(view),
        **_head(view, pens),
        "cautions": [_caution(c, pens) for c in view.cautions],
        "protection": [
            {"sign": _sign(p.sign, p.name, pens), "text": pens.text(p.text or p.name)} for p in view.protection
        ],
        "deviation": _deviation(view, pens),
        "notices": [pens.text(n) for n in view.notices],
        "settings": [_setting(s, pens) for s in view.settings],
        "output": _output(view, pens),
        "steps": [_step(step, view, photos, pens) for step in view.steps],
        "measures": [_measure(m, pens) for m in view.measures],
        "faults": [_fault(f, pens) for f in view.faults],
        "sizes": _sizes(view, pens),
        "colours": _colours(view, pens),
        "incoming": [pens.text(text) for text in view.incoming],
        "outgoing": [pens.text(text) for text in view.outgoing],
        "footer": _footer(view, pens),
        **_brand(view, photos),
    }


def _deviation(view: SheetView, pens: Pens) -> Json | None:
    """That this is one, for what and why; nothing for an ordinary operation."""
    one = view.deviation
    if one is None:
        return None
    return {
        "only": pens.text(one.only, bold=True),
        "instead": pens.text(one.instead),
        "because": pens.text(one.because),
    }


def paper_size(paper: str) -> tuple[float, float]:
    """Width and height in mm of a paper by its name, `Letter` or `A4 landscape`. ValueError when unknown."""
    if paper not in PAPER_MM:
        raise ValueError(f"no paper is called {paper!r}: {', '.join(PAPER_MM)}")
    return PAPER_MM[paper]


def _brand(view: SheetView, photos: Mapping[str, KeptPhoto]) -> Json:
    """The plant's colour and logo, none where it types none."""
    brand = view.brand
    logo = brand.logo if brand is not None else None
    return {
        "colour": brand.colour if brand is not None and brand.colour else None,
        "logo": {"path": photos[logo.name].path, "alt": logo.alt} if logo is not None else None,
    }


def _look(view: SheetView) -> Json:
    width, height = paper_size(view.paper)
    language, _, region = view.language.partition("-")
    return {
        "paper": {"width": width, "height": height, "columns": step_columns(view.paper, view.capital_mm)},
        "type": {**type_sizes(view.capital_mm), "capital": view.capital_mm},
        "language": {"lang": language or "en", "region": region or None},
    }


def _head(view: SheetView, pens: Pens) -> Json:
    place = " · ".join(filter(None, (view.station_title, ", ".join(view.products))))
    return {
        "code": pens.text(view.code, bold=True),
        "tag": pens.text(view.tag),
        "title": pens.text(view.title, bold=True),
        "place": pens.text(place),
        "station_title": pens.text(view.station_title),
        "picture": None if view.picture is None else _figure(view.picture, pens),
        "qr": None if not view.qr else _qr(view, pens),
    }


def _qr(view: SheetView, pens: Pens) -> Json:
    code = qr_code(view.qr, pens.words["qr"])
    return {"svg": code.svg, "alt": code.alt, "width": code.modules * QR_MODULE_MM}


def _figure(figure: AnyFigure, pens: Pens) -> Json:
    """A figure at its own size; PDF/UA refuses a picture without words, so the title stands in for a missing one."""
    drawing = pens.draw(figure)
    return {
        "svg": drawing.svg,
        "width": drawing.width_mm,
        "height": drawing.height_mm,
        "alt": figure.alt or figure.title or figure.name,
    }


def _sign(code: str, name: str, pens: Pens) -> Json:
    return {"svg": pens.sign(code, 100.0), "alt": filled(pens.words["sign_alt"], name=name)}


def _caution(caution: Caution, pens: Pens) -> Json:
    return {
        "sign": _sign(caution.sign, caution.hazard, pens),
        "signal": caution.signal.upper(),
        "text": pens.marked(caution.text),
    }


def _setting(setting: Setting, pens: Pens) -> Json:
    return {
        "name": pens.text(setting.name),
        "value": pens.text(setting.value, bold=True),
        "other": pens.text(setting.other),
        "place": pens.text(_place(setting)),
    }


def _place(setting: Setting) -> str:
    """Where it is set and how it is proved, as sentences: `Dial on the head. Sew 100 mm on scrap.`"""
    sentences = (text[0].upper() + text[1:].rstrip(".") for text in (setting.set_at, setting.verify) if text)
    return "".join(f"{sentence}. " for sentence in sentences).strip()


def _output(view: SheetView, pens: Pens) -> list[Json]:
    """What the job yields, shown behind the settings: pieces an hour and the bundle."""
    pairs = (("pieces_an_hour", view.pieces_an_hour), ("bundle", view.bundle))
    return [
        {"name": pens.text(pens.words[word]), "value": pens.text(value, bold=True), "other": pens.text("")}
        for word, value in pairs
        if value
    ]


def _step(step: StepView, view: SheetView, photos: Mapping[str, KeptPhoto], pens: Pens) -> Json:
    return {
        "number": str(step.number),
        "do": pens.marked(step.said, bold=True),
        "key": pens.marked(step.key),
        "why": pens.marked(step.why),
        "checks": [_measure(m, pens) for m in step.checks],
        "cautions": [_caution(one, pens) for one in step.cautions],
        "figure": None if step.figure is None else _figure(step.figure, pens),
        "details": [_figure(one, pens) for one in step.details],
        "photos": [[_photo(photo, photos, pens) for photo in row] for row in photo_rows(step.photos)],
    }


def _photo(photo: Photo, kept_photos: Mapping[str, KeptPhoto], pens: Pens) -> Json:
    return {
        "path": kept_photos[photo.name].path,
        "width": photo.width_mm,
        "height": photo.height_mm,
        "alt": photo.described,
        "overlay": pens.overlay(photo).svg,
        "caption": pens.text(photo.caption),
        "verdict": _verdict(photo.verdict, pens) if photo.verdict else None,
        "legend": [{"number": str(number), "says": pens.text(says)} for number, says in photo.legend],
    }


def _verdict(verdict: str, pens: Pens) -> Json:
    return {"sign": pens.verdict(verdict, VERDICT_MM), "word": pens.text(pens.words[verdict], bold=True)}


def _measure(measure: Measure, pens: Pens) -> Json:
    return {
        "what": pens.text(measure.what or measure.name),
        "values": [
            {"value": pens.text(value, bold=True), "other": pens.text(other)} for value, other in measure.lines()
        ],
        "gauge": pens.text(measure.gauge),
        "plan": pens.text(measure.plan),
    }


def _fault(fault: FaultLine, pens: Pens) -> Json:
    return {
        "sign": pens.marked(fault.sign),
        "grade": pens.text(fault.grade),
        "cause": pens.marked(fault.cause),
        "remedy": pens.marked(" ".join(filter(None, (fault.power, fault.remedy)))),
        "stop": pens.marked(fault.stop),
    }


def _sizes(view: SheetView, pens: Pens) -> Json:
    names = (*view.size_names, pens.words["pieces_an_hour"]) if view.paces_differ else view.size_names
    rows = [_variant_row(row.size, view.size_cells(row), row.fingerprint, pens) for row in view.sizes]
    return {"names": [pens.text(name) for name in names], "rows": rows}


def _colours(view: SheetView, pens: Pens) -> Json:
    rows = [_variant_row(row.colour, row.values, row.fingerprint, pens) for row in view.colours]
    return {"names": [pens.text(name) for name in view.colour_names], "rows": rows}


def _variant_row(name: str, values: Sequence[str], fingerprint: str, pens: Pens) -> Json:
    return {
        "name": pens.text(name, bold=True),
        "values": [_size_value(value, pens) for value in values],
        "fingerprint": pens.text(short_fingerprint(fingerprint)),
    }


def _size_value(value: str, pens: Pens) -> Json:
    """A value with its other unit in brackets behind it, `269 mm (10.59 in)`, as two texts."""
    first, bracket, rest = value.partition(" (")
    other = rest.removesuffix(")") if bracket else ""
    return {"value": pens.text(first), "other": pens.text(other)}


def short_fingerprint(fingerprint: str) -> str:
    """A fingerprint as printed in a table: a short code as it is, a long hash as its first eight characters.

    >>> short_fingerprint("9c01d2ef5a7733")
    '9C01 D2EF'
    """
    if len(fingerprint) <= _PRINTED_FINGERPRINT:
        return fingerprint
    head = fingerprint[:_FINGERPRINT_SHOWN].upper()
    return f"{head[:4]} {head[4:]}"


def _footer(view: SheetView, pens: Pens) -> Json:
    words = pens.words
    said = (
        filled(words["revision"], revision=view.revision) if view.revision else "",
        show_date(view.date),
        filled(words["recorded_by"], codes=", ".join(view.recorded_by)) if view.recorded_by else "",
        filled(words["words_tag"], tag=view.words_tag) if view.words_tag else "",
        filled(words["read_by"], code=view.read_by) if view.read_by else "",
    )
    return {
        "lead": pens.text("  ".join(filter(None, (view.code, view.tag))), bold=True),
        "said": pens.text("".join(f" · {text}" for text in said if text)),
        "number": pens.text(filled(words["page"], n="99", m="99"), bold=True),
    }


def document_title(view: SheetView, words: Mapping[str, str]) -> str:
    """Title of a sheet's PDF, as a viewer's window shows it."""
    return filled(words["sheet_title"], code=view.code, title=view.title).strip()
