"""The cards that templates are cut as: a double-ended go / no-go gauge, and a card with a mark at each place.

Shapes in mm from limits and places; words, numbers and paper are not known here.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from builder.geometry.outline import Outline, Vertex, polygon, rectangle
from builder.geometry.placing import Placing
from builder.geometry.segment import Bounds
from builder.geometry.vector import TOUCH, GeometryFault, Point

TONGUE_MM = 20.0
"""Length of an end that is laid on: as much as can be seen along a line at once. Our own choice."""
GRIP_MM = (84.0, 46.0)
"""Width and height of the body between the ends: a hand's grip, and room for the words. Our own choice."""
SLIT_MM = 2.0
"""Width of a slit: a pencil goes through. Common practice, no source."""
LEAST_HOLE_MM = 3.0
"""Diameter of a hole to mark through, at least. Common practice, no source."""
BEYOND_MM = 15.0
"""Card left beyond the last place."""


@dataclass(frozen=True, slots=True)
class GaugeCard:
    """A gauge cut from card. Its left edge, x = 0, is laid flush with what is measured from.

    go    : the end at the lower limit (on top), None when there is none; what is measured must reach past it
    no_go : the end at the upper limit (at the bottom); what is measured must not reach past it
    body  : between them
    """

    outline: Outline
    body: Bounds
    go: Bounds | None
    no_go: Bounds | None


def gauge_card(low_mm: float | None, high_mm: float | None) -> GaugeCard:
    """The card for two limits, or one. A lower limit of 0 or less needs no end: nothing lies before the edge.

    Raises GeometryFault when no limit is left, or they are the wrong way round.
    """
    low = low_mm if low_mm is not None and low_mm > TOUCH else None
    if low is None and (high_mm is None or not high_mm > TOUCH):
        raise GeometryFault("A gauge needs a limit above zero.")
    if low is not None and high_mm is not None and not high_mm > low:
        raise GeometryFault("The upper limit of a gauge lies above the lower one.")
    longest = max(low or 0.0, high_mm or 0.0)
    # An end as wide as the body would have no shoulder to tell it from the body.
    width, height = max(GRIP_MM[0], longest + BEYOND_MM), GRIP_MM[1]
    bottom = TONGUE_MM if high_mm is not None else 0.0
    top = bottom + height
    corners: list[Point] = [(0.0, 0.0)]
    if high_mm is not None:
        corners += [(high_mm, 0.0), (high_mm, bottom)]
    corners += [(width, bottom), (width, top)]
    if low is not None:
        corners += [(low, top), (low, top + TONGUE_MM)]
    corners.append((0.0, corners[-1][1]))
    return GaugeCard(
        polygon([Vertex(corner) for corner in corners], [None] * len(corners)),
        (0.0, bottom, width, top),
        None if low is None else (0.0, top, low, top + TONGUE_MM),
        None if high_mm is None else (0.0, 0.0, high_mm, bottom),
    )


@dataclass(frozen=True, slots=True)
class Places:
    """Where a row of marks is: points in order, the size of a slit (length along x, along y) or of a hole (d, 0)."""

    points: tuple[Point, ...]
    size: tuple[float, float]


@dataclass(frozen=True, slots=True)
class MarkingCard:
    """A card to mark through: its outline, and the holes and slits to cut out of it, row by row.

    edges : names of the card's edges that lie flush with those of the part: some of left, right, bottom, top
    """

    outline: Outline
    box: Bounds
    edges: tuple[str, ...]
    slits: tuple[tuple[Outline, ...], ...]
    holes: tuple[tuple[tuple[Point, float], ...], ...]


def marking_card(ground: Bounds, rows: Sequence[Places], edges: tuple[str, str]) -> MarkingCard:
    """The card from the two datum edges (left or right, bottom or top) of what is marked to beyond the last place.

    ground : the box of the part, or of the patch the places are measured on
    Where the card would end within its own margin of the opposite edge, it goes to that edge, which is datum too.
    Raises GeometryFault without a place, or with a place beyond a datum edge.
    """
    points = [point for row in rows for point in row.points]
    if not points:
        raise GeometryFault("There is no place to mark.")
    (x0, x1), flush_x = _extent(ground[0], ground[2], [p[0] for p in points], edges[0] == "left", ("left", "right"))
    (y0, y1), flush_y = _extent(ground[1], ground[3], [p[1] for p in points], edges[1] == "bottom", ("bottom", "top"))
    outline = Placing(x0, y0).outline(rectangle(x1 - x0, y1 - y0))
    slits, holes = [], []
    for row in rows:
        (along, across), round_ = row.size, not row.size[1]
        slits.append(() if round_ else tuple(_slit(point, along, across) for point in row.points))
        holes.append(tuple((point, max(along, LEAST_HOLE_MM)) for point in row.points) if round_ else ())
    return MarkingCard(outline, (x0, y0, x1, y1), (*flush_x, *flush_y), tuple(slits), tuple(holes))


def _extent(
    low: float, high: float, places: Sequence[float], from_low: bool, names: tuple[str, str]
) -> tuple[tuple[float, float], tuple[str, ...]]:
    """From and to along one axis, and which ends are flush with the ground."""
    if min(places) < low - TOUCH or max(places) > high + TOUCH:
        raise GeometryFault("A place to mark lies beyond the edge it is measured from.")
    if from_low:
        end = max(places) + BEYOND_MM
        return ((low, high), names) if end > high - BEYOND_MM else ((low, end), names[:1])
    end = min(places) - BEYOND_MM
    return ((low, high), names) if end < low + BEYOND_MM else ((end, high), names[1:])


def _slit(point: Point, along: float, across: float) -> Outline:
    return Placing(point[0] - along / 2, point[1] - across / 2).outline(rectangle(along, across))
