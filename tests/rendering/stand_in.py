"""Stand-ins for the drawing room, so that sheets are tested alone: simple figures of a panel and plain signs.

Only the size, the label height and the kind of content matter here; the real figures are tested in tests/drawing.
"""

from __future__ import annotations

from dataclasses import dataclass

from builder.rendering.sheet_data import Pens
from builder.view import FigureView

_INK, _ACCENT, _STRIP = "#23211d", "#a92f18", "#e4d9c2"


@dataclass(frozen=True)
class Drawn:
    """What a sheet needs of a drawing."""

    svg: str
    width_mm: float
    height_mm: float


def draw(figure: FigureView) -> Drawn:
    """A panel as wide as asked, with the work of the figure's name on it."""
    width, height = figure.width_mm, figure.height_mm
    pen = _Pen(width, height, figure.text_mm)
    if width < 50:
        pen.icon()
    else:
        pen.panel(figure.side)
        getattr(pen, figure.name.rsplit(".", 1)[-1].replace("-", "_"), pen.plain)()
    body = "".join(pen.parts)
    svg = (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{width}mm" height="{height}mm" '
        f'viewBox="0 0 {width} {height}" font-family="Atkinson Hyperlegible">{body}</svg>'
    )
    return Drawn(svg, width, height)


def sign(code: str, size: float) -> str:
    """A triangle for a warning, a disc for what must be done."""
    shape = (
        '<path d="M50 6 96 88H4Z" fill="#ffd100" stroke="#000" stroke-width="7" stroke-linejoin="round"/>'
        '<path d="M50 34V62M50 72v5" stroke="#000" stroke-width="9" stroke-linecap="round"/>'
        if code.startswith("W")
        else '<circle cx="50" cy="50" r="47" fill="#005387"/><rect x="22" y="40" width="56" height="20" fill="#fff"/>'
    )
    return f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 100 100" width="{size}" height="{size}">{shape}</svg>'


PENS = Pens(draw, sign)


class _Pen:
    """Gathers SVG elements; x right, y down, mm."""

    def __init__(self, width: float, height: float, capital: float) -> None:
        self.width, self.height, self.em = width, height, capital / 0.668
        self.parts: list[str] = []

    def add(self, text: str) -> None:
        self.parts.append(text)

    def path(self, d: str, stroke: str = _INK, width: float = 0.4, fill: str = "none", dash: str = "") -> None:
        self.add(
            f'<path d="{d}" fill="{fill}" stroke="{stroke}" stroke-width="{width}" '
            f'stroke-linejoin="round" stroke-dasharray="{dash or "none"}"/>'
        )

    def label(self, x: float, y: float, text: str, bold: bool = False, fill: str = _INK) -> None:
        weight = "bold" if bold else "normal"
        self.add(f'<text x="{x}" y="{y}" font-size="{self.em}" font-weight="{weight}" fill="{fill}">{text}</text>')

    def icon(self) -> None:
        w, h = self.width, self.height
        self.path(f"M{w * 0.25} {h * 0.4}C{w * 0.3} {h * 0.02} {w * 0.7} {h * 0.02} {w * 0.75} {h * 0.4}", width=0.5)
        self.add(
            f'<rect x=".4" y="{h * 0.4}" width="{w - 0.8}" height="{h * 0.56}" rx="{h * 0.26}" fill="#fff" '
            f'stroke="{_INK}" stroke-width=".6"/>'
        )
        for x in (w * 0.25, w * 0.75):
            self.path(f"M{x} {h * 0.41}V{h * 0.95}", dash="1.2 .8")

    def panel(self, side: str) -> None:
        w, h = self.width, self.height - 9
        self.path(
            f"M.5 .6H{w * 0.25}l2.5 3 2.5-3H{w - 7}V{h - 3}a3 3 0 0 1-3 3H3.5a3 3 0 0 1-3-3Z",
            width=0.9,
            fill="#fff",
        )
        self.label(3.5, h - 3, side)

    def webbing(self, stroke: str = _INK) -> None:
        w = self.width
        self.path(f"M{w * 0.33} 14H{w}V28H{w * 0.33}Z", stroke=stroke, fill=_STRIP, width=0.6)

    def plain(self) -> None:
        for y in (14.0, 26.0):
            x = self.width * 0.33
            self.add(f'<circle cx="{x}" cy="{y}" r="1.6" fill="none" stroke="{_INK}" stroke-width=".35"/>')
            self.path(f"M{x - 2.4} {y}h4.8M{x} {y - 2.4}v4.8", width=0.3)

    def lay(self) -> None:
        self.plain()
        x = self.width * 0.25 + 2.5
        self.add(f'<circle cx="{x}" cy="5.6" r="4.8" fill="none" stroke="{_ACCENT}" stroke-width=".7"/>')
        self.label(self.width * 0.33 + 5, 21.5, "drill holes")

    def fold(self) -> None:
        self.webbing()
        self.path(f"M{self.width * 0.33 + 12} 21H{self.width * 0.33 + 4}", stroke=_ACCENT, width=0.8)
        self.label(self.width * 0.33 + 14, 22.3, "edge on the holes")
        self.label(self.width * 0.33 + 4, 35, "fold under 20 mm")

    def box(self) -> None:
        self.webbing()
        x = self.width * 0.33 + 2.5
        self.path(f"M{x} 16h20v10h-20zl20 10m0-10-20 10", stroke=_ACCENT, width=1, dash="2 .9")
        self.add(f'<circle cx="{x}" cy="16" r="1.9" fill="{_ACCENT}"/>')
        self.label(x - 8, 11.5, "start", bold=True, fill=_ACCENT)
        y = self.height - 2
        self.path(f"M{x} 26V{y}m20 0V26M{x} {y - 1.5}h20", width=0.25)
        self.label(x + 23, y - 0.3, "32 ±1 mm (1 1/4 in)")
