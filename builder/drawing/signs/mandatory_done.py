"""Pictograms of the mandatory signs about what to do: M001, M002, M011, M021 to M028, white on blue."""

from __future__ import annotations

from collections.abc import Iterator

from builder.drawing.signs.hands import open_hand
from builder.drawing.signs.pen import Art, Pen
from builder.drawing.signs.shapes import arrow, block, gear, polygon, polyline, rounded


def general(pen: Pen) -> Iterator[str]:
    """M001: an exclamation mark."""
    yield pen.solid(rounded([(40.5, 14), (59.5, 14), (55, 64), (45, 64)], 4))
    yield pen.disc(50, 78.5, 8.2)


def manual(pen: Pen) -> Iterator[str]:
    """M002: a person behind an open book."""
    yield pen.disc(50, 25, 11.5)
    yield pen.solid("M50 39C64 39 73 44 75 58L75 80L25 80L25 58C27 44 36 39 50 39Z")
    for mirrored in (False, True):
        page = pen.at(50, 50, mirrored=mirrored)
        yield page.outlined(polygon((15, 50), (48.8, 57), (48.8, 87), (15, 80)), 2.6)
        for y in (0, 8, 16):
            yield page.cut_line(polyline((21, 58 + y), (43.5, 62.7 + y)), 2.4, "butt")


def wash_hands(pen: Pen) -> Iterator[str]:
    """M011: two hands under a running tap."""
    yield pen.solid("M22 23L50 23C58 23 62 28 62 36L62 39L53 39L53 36C53 33 52 32 49 32L22 32Z")
    yield pen.solid(block(34, 14.5, 48, 18.5, 1))
    yield pen.solid(block(39, 17, 43, 25))
    for x in (53.6, 61.4):
        yield pen.line(polyline((x, 43), (x, 55)), 3.2, "butt")
    yield from open_hand(pen.at(37, 69, 0.44, 80), spread=0.1, wrist=104)
    yield from open_hand(pen.at(62.5, 68.5, 0.44, -80, mirrored=True), spread=0.1, wrist=104, gap=3.5)


def disconnect(pen: Pen) -> Iterator[str]:
    """M021: an open switch, and an arrow in the direction of opening."""
    yield pen.line(polyline((31, 15), (31, 33)), 7.5, "butt")
    yield pen.line(polyline((31, 67), (31, 85)), 7.5, "butt")
    yield pen.disc(31, 66, 7.5)
    yield pen.line(polyline((31, 66), (51, 33)), 7.5, "butt")
    yield pen.solid(arrow((53, 54), (83, 54), 7.5, 21, 13))


def check_guard(pen: Pen) -> Iterator[str]:
    """M027: a gear wheel under a guard, and a tick."""
    yield pen.line("M22 72L22 46C22 8 78 8 78 46L78 72", 6.5, "butt")
    yield pen.solid(block(13, 71, 87, 77.5, 1))
    yield pen.solid(gear(50, 46, 19, 8, 6.4))
    tick = polyline((56, 66), (66, 78), (84, 50))
    yield pen.cut_line(tick, 14) + pen.line(tick, 8)


def keep_locked(pen: Pen) -> Iterator[str]:
    """M028: a closed padlock."""
    yield pen.line("M35 50L35 32C35 12 65 12 65 32L65 50", 8.5, "butt")
    yield pen.solid(block(24, 46, 76, 84, 4))
    yield pen.cut_disc(50, 60, 5.6)
    yield pen.cut(polygon((47.6, 61), (52.4, 61), (54.4, 75), (45.6, 75)))


ART: dict[str, Art] = {
    "M001": general,
    "M002": manual,
    "M011": wash_hands,
    "M021": disconnect,
    "M027": check_guard,
    "M028": keep_locked,
}
