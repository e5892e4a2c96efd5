"""Cutting line work and areas to a rectangle, for detail views. Lines stay lines and arcs stay arcs."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise

from builder.geometry.measure import segments_cross
from builder.geometry.segment import Bounds, Line, Segment
from builder.geometry.vector import TOUCH, Point

_CHORD_MM = 0.05


def clip_segment(segment: Segment, box: Bounds) -> Iterator[Segment]:
    """The pieces of a segment inside a box (left, bottom, right, top), in its direction."""
    x0, y0, x1, y1 = segment.bounds()
    if x1 < box[0] or x0 > box[2] or y1 < box[1] or y0 > box[3]:
        return
    if box[0] <= x0 and x1 <= box[2] and box[1] <= y0 and y1 <= box[3]:
        yield segment
        return
    shares = {0.0, 1.0}
    for side in _sides(box):
        shares |= {min(max(segment.share_of(point), 0.0), 1.0) for point in segments_cross(segment, side)}
    for first, last in pairwise(sorted(shares)):
        if (last - first) * segment.length > TOUCH and _inside(segment.point_at((first + last) / 2), box):
            yield segment.part(first, last)


def clip_area(segments: Sequence[Segment], box: Bounds) -> tuple[Point, ...]:
    """Corners of the part of a closed area inside a box, () when none of it is. Sutherland and Hodgman's method.

    A concave area that falls into several pieces comes back joined along the box's side, which a fill doesn't show.
    """
    points = [point for segment in segments for point in segment.to_polyline(_CHORD_MM)[:-1]]
    for axis, limit, keep_above in ((0, box[0], True), (0, box[2], False), (1, box[1], True), (1, box[3], False)):
        points = _clip_side(points, axis, limit, keep_above)
    return tuple(points)


def beyond_fold(segments: Sequence[Segment], fold: Segment, inside: Point) -> tuple[Point, ...]:
    """Corners of a closed area without what lies beyond a straight fold, seen from a point that stays.

    Folds across or along the part only; a slanted one leaves the area as it is.
    """
    points = [point for segment in segments for point in segment.to_polyline(_CHORD_MM)[:-1]]
    for axis in (0, 1):
        if abs(fold.start[axis] - fold.end[axis]) < TOUCH:
            limit = fold.start[axis]
            return tuple(_clip_side(points, axis, limit, inside[axis] > limit))
    return tuple(points)


def _clip_side(points: list[Point], axis: int, limit: float, keep_above: bool) -> list[Point]:
    kept: list[Point] = []
    for before, here in zip([*points[-1:], *points[:-1]], points, strict=True):
        was, now = ((p[axis] >= limit) if keep_above else (p[axis] <= limit) for p in (before, here))
        if was != now:
            share = (limit - before[axis]) / (here[axis] - before[axis])
            kept.append((before[0] + share * (here[0] - before[0]), before[1] + share * (here[1] - before[1])))
        if now:
            kept.append(here)
    return kept


def _sides(box: Bounds) -> tuple[Line, ...]:
    left, bottom, right, top = box
    corners = ((left, bottom), (right, bottom), (right, top), (left, top))
    return tuple(Line(a, b) for a, b in zip(corners, (*corners[1:], corners[0]), strict=True))


def _inside(point: Point, box: Bounds) -> bool:
    return box[0] - TOUCH <= point[0] <= box[2] + TOUCH and box[1] - TOUCH <= point[1] <= box[3] + TOUCH
