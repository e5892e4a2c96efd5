"""Entities of a drawing as pieces: straight lines and arcs of circles in drawing units.

Lines, arcs, circles and polylines are exact; ellipses and splines become arcs that leave them by less than the
tolerance. Texts, hatches, dimensions and whatever else can't be an outline give none. Putting blocks in place is
dxf_blocks.py, joining pieces to contours is geometry.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Any

from builder.reading.dxf_scan import DrawingFault

XY = tuple[float, float]

FARTHEST = 1e7
"""A coordinate beyond this is no place on a piece of cloth, in drawing units."""

_DEEPEST = 14
_TILTED = 1e-6
# To put a spline through points, equations of that number are solved.
_MOST_FIT_POINTS = 500


@dataclass(frozen=True, slots=True)
class Piece:
    """A line or arc from start to end; `bulge` is tan(θ/4) of the angle it sweeps, positive counter-clockwise."""

    start: XY
    end: XY
    bulge: float = 0.0


def pieces_of(entity: Any, tolerance: float) -> Iterator[Piece]:
    """The pieces of one entity, none for a kind that can't be an outline.

    tolerance : how far an arc may leave the curve it stands for, drawing units
    Raises DrawingFault for a coordinate that is no number, or a circle that isn't flat on the drawing.
    """
    draw = _DRAWN.get(entity.dxftype())
    for piece in draw(entity, tolerance) if draw is not None else ():
        for value in (*piece.start, *piece.end, piece.bulge):
            if not abs(value) < FARTHEST:  # NaN is caught as well
                message = f"The drawing has a coordinate of {value:g} in a {entity.dxftype()}."
                raise DrawingFault(message, "Draw the outline near the origin, and save it again.")
        yield piece


def _line(entity: Any, tolerance: float) -> Iterator[Piece]:
    start, end = entity.dxf.start, entity.dxf.end
    yield Piece((start.x, start.y), (end.x, end.y))


def _flat(entity: Any) -> bool:
    """Whether the entity is seen from below, as a mirrored one is. DrawingFault when it stands on its edge."""
    x, y, z = entity.dxf.extrusion
    if abs(x) > _TILTED or abs(y) > _TILTED:
        message = f"A {entity.dxftype()} of the drawing is tilted out of its plane."
        raise DrawingFault(message, "Flatten the drawing, and save it again.")
    return bool(z < 0)


def _arc(entity: Any, tolerance: float) -> Iterator[Piece]:
    mirrored = _flat(entity)
    centre, radius = entity.dxf.center, abs(entity.dxf.radius)
    if entity.dxftype() == "CIRCLE":
        first, sweep = 0.0, 360.0
    else:
        first, sweep = entity.dxf.start_angle, (entity.dxf.end_angle - entity.dxf.start_angle) % 360 or 360.0
    pieces = 1 if sweep <= 180 else 2
    angles = [math.radians(first + sweep * step / pieces) for step in range(pieces + 1)]
    side = -1 if mirrored else 1
    points = [(side * (centre.x + radius * math.cos(a)), centre.y + radius * math.sin(a)) for a in angles]
    if sweep == 360.0:
        points[-1] = points[0]
    bulge = side * math.tan(math.radians(sweep) / pieces / 4)
    yield from (Piece(a, b, bulge) for a, b in pairwise(points))


def _polyline(points: Sequence[tuple[float, float, float]], closed: bool, mirrored: bool) -> Iterator[Piece]:
    side = -1 if mirrored else 1
    placed = [(side * x, y, side * bulge) for x, y, bulge in points]
    for a, b in pairwise([*placed, *placed[:1]] if closed else placed):
        yield Piece(a[:2], b[:2], a[2])


def _light_polyline(entity: Any, tolerance: float) -> Iterator[Piece]:
    return _polyline(list(entity.get_points("xyb")), bool(entity.closed), _flat(entity))


def _heavy_polyline(entity: Any, tolerance: float) -> Iterator[Piece]:
    if not (entity.is_2d_polyline or entity.is_3d_polyline):
        return iter(())
    # Control points of a smoothed polyline aren't on it.
    shown = [vertex for vertex in entity.vertices if not vertex.dxf.flags & 16]
    points = [(one.dxf.location.x, one.dxf.location.y, one.dxf.get("bulge", 0.0)) for one in shown]
    flat = entity.is_2d_polyline and _flat(entity)
    return _polyline(points, bool(entity.is_closed), flat)


def _ellipse(entity: Any, tolerance: float) -> Iterator[Piece]:
    _flat(entity)
    tool = entity.construction_tool()
    first, last = tool.start_param, tool.end_param
    if last <= first + 1e-12:
        last += 2 * math.pi
    centre, major, minor = tool.center, tool.major_axis, tool.minor_axis

    def point(share: float) -> XY:
        cos, sin = math.cos(share), math.sin(share)
        return centre.x + major.x * cos + minor.x * sin, centre.y + major.y * cos + minor.y * sin

    steps = max(1, math.ceil((last - first) / (math.pi / 4) - 1e-9))
    cuts = [first + (last - first) * step / steps for step in range(steps + 1)]
    return _curve(point, cuts, tolerance)


def _spline(entity: Any, tolerance: float) -> Iterator[Piece]:
    if not len(entity.control_points) and len(entity.fit_points) > _MOST_FIT_POINTS:
        message = f"A spline of the drawing goes through {len(entity.fit_points):,} points."
        raise DrawingFault(message, "Draw the outline with lines and arcs.")
    tool = entity.construction_tool()

    def point(share: float) -> XY:
        at = tool.point(share)
        return at.x, at.y

    knots = sorted({float(knot) for knot in tool.knots()})
    degree = tool.degree
    first, last = float(tool.knots()[degree]), float(tool.knots()[-degree - 1])
    cuts = [first, *(knot for knot in knots if first < knot < last), last]
    return _curve(point, cuts, tolerance)


def _curve(point: Callable[[float], XY], cuts: Sequence[float], tolerance: float) -> Iterator[Piece]:
    """Arcs along a curve, each stretch between two cuts halved until its arc is near enough."""
    for first, last in pairwise(cuts):
        yield from _arcs(point, (first, point(first)), (last, point(last)), tolerance, _DEEPEST)


def _arcs(
    point: Callable[[float], XY], low: tuple[float, XY], high: tuple[float, XY], tolerance: float, depth: int
) -> Iterator[Piece]:
    (first, start), (last, end) = low, high
    middle = (first + last) / 2
    between = point(middle)
    piece = Piece(start, end, _bulge(start, between, end))
    probes = (first + (last - first) * share for share in (0.125, 0.25, 0.375, 0.625, 0.75, 0.875))
    if depth == 0 or all(_apart(point(share), piece) <= tolerance for share in probes):
        yield piece
        return
    yield from _arcs(point, low, (middle, between), tolerance, depth - 1)
    yield from _arcs(point, (middle, between), high, tolerance, depth - 1)


def _bulge(start: XY, between: XY, end: XY) -> float:
    """tan(θ/4) of the arc through three points: from the angle φ at the middle one, θ/2 = π − φ."""
    ax, ay, bx, by = start[0] - between[0], start[1] - between[1], end[0] - between[0], end[1] - between[1]
    turn, along = ax * by - ay * bx, ax * bx + ay * by
    if math.hypot(end[0] - start[0], end[1] - start[1]) < 1e-12 or abs(turn) < 1e-15:
        return 0.0
    inner = math.atan2(abs(turn), along)
    return math.copysign(math.tan((math.pi - inner) / 2), -turn)


def _apart(at: XY, piece: Piece) -> float:
    """Distance of a point from the whole circle, or the line, a piece lies on."""
    (ax, ay), (bx, by), bulge = piece.start, piece.end, piece.bulge
    dx, dy = bx - ax, by - ay
    chord = math.hypot(dx, dy)
    if chord < 1e-12:
        return math.hypot(at[0] - ax, at[1] - ay)
    if abs(bulge) < 1e-9:
        return abs(dx * (at[1] - ay) - dy * (at[0] - ax)) / chord
    rise = (1 - bulge * bulge) / (4 * bulge)
    cx, cy = (ax + bx) / 2 - dy * rise, (ay + by) / 2 + dx * rise
    return abs(math.hypot(at[0] - cx, at[1] - cy) - math.hypot(ax - cx, ay - cy))


_DRAWN: dict[str, Callable[[Any, float], Iterator[Piece]]] = {
    "LINE": _line,
    "ARC": _arc,
    "CIRCLE": _arc,
    "LWPOLYLINE": _light_polyline,
    "POLYLINE": _heavy_polyline,
    "ELLIPSE": _ellipse,
    "SPLINE": _spline,
}

CAN_BE_AN_OUTLINE = frozenset((*_DRAWN, "INSERT"))
"""Kinds of entities that are looked at; all others are passed over."""
