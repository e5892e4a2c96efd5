"""Pictograms of the prohibition signs: P002 to P028, black on white, under ring and bar."""

from __future__ import annotations

from collections.abc import Iterator

from builder.drawing.signs.hands import glove, open_hand
from builder.drawing.signs.pen import Art, Pen
from builder.drawing.signs.shapes import FLAME, FLAME_HEART, block, polyline


def smoking(pen: Pen) -> Iterator[str]:
    """P002: a burning cigarette."""
    yield pen.solid(block(18, 55, 63, 62.5))
    yield pen.solid(block(65.5, 55, 69.5, 62.5))
    yield pen.solid(block(72, 55, 76, 62.5))
    yield pen.line("M67.5 50C67.5 42 57 45 57 36C57 30 61 28 61 23", 3.4, "butt")
    yield pen.line("M74.5 50C74.5 38 65 40 65 33C65 29 68 28 68 25", 3.4, "butt")


def open_flame(pen: Pen) -> Iterator[str]:
    """P003: a burning match."""
    yield pen.line(polyline((32, 77), (56, 51)), 5.2, "butt")
    flame = pen.at(61, 37, 0.36)
    yield flame.solid(FLAME)
    yield flame.cut(FLAME_HEART)


def touching(pen: Pen) -> Iterator[str]:
    """P010: a hand held up flat."""
    yield from open_hand(pen.at(50.5, 49, 0.6), wrist=104)


def reaching_in(pen: Pen) -> Iterator[str]:
    """P015: a hand reaching down into a box."""
    yield from open_hand(pen.at(50, 43, 0.52, 180), spread=0.3, wrist=102)
    yield pen.line(polyline((25, 52), (25, 73), (75, 73), (75, 52)), 5, "butt")


def wearing_gloves(pen: Pen) -> Iterator[str]:
    """P028: a glove, thumb to the right, so that it is not taken for P010 from afar."""
    yield from glove(pen.at(49, 48, 0.6, mirrored=True))


ART: dict[str, Art] = {
    "P002": smoking,
    "P003": open_flame,
    "P010": touching,
    "P015": reaching_in,
    "P028": wearing_gloves,
}
