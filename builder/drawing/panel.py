"""A panel drawn: a row for each setting, its value in bold, under it a scale with the range, what may be and what is.

The scale is a track from end to end of what the machine can do, a band of what the value may be, a pointer on the
value. Told apart without colour: the band is filled and the pointer a triangle.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field

from builder.drawing import look
from builder.drawing.box import Box
from builder.drawing.drawn import Drawing
from builder.drawing.font import Lettering
from builder.drawing.lettered import TextBlock, TextBox
from builder.drawing.svg import document, element, filled, lines_d, polyline_d, stroke
from builder.model import Family
from builder.view import PanelRow, PanelView, Span

_PAD = 2.4
_BETWEEN = 1.5
_TRACK, _POINTER = 1.6, 1.5
_LEAST_BAND = 0.9


@dataclass(slots=True)
class _Panel:
    """A panel being drawn, from the top down."""

    view: PanelView
    lettering: Lettering
    y: float = _PAD
    art: list[str] = field(default_factory=list)
    texts: list[TextBox] = field(default_factory=list)
    problems: list[str] = field(default_factory=list)

    @property
    def line(self) -> float:
        """Height of a line of text, mm."""
        return self.lettering.above + self.lettering.below

    def put(self, text: str, x: float, anchor: str, bold: bool = False, colour: str = look.INK) -> float:
        """Set a text with its top at `y`; where its ink ends on the inner side."""
        width = self.lettering.width(text, bold)
        left = {"start": x, "middle": x - width / 2, "end": x - width}[anchor]
        box = Box(left, self.y, left + width, self.y + self.line)
        if left < -0.01 or box.x1 > self.view.width_mm + 0.01:
            self.problems.append(f"No room for {text}.")
        self.art.append(TextBlock((text,), box, colour, bold, "start").svg(self.lettering))
        self.texts.append(TextBox(text, box))
        return left if anchor == "end" else left + width


def draw_panel(view: PanelView, family: Family) -> Drawing:
    """The panel as an SVG. Its height comes from its rows."""
    panel = _Panel(view, Lettering(family, view.text_mm))
    for number, row in enumerate(view.rows):
        if number:
            _hair(panel)
        _row(panel, row)
    height = panel.y + _PAD - _BETWEEN
    frame = element(
        "rect",
        x=0.4,
        y=0.4,
        width=view.width_mm - 0.8,
        height=height - 0.8,
        rx=2.4,
        fill=look.GROUND,
        stroke=look.INK,
        stroke_width=look.THIN,
    )
    svg = document(view.title, view.alt, view.width_mm, height, frame + "".join(panel.art))
    return Drawing(svg, view.width_mm, height, 1.0, tuple(panel.texts), tuple(panel.problems))


def _hair(panel: _Panel) -> None:
    y = panel.y - _BETWEEN / 2
    panel.art.append(stroke(lines_d([((3.0, y), (panel.view.width_mm - 3.0, y))]), look.MANILA, look.HAIR))
    panel.y += _BETWEEN / 2


def _row(panel: _Panel, row: PanelRow) -> None:
    right = panel.view.width_mm - 3.0
    named = panel.lettering.width(row.name) + 3.0
    both = f"{row.value} ({row.other})" if row.other else row.value
    lines = [both]
    if named + 3.0 + panel.lettering.width(both, bold=True) > right:
        lines = [row.value, f"({row.other})"] if row.other else _broken(panel, row.value, right - named - 3.0)
    panel.put(row.name, 3.0, "start")
    for number, line in enumerate(lines):
        if number:
            panel.y += panel.line * 0.95
        panel.put(line, right, "end", bold=number == 0 or not row.other)
    panel.y += panel.line + 0.4
    if row.span is not None:
        _scale(panel, row.span)
    panel.y += _BETWEEN


def _broken(panel: _Panel, text: str, width: float) -> list[str]:
    """The words in as many lines as they need."""
    lines: list[str] = []
    for word in text.split():
        longer = f"{lines[-1]} {word}" if lines else word
        if lines and panel.lettering.width(longer, bold=True) <= width:
            lines[-1] = longer
        else:
            lines.append(word)
    return lines


def _scale(panel: _Panel, span: Span) -> None:
    """The track between the words of its ends, with band and pointer."""
    left = panel.put(span.low_words, 3.0, "start", colour=look.EARLIER) + 2.4
    right = panel.put(span.high_words, panel.view.width_mm - 3.0, "end", colour=look.EARLIER) - 2.4
    middle = panel.y + panel.line / 2

    def at(value: float) -> float:
        share = (value - span.low) / (span.high - span.low)
        return left + (right - left) * min(max(share, 0.0), 1.0)

    panel.art += _track(left, right, middle)
    low, high = at(span.least), at(span.most)
    if high - low < _LEAST_BAND:
        low, high = (low + high - _LEAST_BAND) / 2, (low + high + _LEAST_BAND) / 2
    band = ((low, middle - _TRACK / 2), (high, middle - _TRACK / 2), (high, middle + _TRACK / 2))
    panel.art.append(filled(polyline_d((*band, (low, middle + _TRACK / 2)), closed=True), look.ACCENT))
    tip = at(span.value)
    top = middle - _TRACK / 2 - 0.1
    corners = ((tip, top), (tip - _POINTER * 0.62, top - _POINTER), (tip + _POINTER * 0.62, top - _POINTER))
    panel.art.append(filled(polyline_d(corners, closed=True), look.INK))
    panel.y += panel.line


def _track(left: float, right: float, middle: float) -> Iterator[str]:
    yield element(
        "rect",
        x=left,
        y=middle - _TRACK / 2,
        width=right - left,
        height=_TRACK,
        rx=_TRACK / 2,
        fill=look.MANILA_PALE,
        stroke=look.INK,
        stroke_width=look.HAIR,
    )
