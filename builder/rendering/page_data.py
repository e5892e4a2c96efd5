"""What the site's templates are handed: view objects turned into plain values and finished markup.

Every sum, share and path a template shows is worked out here, because templates hold no arithmetic. It decides
nothing about the work: that is done in the view objects.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace
from pathlib import PurePosixPath
from typing import Any

from markupsafe import Markup

from builder.rendering.markdown import plain
from builder.rendering.screen_fit import fit_of
from builder.view import (
    Caution,
    FigureView,
    HomePage,
    Link,
    Measure,
    Photo,
    ProductPage,
    Protection,
    RouteRow,
    SheetView,
    StationPage,
    StepView,
    VariantView,
)

SIGN_MM = 12.0
GENERAL_WARNING = "W001"  # ISO 7010: for a caution that has no registered sign of its own
THUMBNAIL_MM = (26.0, 15.0)
# The number after the last bar needs room inside the column, so the whole product is this share of its width.
BAR_ROOM = 86.0
MOST_DOTS_IN_LINE = 9

Data = dict[str, Any]


@dataclass(frozen=True, slots=True)
class Pens:
    """The functions that turn view objects into markup.

    figure   : a figure as inline SVG, sized in mm, presentation attributes only
    sign     : an ISO 7010 sign by its code, with its side in mm, as inline SVG
    markdown : text with emphasis to inline HTML
    """

    figure: Callable[[FigureView], str]
    sign: Callable[[str, float], str]
    markdown: Callable[[str], str]


def root_of(path: str) -> str:
    """The way from a page back to the output folder: '' for `index.html`, '../' for `floor/x.html`."""
    return "../" * (len(PurePosixPath(path).parts) - 1)


def photo_path(photo: Photo) -> str:
    """Where a photo lies in the output folder; named by its digest, so that a changed photo is a new file."""
    return f"assets/photos/{photo.digest}{PurePosixPath(photo.path).suffix.lower()}"


def operation_path(sheet: SheetView) -> str:
    return f"operations/{sheet.stem}.html"


def floor_path(sheet: SheetView) -> str:
    return f"floor/{sheet.stem}.html"


def home_data(home: HomePage) -> Data:
    """The front page: each list with its heading; an empty list is left out, its anchor kept by the others."""
    groups = (
        ("products", "Products", home.products),
        ("operations", "Operations", home.operations),
        ("stations", "Stations", home.stations),
    )
    return {
        "title": home.title,
        "date": home.date,
        "groups": [_group(anchor, heading, links) for anchor, heading, links in groups],
    }


def _group(anchor: str, heading: str, links: Sequence[Link]) -> Data:
    return {"anchor": anchor, "heading": heading, "count": len(links), "links": links}


def station_data(station: StationPage, pens: Pens) -> Data:
    return {
        "title": station.title,
        "kind": station.kind,
        "facts": station.facts,
        "settings": station.settings,
        "operations": station.operations,
        **_safety(station.cautions, station.protection, pens),
    }


def product_data(product: ProductPage, pens: Pens) -> Data:
    """A product's page. Thumbnails are drawn once a variant, under names of their own, so no id repeats."""
    several = len(product.variants) > 1
    return {
        "title": product.title,
        "note": product.note,
        "sheets_pdf": product.sheets_pdf,
        "several": several,
        "variants": [_variant(variant, product, pens, several) for variant in product.variants],
    }


def _variant(variant: VariantView, product: ProductPage, pens: Pens, several: bool) -> Data:
    return {
        "name": variant.name,
        "anchor": variant.anchor,
        "heading": f"Size {variant.name}" if several else "Times",
        "standard": variant.standard,
        "machine": variant.machine,
        "estimate_share": variant.estimate_share,
        "pieces_an_hour": variant.pieces_an_hour,
        "stations": variant.stations,
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
        **_sheet_head(sheet, pens),
        "products": ", ".join(sheet.products),
        "station_path": f"stations/{sheet.station}.html",
        "floor_path": floor_path(sheet),
        "sheet_path": f"sheets/{sheet.stem}.pdf",
        "picture": Markup(pens.figure(sheet.picture)) if sheet.picture else "",
        "steps": [_step(step, pens) for step in sheet.steps],
        "measures": sheet.measures,
        "faults": sheet.faults,
        "incoming": sheet.incoming,
        "outgoing": sheet.outgoing,
        "colophon": _colophon(sheet),
    }


def floor_data(sheet: SheetView, pens: Pens) -> Data:
    """The floor screen: the settings first, when there are any, then one screen a step."""
    steps = [_step(step, pens) for step in sheet.steps]
    stops = _stops(sheet)
    return {
        **_sheet_head(sheet, pens),
        "page_path": operation_path(sheet),
        "screens": [_screen(sheet, stops, index, steps) for index in range(len(stops))],
    }


def _sheet_head(sheet: SheetView, pens: Pens) -> Data:
    return {
        "code": sheet.code,
        "title": sheet.title,
        "station_title": sheet.station_title,
        "tag": sheet.tag,
        "notices": sheet.notices,
        "settings": sheet.settings,
        "sizes": sheet.sizes,
        "size_names": sheet.size_names,
        **_safety(sheet.cautions, sheet.protection, pens),
    }


def _safety(cautions: Sequence[Caution], protection: Sequence[Protection], pens: Pens) -> Data:
    """Cautions and protection with their signs. The sign says nothing the words don't, so it is hidden from speech."""
    return {
        "cautions": [
            {"signal": item.signal, "text": item.text, "drawing": _sign(item.sign or GENERAL_WARNING, pens)}
            for item in cautions
        ],
        "protection": [
            {"text": item.text or item.name, "drawing": _sign(item.sign, pens)} for item in protection
        ],
    }


def _sign(code: str, pens: Pens) -> Markup:
    drawing = pens.sign(code, SIGN_MM) if code else ""
    return Markup('<span class="sign" aria-hidden="true">{}</span>').format(Markup(drawing))


def _step(step: StepView, pens: Pens) -> Data:
    return {
        "name": step.name,
        "number": step.number,
        "do": Markup(pens.markdown(step.do)),
        "key": Markup(pens.markdown(step.key)) if step.key else "",
        "why": Markup(pens.markdown(step.why)) if step.why else "",
        "cautions": step.cautions,
        "checks": [_check(check) for check in step.checks],
        "drawing": Markup(pens.figure(step.figure)) if step.figure else "",
        "photo": _photo(step.photo) if step.photo else None,
    }


def _check(check: Measure) -> Mapping[str, str]:
    how = ", ".join(part for part in (check.gauge, check.plan) if part)
    return {"what": check.what, "value": check.value, "other": check.other, "how": how}


def _photo(photo: Photo) -> Mapping[str, str]:
    return {"path": photo_path(photo), "alt": photo.alt, "caption": photo.caption}


def _colophon(sheet: SheetView) -> list[Mapping[str, str]]:
    """The small print under the instruction, empty facts left out."""
    facts = (
        ("fingerprint", sheet.tag),
        ("revision", sheet.revision),
        ("date", sheet.date),
        ("recorded by", ", ".join(sheet.recorded_by)),
        ("pieces an hour", sheet.pieces_an_hour),
        ("bundle", sheet.bundle),
    )
    return [{"label": label, "text": text} for label, text in facts if text]


@dataclass(frozen=True, slots=True)
class _Stop:
    """A place of the floor screen: its anchor, what its dot shows, what it is called. `step` is None for the set-up."""

    anchor: str
    dot: str
    label: str
    step: StepView | None


def _stops(sheet: SheetView) -> list[_Stop]:
    steps = [
        _Stop(f"step-{step.name}", str(step.number), f"Step {step.number}: {plain(step.do)}", step)
        for step in sheet.steps
    ]
    has_set_up = bool(sheet.settings or sheet.sizes or sheet.notices) or not steps
    return [_Stop("set-up", "set up", "Set up", None), *steps] if has_set_up else steps


def _screen(sheet: SheetView, stops: Sequence[_Stop], index: int, steps: Sequence[Data]) -> Data:
    stop = stops[index]
    last = index == len(stops) - 1
    first_step = next((other for other in stops if other.step), stop)
    following = first_step if last else stops[index + 1]
    data = steps[stop.step.number - 1] if stop.step else None
    return {
        "anchor": stop.anchor,
        "step": data,
        "shows": bool(data and (data["drawing"] or data["photo"])),
        "fit": fit_of(sheet, stop.step),
        "place": f"step {stop.step.number} of {len(steps)}" if stop.step else "set up",
        "onward": _onward(following, last),
        "back": stops[index - 1].anchor if index else "",
        "next": following.anchor,
        "next_more": " piece" if last else "",
        "many": len(stops) > MOST_DOTS_IN_LINE,
        "dots": [_dot(other, position, index) for position, other in enumerate(stops)],
    }


def _onward(following: _Stop, last: bool) -> str:
    if last:
        return "then the next piece"
    return f"next: {short(following.step.do) if following.step else following.label}"


def _dot(stop: _Stop, position: int, here: int) -> Mapping[str, str]:
    state = "done" if position < here else "now" if position == here else "ahead"
    return {
        "anchor": stop.anchor,
        "text": stop.dot,
        "label": stop.label,
        "state": state if stop.step else f"{state} word",
    }


def short(text: str, most: int = 20) -> str:
    """The first clause of an action line, cut between words with an ellipsis when it is longer than `most` letters."""
    words = plain(text)
    for mark in (". ", ", ", "; ", ": "):
        words = words.split(mark)[0]
    words = words.rstrip(".")
    if len(words) <= most:
        return words
    head = words[: most + 1]
    kept = head.rsplit(" ", 1)[0] if " " in head else words[:most]
    return f"{kept} …"
