"""The shapes and colours the pictograms stand on, one a kind of sign.

Shapes: ISO 3864-1; the proportions are ours, but for ring and bar. Colours: RAL 1003, 3001, 5005 and 6032,
which ISO 3864-4 names, in sRGB (encyclopedia article ISO 3864, read). Black and white are pure, because a
signal black of #2b2b2c is printed as a screen of dots and frays.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Literal

from builder.drawing.signs.pen import Pen, Point
from builder.drawing.signs.shapes import block, circle, polygon, polyline, rounded

Kind = Literal["warning", "mandatory", "prohibition", "safe condition", "fire"]

YELLOW, BLUE, RED, GREEN = "#f9a800", "#005387", "#9b2423", "#237f52"
BLACK, WHITE = "#000000", "#ffffff"

# Half a unit is left free all round, so that an edge is not cut by the rounding of the renderer.
EDGE = 0.5
# Radius of the triangle's corners and width of its black band. A wider band leaves less than half of a full
# sign yellow.
CORNER = 5.0
BAND = 5.0
# Of the diameter: ring a tenth, bar 0.08 (ISO 3864-1, memory).
RING, BAR = 9.9, 7.9
# White on both sides of the bar.
RIM = 1.4


@dataclass(frozen=True, slots=True)
class Ground:
    """What a kind of sign stands on: safety colour, the pictogram's colour and the colour right behind it."""

    safety: str
    mark: str
    behind: str

    def pen(self) -> Pen:
        """The pen its pictograms are drawn with."""
        return Pen(self.mark, self.behind)


GROUNDS: dict[Kind, Ground] = {
    "warning": Ground(YELLOW, BLACK, YELLOW),
    "mandatory": Ground(BLUE, WHITE, BLUE),
    "prohibition": Ground(RED, BLACK, WHITE),
    "safe condition": Ground(GREEN, WHITE, GREEN),
    "fire": Ground(RED, WHITE, RED),
}


def triangle(inset: float) -> tuple[Point, Point, Point]:
    """Corners of the warning triangle, `inset` inside the line on which its outer corners are centred."""
    half = 50.0 - EDGE - CORNER
    inradius = half / math.sqrt(3.0)
    # Standing in the middle of the box: as much free above the rounded top as below the base.
    base = 50.0 + half * math.sqrt(3.0) / 2
    centre, r = base - inradius, inradius - inset
    side = r * math.sqrt(3.0)
    return (50.0, centre - 2 * r), (50.0 + side, centre + r), (50.0 - side, centre + r)


def shape_below(kind: Kind) -> str:
    """The ground, drawn before the pictogram."""
    ground = GROUNDS[kind]
    if kind == "warning":
        outer = rounded(triangle(-CORNER), CORNER)
        inner = rounded(triangle(BAND - CORNER), 2.0)
        return Pen(BLACK, YELLOW).solid(outer) + Pen(YELLOW, BLACK).solid(inner)
    pen = Pen(ground.safety, ground.mark)
    if kind == "mandatory":
        return pen.disc(50, 50, 50 - EDGE)
    if kind == "prohibition":
        return Pen(WHITE, BLACK).disc(50, 50, 50 - EDGE - RING / 2)
    return pen.solid(block(EDGE, EDGE, 100 - EDGE, 100 - EDGE, 3.0))


def shape_above(kind: Kind) -> str:
    """What lies over the pictogram: ring and bar of a prohibition, else nothing."""
    if kind != "prohibition":
        return ""
    pen = Pen(RED, WHITE)
    outer, reach = 50 - EDGE, (50 - EDGE - RING / 2) / math.sqrt(2.0)
    way = polyline((50 - reach, 50 - reach), (50 + reach, 50 + reach))
    # Without the rim, red over black is one dark blot on a black and white print.
    bar = pen.cut_line(way, BAR + 2 * RIM, "butt") + pen.line(way, BAR, "butt")
    return bar + pen.solid(circle(50, 50, outer) + circle(50, 50, outer - RING))


def free_area(kind: Kind, margin: float = 0.0) -> str:
    """Path data of the area a pictogram may use, `margin` inside border or ring."""
    if kind == "warning":
        return polygon(*triangle(BAND - CORNER + margin))
    if kind in ("mandatory", "prohibition"):
        border = RING if kind == "prohibition" else 0.0
        return circle(50, 50, 50 - EDGE - border - margin)
    return block(EDGE + margin, EDGE + margin, 100 - EDGE - margin, 100 - EDGE - margin)
