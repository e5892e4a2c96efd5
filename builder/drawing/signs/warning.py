"""Pictograms of the warning signs about energy, matter and points: W001 to W022, black on yellow.

Not the triangle they stand in: that is `grounds`.
"""

from __future__ import annotations

from collections.abc import Iterator

from builder.drawing.signs.hands import pointing_hand
from builder.drawing.signs.pen import Art, Pen
from builder.drawing.signs.shapes import (
    FLAME,
    FLAME_HEART,
    block,
    on_circle,
    polygon,
    polyline,
    rounded,
)


def general(pen: Pen) -> Iterator[str]:
    """W001: an exclamation mark."""
    yield pen.solid(rounded([(43.6, 31), (56.4, 31), (53.6, 66), (46.4, 66)], 3))
    yield pen.disc(50, 76, 5.6)


def laser(pen: Pen) -> Iterator[str]:
    """W004: a burst of rays, one of them a long beam to the right."""
    x, y = 42.5, 64.0
    yield pen.disc(x, y, 5)
    for i in range(1, 16):
        reach = 17.0 if i % 2 == 0 else 13.5
        ray = polyline(on_circle(x, y, 7.4, i * 22.5), on_circle(x, y, reach, i * 22.5))
        yield pen.line(ray, 2.4, "butt")
    yield pen.line(polyline((x, y), (75.5, y)), 3.4, "butt")


def electricity(pen: Pen) -> Iterator[str]:
    """W012: a lightning bolt ending in an arrow head."""
    yield pen.solid(
        polygon(
            (50.2, 29.5),
            (55.6, 29.5),
            (49.6, 50.8),
            (60.4, 48.2),
            (51.4, 70.2),
            (55.6, 71.8),
            (45.8, 83.6),
            (43.2, 67.2),
            (47, 68.6),
            (51.6, 56.8),
            (40.6, 59.4),
        )
    )


def toxic(pen: Pen) -> Iterator[str]:
    """W016: a skull over two crossed bones."""
    for mirrored in (False, True):
        bone = pen.at(50, 50, mirrored=mirrored)
        yield bone.line(polyline((32, 67.5), (68, 80)), 3.6)
        for x, y in ((32.2, 64.9), (30.2, 69.5), (67.8, 82.6), (69.8, 78)):
            yield bone.disc(x, y, 2.6)
    skull = pen.at(50, 48.6, 0.92)
    yield skull.outlined(
        "M50 33.5C58 33.5 63 39 63 46.5C63 51 61 54 58 56.5L58 63C58 64.5 57 65.5 55.5 65.5L44.5 65.5"
        "C43 65.5 42 64.5 42 63L42 56.5C39 54 37 51 37 46.5C37 39 42 33.5 50 33.5Z",
        2,
    )
    for x in (44.2, 55.8):
        yield skull.cut_disc(x, 48.5, 3.9)
    yield skull.cut(polygon((50, 52.4), (52.2, 57), (47.8, 57)))
    for x in (46, 50, 54):
        yield skull.cut_line(polyline((x, 60.2), (x, 66)), 1.6, "butt")


def hot_surface(pen: Pen) -> Iterator[str]:
    """W017: three waves of heat over a plate."""
    yield pen.solid(block(27, 75, 73, 81.5, 1))
    for x, top in ((36.5, 50.0), (50.0, 42.0), (63.5, 50.0)):
        h = (71 - top) / 4
        yield pen.line(
            f"M{x} 71C{x - 5} {71 - h * 0.6} {x - 5} {71 - h * 1.4} {x} {71 - 2 * h}"
            f"C{x + 5} {71 - h * 2.6} {x + 5} {71 - h * 3.4} {x} {top}",
            4.4,
            "butt",
        )


def flammable(pen: Pen) -> Iterator[str]:
    """W021: a flame over a line."""
    flame = pen.at(50, 54.5, 0.42)
    yield flame.solid(FLAME)
    yield flame.cut(FLAME_HEART)
    yield pen.solid(block(33, 77.5, 67, 82.5, 1))


def sharp(pen: Pen) -> Iterator[str]:
    """W022: a spike going into the finger of a hand."""
    yield from pointing_hand(pen.at(54.5, 59.5, 0.46, 24), tip=-0.5)
    yield pen.outlined(rounded([(41.4, 46.2), (46.6, 83), (35.6, 83)], 0.3), 1.3)


ART: dict[str, Art] = {
    "W001": general,
    "W004": laser,
    "W012": electricity,
    "W016": toxic,
    "W017": hot_surface,
    "W021": flammable,
    "W022": sharp,
}
