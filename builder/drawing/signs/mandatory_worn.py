"""Pictograms of the mandatory signs about what to wear: M003 to M017, white on blue."""

from __future__ import annotations

from collections.abc import Iterator

from builder.drawing.signs.hands import glove
from builder.drawing.signs.pen import Art, Pen
from builder.drawing.signs.shapes import block, circle, polyline, rounded

_FACE = "M50 18C62 18 69 26 69 38C69 54 61 67 50 67C39 67 31 54 31 38C31 26 38 18 50 18Z"
_SHOULDERS = "M43 60L57 60L57 70C66 72 76 75 77 85L23 85C24 75 34 72 43 70Z"


def bust(pen: Pen, with_ears: bool = True) -> Iterator[str]:
    """A head with shoulders from the front."""
    yield pen.solid(_SHOULDERS)
    for x in (30.5, 69.5) if with_ears else ():
        yield pen.disc(x, 43, 4.6)
    yield pen.solid(_FACE)


def ears(pen: Pen) -> Iterator[str]:
    """M003: a head with ear muffs."""
    yield from bust(pen)
    yield pen.cut_line("M28 40C28 4 72 4 72 40", 10.5, "butt")
    yield pen.line("M28 40C28 4 72 4 72 40", 5.6, "butt")
    for mirrored in (False, True):
        yield pen.at(50, 50, mirrored=mirrored).outlined(block(21.5, 32, 33.5, 54, 5), 2.4)


def eyes(pen: Pen) -> Iterator[str]:
    """M004: a head with goggles."""
    yield from bust(pen)
    yield pen.cut(block(29, 35, 71, 40.5))
    for mirrored in (False, True):
        lens = rounded([(33.5, 32), (48.6, 32), (48.6, 41), (45, 47.5), (37, 47.5), (33.5, 43)], 4)
        yield pen.at(50, 50, mirrored=mirrored).cut(lens)


def boots(pen: Pen) -> Iterator[str]:
    """M008: a pair of boots with toe caps."""
    boot = (
        "M30 16L62 16L62 46C62 52 66 55 74 57C84 59 90 63 90 72L90 84L58 84L56 80L50 80L50 84L28 84C27 72 31 60 30 46Z"
    )
    for x, y in ((54.5, 43.5), (37.5, 55.5)):
        one = pen.at(x, y, 0.72)
        yield one.outlined(boot, 3.4)
        yield one.cut_line(polyline((27, 74.5), (92, 74.5)), 2.8, "butt")
        yield one.cut_line("M74 57C70 62 69 68 70 74", 2.8, "butt")


def gloves(pen: Pen) -> Iterator[str]:
    """M009: a pair of gloves."""
    yield from glove(pen.at(70.5, 50, 0.5, 6))
    yield from glove(pen.at(29.5, 50, 0.5, -6, mirrored=True))


def clothing(pen: Pen) -> Iterator[str]:
    """M010: an overall with collar, belt and a fastening down the front."""
    yield pen.solid(
        "M42 13L58 13L70 18C75 20 77 24 78 29L83 58L73 60L68 38L68 88L53 88L51.5 64L48.5 64L47 88L32 88"
        "L32 38L27 60L17 58L22 29C23 24 25 20 30 18Z"
    )
    yield pen.cut("M44 12L56 12L50 22Z")
    yield pen.cut_line(polyline((50, 22), (50, 64)), 2.4, "butt")
    yield pen.cut_line(polyline((31, 53), (69, 53)), 2.8, "butt")
    yield pen.cut_line(polyline((55, 36), (63.5, 36)), 2.4, "butt")


def mask(pen: Pen) -> Iterator[str]:
    """M016: a head with a mask over nose and mouth."""
    yield from bust(pen)
    for x in (42.5, 57.5):
        yield pen.cut_disc(x, 36.5, 2.4)
    for mirrored in (False, True):
        strap = pen.at(50, 50, mirrored=mirrored)
        yield strap.cut_line(polyline((38, 50), (31, 45)), 2.6, "butt")
    yield pen.outlined(
        "M50 42C55 42 60 45 65.5 48L63.5 59C60 66 55 69.5 50 69.5C45 69.5 40 66 36.5 59L34.5 48C40 45 45 42 50 42Z", 2.4
    )
    yield pen.cut_line("M41 51.5C45.5 53.5 54.5 53.5 59 51.5", 2.2)
    yield pen.cut_line("M42 58.5C46 60.5 54 60.5 58 58.5", 2.2)


def respirator(pen: Pen) -> Iterator[str]:
    """M017: a head with a respirator and two filters."""
    yield from bust(pen, with_ears=False)
    for x in (40.5, 59.5):
        yield pen.cut_disc(x, 34.5, 2.4)
    for mirrored in (False, True):
        side = pen.at(50, 50, mirrored=mirrored)
        yield side.cut_line(polyline((40, 50), (28, 38)), 2.6, "butt")
        yield side.outlined(circle(33, 62, 9), 2.4)
        yield side.cut_disc(33, 62, 3.2)
    yield pen.outlined(rounded([(46, 38), (54, 38), (62, 54), (59, 71), (41, 71), (38, 54)], 5), 2.4)
    yield pen.cut_disc(50, 60.5, 4.6)


ART: dict[str, Art] = {
    "M003": ears,
    "M004": eyes,
    "M008": boots,
    "M009": gloves,
    "M010": clothing,
    "M016": mask,
    "M017": respirator,
}
