"""Boxes and straight traces on paper, and how they meet. Printed millimetres, y runs DOWN.

What labels are placed with: a box is the space of a text, a trace a straight piece of line work.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from typing import NamedTuple

from builder.drawing.svg import XY

# Boxes are made by the ten thousand: a named tuple's own constructor takes twice as long.
_new = tuple.__new__


class Box(NamedTuple):
    """An upright box: left, top, right, bottom, mm."""

    x0: float
    y0: float
    x1: float
    y1: float

    @property
    def width(self) -> float:
        """Width, mm."""
        return self.x1 - self.x0

    @property
    def height(self) -> float:
        """Height, mm."""
        return self.y1 - self.y0

    @property
    def centre(self) -> XY:
        """Its middle."""
        return (self.x0 + self.x1) / 2, (self.y0 + self.y1) / 2

    def corners(self) -> tuple[XY, XY, XY, XY]:
        """Its corners, clockwise from the upper left."""
        return (self.x0, self.y0), (self.x1, self.y0), (self.x1, self.y1), (self.x0, self.y1)

    def grown(self, by: float) -> Box:
        """The box with `by` mm more on every side."""
        x0, y0, x1, y1 = self
        return _new(Box, (x0 - by, y0 - by, x1 + by, y1 + by))

    def moved(self, dx: float, dy: float) -> Box:
        """The box elsewhere."""
        x0, y0, x1, y1 = self
        return _new(Box, (x0 + dx, y0 + dy, x1 + dx, y1 + dy))

    def overlaps(self, other: Box, clear: float = 0.0) -> bool:
        """Do the two come nearer than `clear` mm?"""
        x0, y0, x1, y1 = self
        left, top, right, bottom = other
        return x0 < right + clear and left < x1 + clear and y0 < bottom + clear and top < y1 + clear

    def holds(self, point: XY) -> bool:
        """Is the point in the box or on its border?"""
        return self.x0 <= point[0] <= self.x1 and self.y0 <= point[1] <= self.y1

    def inside(self, other: Box) -> bool:
        """Does this box lie within the other?"""
        return other.x0 <= self.x0 and self.x1 <= other.x1 and other.y0 <= self.y0 and self.y1 <= other.y1

    def nearest(self, point: XY) -> XY:
        """The point of the box nearest to the given one."""
        return min(max(point[0], self.x0), self.x1), min(max(point[1], self.y0), self.y1)

    def reach(self, way: XY) -> float:
        """How far the box reaches from its middle in a direction (a unit vector), mm."""
        return abs(way[0]) * self.width / 2 + abs(way[1]) * self.height / 2


def box_about(centre: XY, width: float, height: float) -> Box:
    """The box of a size about a point."""
    x, y = centre
    return _new(Box, (x - width / 2, y - height / 2, x + width / 2, y + height / 2))


def box_round(boxes: Iterable[Box]) -> Box:
    """The smallest box round all boxes, of which there is at least one."""
    every = list(boxes)
    return Box(
        min(box.x0 for box in every),
        min(box.y0 for box in every),
        max(box.x1 for box in every),
        max(box.y1 for box in every),
    )


class Trace(NamedTuple):
    """A straight piece of line work from (ax, ay) to (bx, by).

    weight : how much it hurts to cross it, 1 for a cut edge or a seam
    """

    ax: float
    ay: float
    bx: float
    by: float
    weight: float = 1.0

    @property
    def box(self) -> Box:
        """Box round it."""
        ax, ay, bx, by, _ = self
        x0, x1 = (ax, bx) if ax < bx else (bx, ax)
        y0, y1 = (ay, by) if ay < by else (by, ay)
        return _new(Box, (x0, y0, x1, y1))

    def shares_in(self, box: Box) -> tuple[float, float] | None:
        """The shares of its length between which it lies in the box, None when outside (Liang-Barsky clipping)."""
        ax, ay, bx, by, _ = self
        x0, y0, x1, y1 = box
        # Most traces are far off: a plain comparison saves the clipping.
        if (ax < x0 and bx < x0) or (ax > x1 and bx > x1) or (ay < y0 and by < y0) or (ay > y1 and by > y1):
            return None
        dx, dy = bx - ax, by - ay
        first, last = 0.0, 1.0
        for way, room in ((-dx, ax - x0), (dx, x1 - ax), (-dy, ay - y0), (dy, y1 - ay)):
            if way == 0:
                if room < 0:
                    return None
            elif way < 0:
                first = max(first, room / way)
            else:
                last = min(last, room / way)
            if first >= last:
                return None
        return first, last

    def passes(self, box: Box) -> bool:
        """Does any of it lie in the box?"""
        ax, ay, bx, by, _ = self
        x0, y0, x1, y1 = box
        if (ax < x0 and bx < x0) or (ax > x1 and bx > x1) or (ay < y0 and by < y0) or (ay > y1 and by > y1):
            return False
        dx, dy = bx - ax, by - ay
        if dx == 0 or dy == 0:
            return True
        # A slanted one may pass a corner by: then all of the box lies on one side of it.
        return abs(dx * (y0 + y1 - 2 * ay) - dy * (x0 + x1 - 2 * ax)) < abs(dy) * (x1 - x0) + abs(dx) * (y1 - y0)

    def inside_of(self, box: Box) -> float:
        """The length of the trace that lies in the box, mm."""
        shares = self.shares_in(box)
        if shares is None:
            return 0.0
        return (shares[1] - shares[0]) * math.hypot(self.bx - self.ax, self.by - self.ay)


def traces_of(points: Sequence[XY], weight: float = 1.0, closed: bool = False) -> list[Trace]:
    """The traces of a polyline."""
    ends = [*points[1:], points[0]] if closed else points[1:]
    return [Trace(a[0], a[1], b[0], b[1], weight) for a, b in zip(points, ends, strict=False) if a != b]


def crossing(a: Trace, b: Trace) -> bool:
    """Do two traces cross, touching ends included?"""
    ax, ay, bx, by, _ = a
    cx, cy, dx, dy, _ = b
    if (
        (ax < cx and bx < cx and ax < dx and bx < dx)
        or (ax > cx and bx > cx and ax > dx and bx > dx)
        or (ay < cy and by < cy and ay < dy and by < dy)
        or (ay > cy and by > cy and ay > dy and by > dy)
    ):
        return False
    ux, uy, vx, vy = bx - ax, by - ay, dx - cx, dy - cy
    if (ux * (cy - ay) - uy * (cx - ax)) * (ux * (dy - ay) - uy * (dx - ax)) > 0:
        return False
    return (vx * (ay - cy) - vy * (ax - cx)) * (vx * (by - cy) - vy * (bx - cx)) <= 0


def side_by_side(a: Trace, b: Trace, within: float) -> float:
    """The length over which b runs along a nearer than `within` mm, 0 when they are not near to parallel."""
    dx, dy, ex, ey = a.bx - a.ax, a.by - a.ay, b.bx - b.ax, b.by - b.ay
    length, other = math.hypot(dx, dy), math.hypot(ex, ey)
    if length < 1e-9 or other < 1e-9 or abs(dx * ey - dy * ex) > 0.05 * length * other:
        return 0.0
    apart = abs(dx * (b.ay - a.ay) - dy * (b.ax - a.ax)) / length
    if apart >= within:
        return 0.0
    first = (dx * (b.ax - a.ax) + dy * (b.ay - a.ay)) / length
    last = (dx * (b.bx - a.ax) + dy * (b.by - a.ay)) / length
    return max(0.0, min(length, max(first, last)) - max(0.0, min(first, last)))
