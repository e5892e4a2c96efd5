"""Typed corners to a ring: arcs by their radius or their bow, and the second half of a mirrored piece.

Corners come here in millimetres; reading typed lengths is outline_shape.py, rounding corners is outline.py.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

from builder.geometry.outline import Outline, Vertex, polygon
from builder.geometry.segment import Line
from builder.geometry.vector import TOUCH, GeometryFault, Point, cross, distance, said

_SWAPS = {True: {"left": "right", "right": "left"}, False: {"top": "bottom", "bottom": "top"}}
MIRRORED = "mirrored"
"""What the name of a mirrored edge ends in, where no word of it says the side."""


@dataclass(frozen=True, slots=True)
class Spot:
    """A corner with the side that leads from it: lengths in mm, signs as typed, None for a straight side."""

    at: Point
    corner: float = 0.0
    edge: str | None = None
    radius: float | None = None
    bow: float | None = None


def bulge_of_bow(chord: float, bow: float) -> float:
    """tan(θ/4) of the arc that stands `bow` off the middle of its chord: 2·bow ÷ chord. GeometryFault over half a turn.

    Half the chord and the bow are the legs of a triangle with the angle θ/4 at the arc's end.
    """
    if abs(bow) > chord / 2 * (1 + 1e-9):
        raise GeometryFault(f"A bow of {bow:.10g} mm over {chord:.6g} mm would be more than half a turn.")
    return 2 * bow / chord


def bulge_of_radius(chord: float, radius: float) -> float:
    """tan(θ/4) of the arc of a radius over a chord, at most half a turn, signed as the radius.

    sin(θ/2) = c/2r, so tan(θ/4) = c ÷ (2r + √(4r² − c²)). GeometryFault for a radius that can't span the chord.
    """
    reach = abs(radius)
    if not 2 * reach >= chord * (1 - 1e-9):
        raise GeometryFault(
            f"A radius of {radius:.10g} mm can't span {chord:.6g} mm; it needs {chord / 2:.6g} or more."
        )
    return math.copysign(chord / (2 * reach + math.sqrt(max(0.0, 4 * reach * reach - chord * chord))), radius)


def ring_of(spots: Sequence[Spot]) -> Outline:
    """The outline through corners in either direction; arcs bow outward where their sign is positive.

    Raises GeometryFault as `polygon` does, and for arcs that don't fit their corners.
    """
    pairs = list(zip(spots, [*spots[1:], *spots[:1]], strict=True))
    clockwise = sum(cross(one.at, other.at) for one, other in pairs) < 0
    vertices = [Vertex(one.at, _bulge(one, other.at, clockwise), one.corner) for one, other in pairs]
    return polygon(vertices, [one.edge for one in spots])


def _bulge(spot: Spot, end: Point, clockwise: bool) -> float:
    chord = distance(spot.at, end)
    if chord <= TOUCH or (spot.radius is None and spot.bow is None):
        return 0.0
    try:
        bulge = bulge_of_bow(chord, spot.bow) if spot.bow is not None else bulge_of_radius(chord, spot.radius or 0.0)
    except GeometryFault as fault:
        raise GeometryFault(f"{fault.message} (side from {said(spot.at)} to {said(end)})", spot.at) from None
    return -bulge if clockwise else bulge


def whole_of_half(half: Sequence[Spot]) -> tuple[list[Spot], Line]:
    """The corners all round of a piece whose half is given, and its centre line from end to end.

    half : from the centre line to the centre line; the last corner's side is not looked at
    A side that is square to the centre line there is one side with its mirror image.
    GeometryFault when there are fewer than 2 corners or both ends don't lie on one upright or level line.
    """
    upright = _upright(half)
    first, last = half[0], half[-1]
    square_first = _square(first, half[1], upright)
    square_last = len(half) > 2 and _square(last, half[-2], upright)
    inner = list(half[1:-1])
    around = [] if square_first else [first]
    around += inner
    if not square_last:
        around.append(_leads(last, half[-2], upright))
    # Walking back, the side that leads from a mirrored corner is the one that led to it.
    before = [first, *inner]
    for number in range(len(inner), 0, -1):
        mirrored = replace(half[number], at=_mirror(half[number].at, first.at, upright))
        whole = number == 1 and square_first
        around.append(_side(mirrored, first) if whole else _leads(mirrored, before[number - 1], upright))
    if square_first:
        around = [*around[-1:], *around[:-1]]  # the ring begins with the side that is typed first
    return around, Line(first.at, last.at)


def _upright(half: Sequence[Spot]) -> bool:
    if len(half) < 2:
        raise GeometryFault("A half needs at least 2 corners, the first and the last on its centre line.")
    (x1, y1), (x2, y2) = half[0].at, half[-1].at
    upright, level = abs(x1 - x2) <= TOUCH, abs(y1 - y2) <= TOUCH
    if upright == level:
        raise GeometryFault(
            f"The first corner of a half, {said(half[0].at)}, and its last, {said(half[-1].at)}, should lie on its "
            "centre line: both at one x, or both at one y.",
            half[0].at,
        )
    return upright


def _square(end: Spot, inner: Spot, upright: bool) -> bool:
    """Does the side between a corner on the centre line and its neighbour cross the line square?"""
    axis = 1 if upright else 0
    return end.corner == 0 and abs(end.at[axis] - inner.at[axis]) <= TOUCH


def _mirror(at: Point, on_line: Point, upright: bool) -> Point:
    return (2 * on_line[0] - at[0], at[1]) if upright else (at[0], 2 * on_line[1] - at[1])


def _side(spot: Spot, side: Spot) -> Spot:
    """A corner with the side of another one leading from it."""
    return replace(spot, edge=side.edge, radius=side.radius, bow=side.bow)


def _leads(spot: Spot, side: Spot, upright: bool) -> Spot:
    """A corner with the mirror image of another one's side leading from it."""
    found = _side(spot, side)
    return found if side.edge is None else replace(found, edge=mirrored_name(side.edge, upright))


def mirrored_name(name: str, upright: bool = True) -> str:
    """The name of a mirrored edge.

    >>> mirrored_name("lower-right"), mirrored_name("neck"), mirrored_name("top", upright=False)
    ('lower-left', 'neck-mirrored', 'bottom')
    """
    words = name.split("-")
    swapped = [_SWAPS[upright].get(word, word) for word in words]
    return "-".join(swapped) if swapped != words else f"{name}-{MIRRORED}"
