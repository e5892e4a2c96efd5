"""The line of a cut across goods: places along it, its mirror image in a fold, what lies on which side of a line."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from builder.geometry.measure import segments_cross
from builder.geometry.placing import Placing
from builder.geometry.segment import Line, Segment
from builder.geometry.vector import Point, add, cross, dot, lerp, scale, sub, unit

FAR_MM = 2000.0
"""A cut reaches this far either way, beyond any part."""
_SAME_MM = 1e-6


@dataclass(frozen=True, slots=True)
class Ray:
    """The line of a cut: places on it are `origin + way * u`; the cut counts from `low` to `high`."""

    origin: Point
    way: Point
    low: float = -FAR_MM
    high: float = FAR_MM

    def at(self, u: float) -> Point:
        """The point at a place."""
        return add(self.origin, scale(self.way, u))

    def place(self, point: Point) -> float:
        """The place nearest to a point."""
        return dot(sub(point, self.origin), self.way)

    def moved(self, placing: Placing) -> Ray:
        """The same cut in other coordinates."""
        origin = placing.point(self.origin)
        return replace(self, origin=origin, way=unit(sub(placing.point(add(self.origin, self.way)), origin)))

    def mirrored(self, line: Line) -> Ray:
        """The cut on the other side of a fold."""
        origin = across(self.origin, line)
        return replace(self, origin=origin, way=unit(sub(across(add(self.origin, self.way), line), origin)))

    def clipped(self, low: float, high: float) -> Ray:
        """The cut between two places of it."""
        return replace(self, low=max(self.low, low), high=min(self.high, high))

    def crosses(self, segments: Sequence[Segment]) -> tuple[float, ...]:
        """Places where it crosses any of the segments, sorted."""
        if self.high - self.low < _SAME_MM:
            return ()
        line = Line(self.at(self.low), self.at(self.high))
        places = sorted(self.place(point) for one in segments for point in segments_cross(one, line))
        return tuple(one for number, one in enumerate(places) if not number or one - places[number - 1] > 1e-4)


def wall(line: Line, stays: Point, far: float = FAR_MM) -> Line:
    """The line made very long, `far` mm more either way, with what stays to its left."""
    way = scale(line.tangent_at(0), far)
    long = Line(sub(line.start, way), add(line.end, way))
    return long if beside(long, stays) >= 0 else long.reversed()


def beside(line: Line, point: Point) -> float:
    """Above 0 to the left of the line, below 0 to its right."""
    return cross(sub(line.end, line.start), sub(point, line.start))


def across(point: Point, line: Line) -> Point:
    """The mirror image of a point in a line."""
    foot = lerp(line.start, line.end, line.share_of(point))
    return add(foot, sub(foot, point))


def left_range(ray: Ray, side: Line) -> tuple[float, float]:
    """The stretch of a cut to the left of a line."""
    along = unit(sub(side.end, side.start))
    start, slope = cross(along, sub(ray.origin, side.start)), cross(along, ray.way)
    if abs(slope) < 1e-9:
        return (ray.low, ray.high) if start >= 0 else (0.0, 0.0)
    at = -start / slope
    return (max(ray.low, at), ray.high) if slope > 0 else (ray.low, min(ray.high, at))
