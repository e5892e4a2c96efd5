"""A text on paper with the space it takes, and the drawing of a label: text, its lines, arrowheads, disc."""

from __future__ import annotations

from dataclasses import dataclass, field

from builder.drawing import look
from builder.drawing.box import Box
from builder.drawing.font import Lettering
from builder.drawing.svg import XY, circle, element, filled, lines_d, num, polyline_d, stroke, words
from builder.drawing.symbol import arrowhead

HEAD_LENGTH, HEAD_HALF = 2.1, 0.45


@dataclass(frozen=True, slots=True)
class TextBox:
    """A text as printed: what it says and the box it fills, mm from the upper left of the figure."""

    text: str
    box: Box


@dataclass(frozen=True, slots=True)
class TextBlock:
    """One or two lines of text in a box.

    anchor : start, middle or end: where lines of different length are lined up
    turned : reads upward, for dimensions of the height
    """

    lines: tuple[str, ...]
    box: Box
    colour: str = look.INK
    bold: bool = False
    anchor: str = "middle"
    turned: bool = False

    def svg(self, lettering: Lettering) -> str:
        """Its text elements."""
        x0, y0, x1, y1 = self.box.x0, self.box.y0, self.box.x1, self.box.y1
        shares = {"start": 0.0, "middle": 0.5, "end": 1.0}
        art = []
        for number, line in enumerate(self.lines):
            down = lettering.above + number * lettering.pitch
            along = shares[self.anchor]
            if self.turned:
                x, y = x0 + down, y1 + (y0 - y1) * along
            else:
                x, y = x0 + (x1 - x0) * along, y0 + down
            art.append(self._line(line, x, y, lettering))
        return "".join(art)

    def _line(self, line: str, x: float, y: float, lettering: Lettering) -> str:
        return element(
            "text",
            words(line),
            x=x,
            y=y,
            font_family=lettering.family.name,
            font_size=lettering.em(self.bold),
            font_weight="700" if self.bold else None,
            text_anchor=None if self.anchor == "start" else self.anchor,
            fill=self.colour,
            transform=f"rotate(-90 {num(x)} {num(y)})" if self.turned else None,
        )


def block_size(lines: tuple[str, ...], bold: bool, lettering: Lettering) -> XY:
    """Width and height of a text block, mm."""
    width = max(lettering.width(line, bold) for line in lines)
    return width, lettering.above + lettering.below + (len(lines) - 1) * lettering.pitch


def broken_at_bracket(text: str) -> tuple[str, ...]:
    """A dimension in two lines: the first unit, and the other in brackets. One line when there are no brackets."""
    first, bracket, rest = text.partition(" (")
    return (first, f"({rest}") if bracket else (text,)


def broken_in_two(text: str, lettering: Lettering, bold: bool = False) -> tuple[str, ...]:
    """A label in two lines of nearly the same length, broken at a blank; one line when it has none."""
    parts = text.split(" ")
    if len(parts) < 2:
        return (text,)
    ways = [(" ".join(parts[:cut]), " ".join(parts[cut:])) for cut in range(1, len(parts))]
    return min(ways, key=lambda way: max(lettering.width(line, bold) for line in way))


@dataclass(frozen=True, slots=True)
class LabelArt:
    """The drawing of a label.

    pieces : its straight lines; heads: arrowheads as (tip, direction); dot: end of a leader
    disc   : rounded box round the text
    solid  : corners of an area to fill
    """

    texts: tuple[TextBlock, ...] = ()
    pieces: tuple[tuple[XY, XY], ...] = ()
    heads: tuple[tuple[XY, XY], ...] = ()
    dot: XY | None = None
    disc: Box | None = None
    solid: tuple[XY, ...] = ()
    colour: str = look.INK
    width: float = look.HAIR
    boxes: tuple[TextBox, ...] = field(init=False)

    def __post_init__(self) -> None:
        boxes = tuple(TextBox(" ".join(text.lines), text.box) for text in self.texts)
        object.__setattr__(self, "boxes", boxes)

    def svg(self, lettering: Lettering, plate: bool) -> str:
        """Markup. plate : lay white under the text, because it could not be kept off the lines."""
        art = []
        if self.pieces:
            art.append(stroke(lines_d(self.pieces), self.colour, self.width))
        if self.solid:
            art.append(filled(polyline_d(self.solid, closed=True), self.colour))
        for tip, way in self.heads:
            art.append(filled(polyline_d(arrowhead(tip, way, HEAD_LENGTH, HEAD_HALF), closed=True), self.colour))
        if self.dot is not None:
            art.append(circle(self.dot, 0.45, fill=self.colour))
        if self.disc is not None:
            art.append(_rounded(self.disc, look.GROUND, self.colour, look.THIN))
        elif plate:
            art += [_rounded(text.box.grown(0.3), look.GROUND, None, None) for text in self.texts]
        return "".join(art) + "".join(text.svg(lettering) for text in self.texts)


def _rounded(box: Box, fill: str, colour: str | None, width: float | None) -> str:
    return element(
        "rect",
        x=box.x0,
        y=box.y0,
        width=box.width,
        height=box.height,
        rx=min(box.height / 2, 2.6) if colour else 0.6,
        fill=fill,
        stroke=colour,
        stroke_width=width,
    )
