"""Templates as PDF, at true size: view objects through the theme's `template.typ`.

Not here: what a template says and on which sheets (view), its line work (drawing), where head and foot stand (theme).
"""

from __future__ import annotations

from collections.abc import Sequence
from datetime import UTC, datetime
from typing import TYPE_CHECKING

from builder.rendering.sheet import SheetPress, day_of
from builder.rendering.sheet_data import Json, Pens
from builder.rendering.sheet_text import LEAST_CAPITAL_MM, points

if TYPE_CHECKING:
    from builder.view import TemplateSheet, TemplateView

ENTRY = "template.typ"
"""The theme's file that sets a template."""

_MAP_MM = (40.0, 36.0)
_SIGN_MM = 8.0
_UNDATED = datetime(2000, 1, 1, tzinfo=UTC)

WORDS = {
    "measure": "Measure before use: 100.0 mm / 4.00 in.",
    "fit": "Print at 100 %, no fitting. If it is off by more than {limit}, do not use. {reach}",
    "signal": "WARNING",
    "blade": "Blade: cut away from the hand, cut-resistant glove on the holding hand; follow the knife's instructions. "
    "Cut along the middle of the heavy line.",
    "joining": "Join: cut where it says cut off, lay the edge on the same letter, crosses meeting, and tape. Then "
    "measure cross to cross: {spans}.",
    "place": "column {column} of {columns}, row {row} of {rows}",
    "number": "sheet {n} of {m}",
    "colophon": "{tag} · {date} · {plant}",
}
STATES = {
    "not in use": "NOT YET MEASURED. Throw the copy before it away: it was off.",
    "not yet measured": "NOT YET MEASURED",
}
"""What a fresh print says of itself, by how the copy before it stands."""


def render_template(view: TemplateView, press: SheetPress) -> bytes:
    """A template as a tagged PDF, one page a sheet of paper. Raises SheetFault when the typesetter refuses."""
    return press.press(template_data(view, press.pens), day_of(view.date))


def template_data(view: TemplateView, pens: Pens) -> Json:
    """Everything the theme's file prints of a template."""
    text = pens.text
    spans = " and ".join(view.joined)
    state = STATES.get(view.state, "")
    colophon = _filled("colophon", tag=view.tag, date=view.date, plant=view.plant)
    return {
        "title": f"{view.number} {view.title}",
        "author": view.plant,
        "keywords": [view.number, view.tag],
        "language": view.language,
        "points": points(LEAST_CAPITAL_MM * 1.01),
        "frame": {name: getattr(view.frame, name) for name in ("width", "height", "margin", "head", "foot", "gap")},
        "heading": text(f"{view.number}  {view.title}"),
        "about": text(" · ".join(view.about)),
        "measure": text(_filled("measure")),
        "fit": text(_filled("fit", limit=view.limit, reach=view.reach).strip()),
        "warning": {"signal": text(_filled("signal")), "text": text(_filled("blade"))},
        "sign": {"svg": pens.sign("W022", _SIGN_MM), "width": _SIGN_MM, "alt": "Sharp element"},
        "joining": text(_filled("joining", spans=spans)) if view.joined else None,
        "state": text(state) if state else None,
        "colophon": text(f"{view.record} {colophon}".strip()),
        "sheets": _sheets(view, view.sheets, pens),
    }


def _sheets(view: TemplateView, sheets: Sequence[TemplateSheet], pens: Pens) -> list[Json]:
    from builder.drawing import template_map_svg, template_sheet_svg

    wide, tall = view.frame.window
    found = []
    for sheet in sheets:
        number = _filled("number", n=sheet.number, m=len(view.sheets))
        svg = template_map_svg(view, sheet, *_MAP_MM)
        place = _filled("place", column=sheet.column, columns=view.columns, row=sheet.row, rows=view.rows)
        alt = f"{view.number} {view.title} at true size, {number}"
        found.append(
            {
                "first": sheet.number == 1,
                "number": pens.text(number),
                "place": pens.text(place if len(sheets) > 1 else ""),
                "window": {"svg": template_sheet_svg(view, sheet), "width": wide, "height": tall, "alt": alt},
                "map": {"svg": svg, "width": _width_of(svg), "alt": f"Map of the sheets, {number} marked"},
            }
        )
    return found


def _width_of(svg: str) -> float:
    return float(svg.partition(' width="')[2].partition('mm"')[0])


def _filled(word: str, **values: object) -> str:
    return WORDS[word].format(**values)
