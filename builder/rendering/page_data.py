"""What the site's templates are handed: view objects turned into plain values and finished markup.

Every sum, share and path a template shows is worked out here, because templates hold no arithmetic. It decides
nothing about the work: that is done in the view objects.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace
from pathlib import PurePosixPath
from typing import Any

from markupsafe import Markup, escape

from builder.model import say, show_date, show_number
from builder.rendering.qr import qr_code
from builder.view import (
    AnyChart,
    AnyFigure,
    Caution,
    FigureView,
    HomePage,
    Link,
    Measure,
    Photo,
    PickPage,
    ProductPage,
    Protection,
    RouteRow,
    RuleRow,
    RulesPage,
    SheetView,
    StationPage,
    StepView,
    VariantView,
    described,
)

SIGN_MM = 12.0
GENERAL_WARNING = "W001"  # ISO 7010: for a caution that has no registered sign of its own
# Drawn at twice the shown size, so that its lines come out half as thick.
THUMBNAIL_MM = (52.0, 30.0)
# The number after the last bar needs room inside the column, so the whole product is this share of its width.
BAR_ROOM = 86.0

READER_M = (0.6, 1.0, 1.5, 2.0, 3.0, 4.0, 6.0)
"""From how far a floor screen is read: at the machine, across the bench, from the aisle."""
# A fact of more letters takes the whole width: in a column of its own it would be as high as wide.
_LONG_FACT = 50

Data = dict[str, Any]


@dataclass(frozen=True, slots=True)
class Pens:
    """The functions that turn view objects into markup.

    figure   : a figure as inline SVG, sized in mm, presentation attributes only
    chart    : a chart, likewise
    sign     : an ISO 7010 sign by its code, with its side in mm, as inline SVG
    markdown : text with emphasis to inline HTML
    """

    figure: Callable[[AnyFigure], str]
    sign: Callable[[str, float], str]
    markdown: Callable[[str], str]
    chart: Callable[[AnyChart], str]


VERDICT_MM = 5.0
"""Size a verdict's sign is drawn at; the style sheet sets it."""


def root_of(path: str) -> str:
    """The way from a page back to the output folder: '' for `index.html`, '../' for `floor/x.html`."""
    return "../" * (len(PurePosixPath(path).parts) - 1)


def photo_path(photo: Photo) -> str:
    """Where a picture lies in the output folder, named by what it shows, so that a changed one is a new file."""
    return f"assets/photos/{photo.name}.{'svg' if photo.drawn else 'jpg'}"


def operation_path(sheet: SheetView) -> str:
    """Where the whole instruction lies."""
    return f"operations/{sheet.stem}.html"


def training_path(sheet: SheetView) -> str:
    """Where the training sheet lies."""
    return f"training/{sheet.stem}.pdf"


def floor_path(sheet: SheetView) -> str:
    """Where the floor screen lies."""
    return f"floor/{sheet.stem}.html"


def home_data(home: HomePage, pictures: bool = True) -> Data:
    """The front page: its three lists, each with its heading and anchor, which the site's header links to."""
    groups = (
        ("products", say("Products"), home.products),
        ("operations", say("Operations"), [one if pictures else replace(one, picture="") for one in home.operations]),
        ("stations", say("Stations"), home.stations),
    )
    return {
        "title": home.title,
        "date": show_date(home.date),
        "groups": [_group(anchor, heading, links) for anchor, heading, links in groups],
    }


def _group(anchor: str, heading: str, links: Sequence[Link]) -> Data:
    return {"anchor": anchor, "heading": heading, "count": len(links), "links": links}


def pick_data(page: PickPage) -> Data:
    """The page where floor screens are picked."""
    lists = (("by-station", say("By station"), page.stations), ("by-product", say("By product"), page.products))
    return {"lists": lists, "distances": [(distance, show_number(distance, 1)) for distance in READER_M]}


def station_data(station: StationPage, pens: Pens) -> Data:
    """A station's page."""
    return {
        "title": station.title,
        "kind": station.kind,
        "facts": [(name, value, len(value) > _LONG_FACT) for name, value in station.facts],
        "settings": station.settings,
        "allowances": station.allowances,
        "allowance_note": station.allowance_note,
        "operations": station.operations,
        "cards": station.cards,
        "cards_path": f"cards/{station.name}.pdf",
        "tending": station.tending,
        "lists": [
            one
            for one in ((say("Before the shift"), station.start), (say("At the end of the shift"), station.close_down))
            if one[1]
        ],
        **_safety(station.cautions, station.protection, pens),
    }


def rules_data(rules: RulesPage) -> Data:
    """The page of rules; what a file would say, between backticks in the text, is set as code."""
    return {
        "groups": [
            (group, [{**_row(row), "why": coded(row.why), "remedy": coded(row.remedy)} for row in rows])
            for group, rows in rules.groups
        ]
    }


def _row(row: RuleRow) -> Data:
    return {"slug": row.slug, "level": coded(row.level), "causes": row.causes, "bad": row.bad, "good": row.good}


def coded(text: str) -> Markup:
    """Text with its pieces between backticks as code."""
    pieces = text.split("`")
    marked = (Markup("<code>{}</code>").format(one) if at % 2 else escape(one) for at, one in enumerate(pieces))
    return Markup("").join(marked)


def product_data(product: ProductPage, pens: Pens) -> Data:
    """A product's page. Thumbnails are drawn once a variant, under names of their own, so no id repeats."""
    several = len(product.variants) > 1
    return {
        "title": product.title,
        "note": product.note,
        "sheets_pdf": product.sheets_pdf,
        "colours": product.colours or (say("material"),),
        "alternative": product.alternative,
        "several": several,
        "variants": [_variant(variant, product, pens, several) for variant in product.variants],
    }


def _variant(variant: VariantView, product: ProductPage, pens: Pens, several: bool) -> Data:
    return {
        "name": variant.name,
        "anchor": variant.anchor,
        "heading": say("Size {size}", size=variant.name) if several else say("Times"),
        "standard": variant.standard,
        "machine": variant.machine,
        "estimate_share": variant.estimate_share.replace(" ", "\u00a0"),
        "pieces_an_hour": variant.pieces_an_hour,
        "stations": variant.stations,
        "materials": variant.materials,
        "interval": variant.interval.replace(" ", "\u00a0"),
        "sure": variant.sure,
        "sources": variant.sources,
        "newcomer": variant.newcomer,
        "newcomer_note": variant.newcomer_note,
        "following": variant.following,
        "rows": [_route_row(row, variant.anchor, root_of(product.path), pens) for row in variant.rows],
    }


def _route_row(row: RouteRow, anchor: str, root: str, pens: Pens) -> Data:
    return {
        "href": root + row.page,
        "title": row.title,
        "where": " · ".join(part for part in (row.code, row.station, row.quantity) if part),
        "own": row.own,
        "cumulative": row.cumulative,
        "source": row.source,
        "study": root + row.study if row.study else "",
        "thumbnail": _thumbnail(row.figure, anchor, pens) if row.figure else "",
        "bar": bar_of(row),
    }


def bar_of(row: RouteRow) -> dict[str, str]:
    """Ends of a row's bar as percentages of the column: the measured part first, then the estimated one.

    A part of no width is '' and not drawn.
    """
    start = BAR_ROOM * row.start_share
    sure = BAR_ROOM * row.own_share * (1.0 - row.estimated)
    estimated = BAR_ROOM * row.own_share * row.estimated
    return {
        "start": _percent(start),
        "sure": _percent(sure) if sure > 0 else "",
        "estimated_from": _percent(start + sure),
        "estimated": _percent(estimated) if estimated > 0 else "",
        "end": _percent(start + sure + estimated),
    }


def _percent(value: float) -> str:
    return f"{value:.2f}%"


def _thumbnail(figure: FigureView, anchor: str, pens: Pens) -> Markup:
    """The figure without its words, which no one could read at this size."""
    width, height = THUMBNAIL_MM
    small = replace(
        figure,
        name=f"{figure.name}-{anchor}",
        side="",
        route=(),
        start=None,
        end=None,
        ring=(),
        grain=None,
        dimensions=(),
        callouts=(),
        width_mm=width,
        height_mm=height,
    )
    return Markup(pens.figure(small))


def operation_data(sheet: SheetView, pens: Pens) -> Data:
    """The whole instruction on one page."""
    return {
        **head_data(sheet, pens),
        "products": ", ".join(sheet.products),
        "station_path": f"stations/{sheet.station}.html",
        "floor_path": floor_path(sheet),
        "sheet_path": f"sheets/{sheet.stem}.pdf",
        "training_path": training_path(sheet),
        "picture": Markup(pens.figure(sheet.picture)) if sheet.picture else "",
        "steps": [
            {**step_data(step, pens, [row.size for row in sheet.sizes]), "described": _described(step)}
            for step in sheet.steps
        ],
        "measures": sheet.measures,
        "templates": [
            (one.said, "" if one.state == "not in use" else f"templates/{one.name}.pdf") for one in sheet.templates
        ],
        "faults": sheet.faults,
        "incoming": sheet.incoming,
        "outgoing": sheet.outgoing,
        "colophon": _colophon(sheet),
        "square_code": Markup(qr_code(sheet.qr, say("QR code: {text}")).svg) if sheet.qr else "",
    }


def head_data(sheet: SheetView, pens: Pens) -> Data:
    """What an instruction's page and its floor screen share."""
    return {
        "code": sheet.code,
        "title": sheet.title,
        "station_title": sheet.station_title,
        "tag": sheet.tag,
        "deviation": sheet.deviation,
        "other_ways": sheet.other_ways,
        "notices": sheet.notices,
        "settings": sheet.settings,
        "sizes": _sizes(sheet),
        "colours": _colours(sheet),
        "switch": [row.size for row in sheet.sizes] if _differs(sheet) else [],
        **_safety(sheet.cautions, sheet.protection, pens),
    }


def _differs(sheet: SheetView) -> bool:
    """Whether a step shows another picture or another value in another size."""
    return any(step.sizes or any(check.sizes for check in step.checks) for step in sheet.steps)


def _sizes(sheet: SheetView) -> Data:
    names = (*sheet.size_names, say("pieces an hour")) if sheet.paces_differ else sheet.size_names
    return _variants(say("size"), names, [(row.size, sheet.size_cells(row)) for row in sheet.sizes])


def _colours(sheet: SheetView) -> Data:
    return _variants(say("colour"), sheet.colour_names, [(row.colour, row.values) for row in sheet.colours])


def _variants(head: str, names: Sequence[str], rows: Sequence[tuple[str, Sequence[str]]]) -> Data:
    return {
        "head": head,
        "names": names,
        "rows": [{"name": name, "cells": list(zip(names, values, strict=True))} for name, values in rows],
    }


def _safety(cautions: Sequence[Caution], protection: Sequence[Protection], pens: Pens) -> Data:
    """Cautions and protection with their signs. The sign says nothing the words don't, so it is hidden from speech."""
    return {
        "cautions": [
            {"signal": item.signal, "text": item.text, "drawing": _sign(item.sign or GENERAL_WARNING, pens)}
            for item in cautions
        ],
        "protection": [{"text": item.text or item.name, "drawing": _sign(item.sign, pens)} for item in protection],
    }


def _sign(code: str, pens: Pens) -> Markup:
    drawing = pens.sign(code, SIGN_MM) if code else ""
    return Markup('<span class="sign" aria-hidden="true">{}</span>').format(Markup(drawing))


def step_data(step: StepView, pens: Pens, sizes: Sequence[str] = ()) -> Data:
    """One step with its words as markup and its figures drawn. `sizes`: those of the sheet, the reference first."""
    return {
        "name": step.name,
        "number": step.number,
        "do": Markup(pens.markdown(step.said)),
        "key": Markup(pens.markdown(step.key)) if step.key else "",
        "why": Markup(pens.markdown(step.why)) if step.why else "",
        "cautions": [{"signal": one.signal, "text": Markup(pens.markdown(one.text))} for one in step.cautions],
        "checks": [_check(check, sizes) for check in step.checks],
        "drawings": _drawings(step, pens, sizes),
        "details": [Markup(pens.figure(figure)) for figure in step.details],
        "photos": [_photo(photo) for photo in step.photos],
        "taught": any(photo.taught for photo in step.photos),
    }


def _described(step: StepView) -> tuple[str, ...]:
    """The step's figure in words, which only the whole instruction shows."""
    return described(step.figure) if step.figure is not None else ()


def _drawings(step: StepView, pens: Pens, sizes: Sequence[str]) -> list[Data]:
    """The figures of a step: one for all sizes, or each with the places in the switch of the sizes it stands for."""
    if step.figure is None:
        return []
    if not step.sizes:
        return [{"picks": [], "words": "", "svg": Markup(pens.figure(step.figure))}]
    own = dict(step.sizes)
    shared = [size for size in sizes if size not in own]
    groups = [(shared, step.figure), *(([size], figure) for size, figure in own.items())]
    return [
        {
            "picks": [sizes.index(size) + 1 for size in names],
            "words": say("size {sizes}", sizes=", ".join(names)),
            "svg": Markup(pens.figure(figure)),
        }
        for names, figure in groups
    ]


def _check(check: Measure, sizes: Sequence[str]) -> Data:
    """A check of a step; where sizes differ, each with its place in the switch."""
    how = ", ".join(part for part in (check.gauge, check.plan) if part)
    picks = [sizes.index(size) + 1 if size in sizes else 0 for size, _, _ in check.sizes] or [0]
    values = [
        {"pick": pick, "value": value, "other": other}
        for pick, (value, other) in zip(picks, check.lines(), strict=True)
    ]
    return {"what": check.what, "values": values, "how": how}


def _photo(photo: Photo) -> Data:
    """A picture with its callouts, which lie over it and scale with it."""
    from builder.drawing import draw_callouts, verdict_svg

    return {
        "path": photo_path(photo),
        "alt": photo.described,
        "caption": photo.caption,
        "overlay": Markup(draw_callouts(photo).svg),
        "verdict": photo.verdict,
        "sign": Markup(verdict_svg(photo.verdict, VERDICT_MM)) if photo.verdict else "",
        "legend": photo.legend,
    }


def _colophon(sheet: SheetView) -> list[Mapping[str, str]]:
    """The small print under the instruction, empty facts left out."""
    facts = (
        (say("fingerprint"), sheet.tag),
        (say("revision"), sheet.revision),
        (say("date"), show_date(sheet.date)),
        (say("recorded by"), ", ".join(sheet.recorded_by)),
        (say("pieces an hour"), sheet.pieces_an_hour),
        (say("bundle"), sheet.bundle),
    )
    return [{"label": label, "text": text} for label, text in facts if text]
