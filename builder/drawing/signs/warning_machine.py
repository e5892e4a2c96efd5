"""Pictograms of the warning signs about moving machines: W018, W019, W024, W025, black on yellow."""

from __future__ import annotations

from collections.abc import Iterator

from builder.drawing.signs.hands import open_hand
from builder.drawing.signs.pen import Art, Pen
from builder.drawing.signs.shapes import arc_arrow, arrow, block, circle, gear, polyline, rounded


def automatic_start(pen: Pen) -> Iterator[str]:
    """W018: a gear wheel with an arrow bent round it."""
    yield pen.solid(gear(50, 63, 11.8, 8, 4))
    yield pen.solid(arc_arrow(50, 63, 17.2, -40, 215, 3.8, 9))


def person(pen: Pen) -> Iterator[str]:
    """A standing person from the front, about (50, 50), 100 high and 44 wide."""
    yield pen.disc(50, 11, 10.5)
    yield pen.solid(
        rounded(
            [
                (28, 24),
                (72, 24),
                (72, 62),
                (63, 62),
                (63, 100),
                (52, 100),
                (52, 64),
                (48, 64),
                (48, 100),
                (37, 100),
                (37, 62),
                (28, 62),
            ],
            3.5,
        )
    )
    for x in (36.8, 63.2):
        yield pen.cut_line(polyline((x, 36), (x, 63)), 2.6, "butt")


def crushing(pen: Pen) -> Iterator[str]:
    """W019: a person between two plates that move together."""
    yield from person(pen.at(50, 62, 0.43))
    for mirrored in (False, True):
        side = pen.at(50, 50, mirrored=mirrored)
        yield side.solid(block(34.6, 51, 38, 83.5, 0.5))
        yield side.solid(arrow((23.2, 72), (33.2, 72), 3.4, 9, 5.4))


def crushing_of_hands(pen: Pen) -> Iterator[str]:
    """W024: a hand between a fixed bar and one that comes down."""
    yield pen.solid(block(27, 79.5, 73, 83.2, 0.5))
    yield from open_hand(pen.at(49, 65.2, 0.36, -90), spread=0.25, wrist=112)
    yield pen.solid(block(36, 46.5, 64, 50.2, 0.5))
    yield pen.solid(arrow((50, 30), (50, 44.8), 4, 11, 6.6))


def rollers(pen: Pen) -> Iterator[str]:
    """W025: fingers going into the nip of two rollers that turn against each other."""
    for mirrored in (False, True):
        roller = pen.at(50, 50, mirrored=mirrored)
        yield roller.solid(circle(35.6, 71, 12.8) + circle(35.6, 71, 10.2))
        yield roller.solid(arc_arrow(35.6, 71, 5.6, -215, -35, 2.4, 6))
    yield from open_hand(pen.at(50, 49.5, 0.33, 180), spread=-0.2, wrist=96, gap=4)


ART: dict[str, Art] = {
    "W018": automatic_start,
    "W019": crushing,
    "W024": crushing_of_hands,
    "W025": rollers,
}
