"""Hands and gloves, drawn about (50, 50) in a box of 100, fingers up unless said otherwise.

Fingers are strokes with round ends, so that they keep one weight and one gap whatever the size.
"""

from __future__ import annotations

from collections.abc import Iterator

from builder.drawing.signs.pen import Pen
from builder.drawing.signs.shapes import block, polyline, rounded

# Knuckle x and y, tip x and y: index, middle, ring, little finger of a right hand seen from its back.
_FINGERS = ((34.5, 50, 29, 17), (46.5, 50, 45.5, 8), (58.5, 50, 62, 12), (69.5, 54, 77, 27))
_FINGER = 9.6


def open_hand(pen: Pen, spread: float = 1.0, wrist: float = 100.0, gap: float = 0.0) -> Iterator[str]:
    """A flat hand, fingers up, thumb at the left.

    spread : 1 is the hand held up, 0 the hand with its fingers side by side
    wrist  : how far down the arm goes, 100 is the foot of the box
    gap    : rim of ground colour all round, to set the hand off from what lies behind
    """
    solids = (
        rounded([(29.7, 46), (74.3, 50), (74, 76), (64, 92), (40, 92), (29.7, 78)], 6),
        block(40, 80, 64, wrist, 2),
    )
    lines = [(polyline((x1, y1), (x1 + spread * (x2 - x1), y2)), _FINGER) for x1, y1, x2, y2 in _FINGERS]
    lines.append((f"M37 78C31 72 26 64 {17 + 4 * (1 - spread)} 56", 10.5))
    if gap > 0:
        yield from (pen.cut_line(d, 2 * gap) for d in solids)
        yield from (pen.cut_line(d, width + 2 * gap) for d, width in lines)
    yield from (pen.solid(d) for d in solids)
    yield from (pen.line(d, width) for d, width in lines)


def glove(pen: Pen) -> Iterator[str]:
    """A work glove: thick fingers, a cuff wider than the wrist with a band across."""
    yield pen.solid(rounded([(28, 46), (76, 50), (75, 72), (68, 84), (36, 84), (28, 74)], 6))
    for x1, y1, x2, y2 in _FINGERS:
        yield pen.line(polyline((x1, y1 - 1), (x1 + 0.75 * (x2 - x1), y2 + 4)), 10.6)
    yield pen.line("M37 74C31 70 24 62 18 53", 12.5)
    yield pen.solid(rounded([(35, 78), (69, 78), (82, 105), (22, 105)], 3))
    yield pen.cut_line(polyline((29, 84.5), (75, 84.5)), 3.6, "butt")


def pointing_hand(pen: Pen, tip: float) -> Iterator[str]:
    """A fist from the thumb's side, the index finger stretched left to x = `tip`; the arm leaves right."""
    yield pen.solid(rounded([(40, 31), (78, 31), (84, 40), (84, 64), (72, 74), (44, 74), (38, 60)], 8))
    yield pen.line(polyline((47, 37.5), (tip + 6.5, 37.5)), 13)
    yield pen.solid(block(76, 38, 90, 66, 2))
    for y in (50.0, 61.0):
        yield pen.cut_line(polyline((39, y), (55, y)), 2.8)
    yield pen.cut_line("M40 44.6L54 44.6C60 44.6 64 48 66 53", 2.8)
