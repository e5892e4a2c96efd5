"""The two segments every outline and path is made of: a straight line and an arc of a circle.

Each has the same members: length, radius, point_at, tangent_at, share_of, reversed, part, parallel, bounds,
to_polyline. A `share` runs from 0 (start) to 1 (end) in proportion to length. No crossing and no distance
here (measure.py), no rings (outline.py).
"""

from __future__ import annotations

import math
from collections.abc import Collection
from dataclasses import dataclass

from builder.geometry.vector import (
    TOUCH,
    GeometryFault,
    Point,
    add,
    cross,
    distance,
    dot,
    left,
    lerp,
    said,
    scale,
    sub,
    unit,
)

Bounds = tuple[float, float, float, float]
"""Left, bottom, right, top in mm."""

_SHORTEST = 1e-12
_STRAIGHT_BULGE = 1e-9
FULL_TURN = 2 * math.pi


def box_around(boxes: Collection[Bounds]) -> Bounds:
    """The box around boxes, at least one; mm."""
    return (min(b[0] for b in boxes), min(b[1] for b in boxes), max(b[2] for b in boxes), max(b[3] for b in boxes))


@dataclass(frozen=True, slots=True)
class Line:
    """A straight line from start to end. GeometryFault when both are the same point."""

    start: Point
    end: Point

    def __post_init__(self) -> None:
        if not distance(self.start, self.end) > _SHORTEST:
            raise GeometryFault(f"A line needs two different ends, both are {said(self.start)}.", self.start)

    @property
    def length(self) -> float:
        """Length, mm."""
        return distance(self.start, self.end)

    @property
    def radius(self) -> float:
        """Radius of the curve: infinite."""
        return math.inf

    def point_at(self, share: float) -> Point:
        """The point at a share of the length; beyond 0…1 the line goes on."""
        return lerp(self.start, self.end, share)

    def tangent_at(self, share: float) -> Point:
        """Direction of travel, a unit vector; the same everywhere."""
        return unit(sub(self.end, self.start))

    def share_of(self, point: Point) -> float:
        """Share of the foot of the point on the line, below 0 or above 1 when it lies beyond an end."""
        way = sub(self.end, self.start)
        return dot(sub(point, self.start), way) / dot(way, way)

    def reversed(self) -> Line:
        """The same line travelled from its end."""
        return Line(self.end, self.start)

    def part(self, first: float, last: float) -> Line:
        """The piece between two shares, first < last."""
        return Line(self.point_at(first), self.point_at(last))

    def parallel(self, offset: float) -> Line | None:
        """The line `offset` mm to its left (negative: right). Never None: an arc's can vanish."""
        aside = scale(left(self.tangent_at(0)), offset)
        return Line(add(self.start, aside), add(self.end, aside))

    def bounds(self) -> Bounds:
        """Box around it, mm."""
        (ax, ay), (bx, by) = self.start, self.end
        return min(ax, bx), min(ay, by), max(ax, bx), max(ay, by)

    def to_polyline(self, tolerance: float) -> list[Point]:
        """Its two ends: a line is its own polyline."""
        return [self.start, self.end]


@dataclass(frozen=True, slots=True)
class Arc:
    """An arc from start to end about a centre. The same start and end mean the whole circle.

    GeometryFault when start and end aren't equally far from the centre, or are the centre.
    """

    start: Point
    end: Point
    centre: Point
    clockwise: bool

    def __post_init__(self) -> None:
        first, last = distance(self.start, self.centre), distance(self.end, self.centre)
        if not first > _SHORTEST:
            raise GeometryFault(f"An arc needs a radius, it starts at its centre {said(self.start)}.", self.start)
        if not abs(first - last) <= 1e-6 * max(1.0, first):
            raise GeometryFault(
                f"The arc about {said(self.centre)} starts {first:.10g} mm and ends {last:.10g} mm from its centre.",
                self.centre,
            )

    @property
    def radius(self) -> float:
        """Radius, mm."""
        return distance(self.start, self.centre)

    @property
    def sweep(self) -> float:
        """Angle gone through in radians, positive counter-clockwise, −2π … 2π and never 0."""
        if self.start == self.end:
            return -FULL_TURN if self.clockwise else FULL_TURN
        first, last = sub(self.start, self.centre), sub(self.end, self.centre)
        # One atan2 of the difference keeps the digits that two separate angles would lose on a flat arc.
        turn = math.atan2(cross(first, last), dot(first, last))
        if self.clockwise:
            return turn if turn < 0 else turn - FULL_TURN
        return turn if turn > 0 else turn + FULL_TURN

    @property
    def length(self) -> float:
        """Length along the arc, mm: r·θ."""
        return self.radius * abs(self.sweep)

    def point_at(self, share: float) -> Point:
        """The point at a share of the length; beyond 0…1 the circle goes on. The ends come out exactly."""
        if share == 0:
            return self.start
        if share == 1:
            return self.end
        return add(self.centre, _turned(sub(self.start, self.centre), self.sweep * share))

    def tangent_at(self, share: float) -> Point:
        """Direction of travel, a unit vector, square to the radius."""
        outward = unit(sub(self.point_at(share), self.centre))
        return (outward[1], -outward[0]) if self.clockwise else left(outward)

    def share_of(self, point: Point) -> float:
        """Share of the nearest point of the circle, below 0 or above 1 beyond the nearer end."""
        first, there = sub(self.start, self.centre), sub(point, self.centre)
        turn = math.atan2(cross(first, there), dot(first, there))
        forward = (-turn if self.clockwise else turn) % FULL_TURN
        whole = abs(self.sweep)
        beyond = forward - whole
        # Past the end, the nearer end says whether it counts as behind the start or after the end.
        if beyond > 0 and FULL_TURN - forward < beyond:
            forward -= FULL_TURN
        return forward / whole

    def reversed(self) -> Arc:
        """The same arc travelled from its end."""
        return Arc(self.end, self.start, self.centre, not self.clockwise)

    def part(self, first: float, last: float) -> Arc:
        """The piece between two shares, first < last."""
        return Arc(self.point_at(first), self.point_at(last), self.centre, self.clockwise)

    def parallel(self, offset: float) -> Arc | None:
        """The concentric arc `offset` mm to its left (negative: right), None when no radius is left."""
        radius = self.radius + (offset if self.clockwise else -offset)
        if radius <= TOUCH:
            return None
        start = add(self.centre, scale(unit(sub(self.start, self.centre)), radius))
        end = add(self.centre, scale(unit(sub(self.end, self.centre)), radius))
        return Arc(start, end, self.centre, self.clockwise)

    def holds(self, point: Point) -> bool:
        """Does a point of the circle lie on this arc? Ends within TOUCH count."""
        if self.start == self.end or distance(point, self.start) <= TOUCH or distance(point, self.end) <= TOUCH:
            return True
        # On the circle, the arc is exactly what lies on one side of the chord: no angles, no wrap-around.
        side = cross(sub(self.end, self.start), sub(point, self.start))
        return side > 0 if self.clockwise else side < 0

    def bounds(self) -> Bounds:
        """Box around it, mm: the ends, and the outermost points of the circle the arc passes."""
        (ax, ay), (bx, by), (cx, cy) = self.start, self.end, self.centre
        left, bottom, right, top = min(ax, bx), min(ay, by), max(ax, bx), max(ay, by)
        radius = self.radius
        # An extreme of the circle lies beyond the chord's box if the arc passes it; only those are asked for.
        if cx + radius > right and self.holds((cx + radius, cy)):
            right = cx + radius
        if cx - radius < left and self.holds((cx - radius, cy)):
            left = cx - radius
        if cy + radius > top and self.holds((cx, cy + radius)):
            top = cy + radius
        if cy - radius < bottom and self.holds((cx, cy - radius)):
            bottom = cy - radius
        return left, bottom, right, top

    def to_polyline(self, tolerance: float) -> list[Point]:
        """Points on the arc, ends included, whose chords leave it by at most `tolerance` mm (> 0).

        A chord over the angle θ leaves the circle by r(1 − cos θ/2) = 2r sin²(θ/4). No chord spans more than
        a quarter turn, so that a coarse circle is still a square. GeometryFault for a tolerance not above 0.
        """
        if not tolerance > 0:
            raise GeometryFault(f"A chord tolerance must be above 0 mm, not {tolerance:g}.")
        half = math.sqrt(min(1.0, tolerance / (2 * self.radius)))
        widest = min(4 * math.asin(half), math.pi / 2)
        pieces = max(1, math.ceil(abs(self.sweep) / widest - 1e-9))
        return [self.point_at(index / pieces) for index in range(pieces + 1)]


Segment = Line | Arc


def _turned(a: Point, radians: float) -> Point:
    """a turned about the origin, radians."""
    cos, sin = math.cos(radians), math.sin(radians)
    return a[0] * cos - a[1] * sin, a[0] * sin + a[1] * cos


def arc_from_bulge(start: Point, end: Point, bulge: float) -> Segment:
    """The arc between two points with the bulge of a drawing exchange file; a Line when it is flat.

    bulge : tan(θ/4) of the angle swept, positive counter-clockwise; 1 is a half circle. Flat: under 1e-9.
    The centre lies left of the middle of the chord by chord × (1 − b²)/(4b).
    """
    if abs(bulge) < _STRAIGHT_BULGE:
        return Line(start, end)
    chord = sub(end, start)
    aside = scale(left(chord), (1 - bulge * bulge) / (4 * bulge))
    if distance(start, end) <= _SHORTEST:
        raise GeometryFault(f"An arc by its bulge needs two different ends, both are {said(start)}.", start)
    return Arc(start, end, add(lerp(start, end, 0.5), aside), clockwise=bulge < 0)


def arc_from_radius(start: Point, end: Point, radius: float, clockwise: bool, large: bool) -> Arc:
    """The arc of a radius between two points.

    large : True for the one that sweeps more than half a turn.
    GeometryFault when the radius can't span the two points, or they are one point.
    """
    chord = distance(start, end)
    if chord <= _SHORTEST:
        raise GeometryFault(f"An arc by its radius needs two different ends, both are {said(start)}.", start)
    if not 2 * radius >= chord * (1 - 1e-9):
        raise GeometryFault(
            f"A radius of {radius:.10g} mm can't span the {chord:.10g} mm from {said(start)} to {said(end)}.",
            start,
        )
    height = math.sqrt(max(0.0, radius * radius - chord * chord / 4))
    # The centre of the small counter-clockwise arc lies left of the chord; each change swaps the side.
    side = 1 if clockwise == large else -1
    aside = scale(left(unit(sub(end, start))), side * height)
    return Arc(start, end, add(lerp(start, end, 0.5), aside), clockwise)
