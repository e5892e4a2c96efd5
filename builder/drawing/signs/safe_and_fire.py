"""Pictograms of the safe condition signs (white on green) and the fire equipment signs (white on red)."""

from __future__ import annotations

from collections.abc import Iterator

from builder.drawing.signs.hands import pointing_hand
from builder.drawing.signs.pen import Art, Pen
from builder.drawing.signs.shapes import DROP, FLAME, FLAME_HEART, arrow, block, polyline


def first_aid(pen: Pen) -> Iterator[str]:
    """E003: a cross with equal arms."""
    yield pen.solid("M39 17L61 17L61 39L83 39L83 61L61 61L61 83L39 83L39 61L17 61L17 39L39 39Z")


def eyewash(pen: Pen) -> Iterator[str]:
    """E011: an eye over drops of water and a bowl."""
    yield pen.solid("M13 32C23 16.5 36 10 50 10C64 10 77 16.5 87 32C77 47.5 64 54 50 54C36 54 23 47.5 13 32Z")
    yield pen.cut(
        "M21.5 32C29.5 21 39 16.5 50 16.5C61 16.5 70.5 21 78.5 32C70.5 43 61 47.5 50 47.5C39 47.5 29.5 43 21.5 32Z"
    )
    yield pen.disc(50, 32, 12)
    yield pen.cut_disc(50, 32, 5)
    for x, y in ((32, 62.5), (50, 66), (68, 62.5)):
        yield pen.at(x, y, 0.2).solid(DROP)
    yield pen.solid("M20 76L80 76C79 82 72 85.5 64 86L57 86L57 91L43 91L43 86L36 86C28 85.5 21 82 20 76Z")


def emergency_stop(pen: Pen) -> Iterator[str]:
    """E020: a hand that presses a mushroom button."""
    yield pen.solid(block(16, 80, 84, 88, 1))
    yield pen.solid(block(40, 66, 60, 82))
    yield pen.solid("M26 69C26 61 35 57.5 50 57.5C65 57.5 74 61 74 69Z")
    yield from pointing_hand(pen.at(57, 31, 0.55, -90), tip=6)
    yield pen.solid(arrow((22, 22), (22, 48), 6, 15, 9))


def extinguisher(pen: Pen) -> Iterator[str]:
    """F001: a fire extinguisher beside a flame."""
    yield pen.solid("M16 44C16 36 22 32 31 32C40 32 46 36 46 44L46 86C46 88 45 89 43 89L19 89C17 89 16 88 16 86Z")
    yield pen.solid(block(27, 21, 35, 34))
    yield pen.line(polyline((18, 13), (46, 18)), 4)
    yield pen.line("M34 25C44 25 52 28 52 38L52 58", 4)
    flame = pen.at(71, 62.5, 0.52)
    yield flame.solid(FLAME)
    yield flame.cut(FLAME_HEART)


def blanket(pen: Pen) -> Iterator[str]:
    """F016: a blanket pulled down out of its box, beside a flame."""
    yield pen.solid(block(11, 11, 61, 29, 2))
    yield pen.solid("M16 32.5L56 32.5L56 82C52 88 48 88 44 83C40 78 36 78 32 83C28 88 22 90 16 84Z")
    for x, top in ((26, 52), (36, 40), (46, 50)):
        yield pen.cut_line(polyline((x, top), (x, 72)), 2.6)
    flame = pen.at(77, 64, 0.42)
    yield flame.solid(FLAME)
    yield flame.cut(FLAME_HEART)


ART: dict[str, Art] = {
    "E003": first_aid,
    "E011": eyewash,
    "E020": emergency_stop,
    "F001": extinguisher,
    "F016": blanket,
}
