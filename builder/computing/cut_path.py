"""What the head of a cutter follows for a part, and in which order. How long that takes is cut_time.py.

What is kept lies to the left of every contour, the waste to its right; so the outline goes round counter-clockwise
and a hole clockwise. Lengths in mm, in the part's coordinates.
"""

from __future__ import annotations

import math
from bisect import bisect_left
from collections.abc import Sequence

from builder.geometry import (
    ROUND_KINDS,
    Arc,
    Bounds,
    FeatureShape,
    GeometryFault,
    Outline,
    PartShape,
    Path,
    Point,
    axis_of,
    inset_outline,
    polyline,
)

_LEAST_RADIUS_MM = 0.05
"""A hole no wider than the beam is still pierced and turned round in, by a path too small to count."""


def cut_contours(shape: PartShape, cut: Sequence[FeatureShape], kerf_mm: float = 0.0) -> list[Path]:
    """Contours of a part in the order they are cut: holes and slots, then notches, each nearest next, then the outline.

    The outline comes last because a freed piece moves. A notch is followed as a small path of its own.

    cut     : holes of all kinds and notches cut with the outline
    kerf_mm : width of what the beam burns away: the head goes half of it outside the outline and inside a hole.
              Where that closes a slot of the outline the head follows the outline itself. A notch is waste and is
              followed as drawn.
    """
    half = kerf_mm / 2
    holes = [
        _circle(point, one.size[0] / 2 - half)
        for one in cut
        if one.kind in ("hole", "drill hole")
        for point in one.points
    ]
    holes += [_slot(one, number, half) for one in cut if one.kind == "slot" for number in range(len(one.points))]
    notches = [path for one in cut if one.kind == "notch" for path in one.paths]
    left, bottom, _, _ = shape.bounds
    ordered = _ordered(holes, (left, bottom))
    ordered += _ordered(notches, ordered[-1].end if ordered else (left, bottom))
    return [*ordered, Path(_wider(shape.outline, half).segments)]


def _wider(outline: Outline, half_kerf_mm: float) -> Outline:
    if half_kerf_mm <= 0:
        return outline
    try:
        return inset_outline(outline, -half_kerf_mm)
    except GeometryFault:
        return outline


def _circle(centre: Point, radius: float) -> Path:
    x, y = centre
    radius = max(radius, _LEAST_RADIUS_MM)
    east, west = (x + radius, y), (x - radius, y)
    return Path((Arc(east, west, centre, True), Arc(west, east, centre, True)))


def _slot(slot: FeatureShape, number: int, half_kerf_mm: float) -> Path:
    """Round inside a slot, clockwise. One no wider than the beam is burnt along its middle, once."""
    if min(slot.size) <= 2 * half_kerf_mm + _LEAST_RADIUS_MM:
        return polyline(axis_of(slot, number))
    outline = slot.regions[number]
    return Path((inset_outline(outline, half_kerf_mm) if half_kerf_mm > 0 else outline).segments).reversed()


def _ordered(paths: Sequence[Path], at: Point) -> list[Path]:
    # Holes end where they start and notches nearly so: one point stands for both ends.
    return [paths[number] for number in nearest_next([path.start for path in paths], at)]


def lead_start(path: Path, lead_mm: float) -> Point:
    """Where a straight lead-in starts: square to the path's start, in the waste."""
    if lead_mm <= 0:
        return path.start
    (x, y), (dx, dy) = path.start, path.runs[0].tangent_at(0)
    return x + dy * lead_mm, y - dx * lead_mm


def cut_length(shape: PartShape, cut: Sequence[FeatureShape]) -> float:
    """Length cut for one piece: its contours as drawn; of a strip, the length fed, since only its end is cut."""
    if shape.part.outline is not None and shape.part.outline.strip is not None:
        left, _, right, _ = shape.bounds
        return right - left
    return math.fsum(path.length for path in cut_contours(shape, cut))


def mark_areas(feature: FeatureShape) -> list[Bounds]:
    """Boxes a head marks line by line for a feature: its regions, a box, or a square round each hole or snap."""
    if feature.regions:
        return [region.bounds() for region in feature.regions]
    if feature.kind == "box":
        return [path.bounds() for path in feature.paths]
    half = feature.size[0] / 2 if feature.kind in ROUND_KINDS else 0.0
    return [(x - half, y - half, x + half, y + half) for x, y in feature.points if half > 0]


def nearest_next(points: Sequence[Point], at: Point) -> list[int]:
    """Numbers of points in the order they are met, always going on to the nearest that is left.

    They are sorted along the longer side of all, and only those nearer along it than the best so far are looked at:
    about √n a point for a sheet of holes, never all of them for a row.

    >>> nearest_next([(5, 0), (1, 0), (2, 0)], (0, 0))
    [1, 2, 0]
    """
    axis = _longer_axis(points)
    order = sorted(range(len(points)), key=lambda number: points[number][axis])
    left = _Left([points[number] for number in order], axis)
    found: list[int] = []
    gap = bisect_left([points[number][axis] for number in order], at[axis])
    below, above = gap - 1, gap
    for _ in order:
        best = left.nearest(at, below, above)
        found.append(order[best])
        below, above = left.take(best)
        at = points[order[best]]
    return found


def _longer_axis(points: Sequence[Point]) -> int:
    if not points:
        return 0
    wide, high = (max(one[axis] for one in points) - min(one[axis] for one in points) for axis in (0, 1))
    return 0 if wide >= high else 1


class _Left:
    """Points not yet met, in a list linked both ways along one axis."""

    def __init__(self, points: Sequence[Point], axis: int) -> None:
        self.points, self.axis = points, axis
        self.below = list(range(-1, len(points) - 1))
        self.above = list(range(1, len(points) + 1))

    def nearest(self, at: Point, below: int, above: int) -> int:
        """The nearest point left, by its place in the list; `below` and `above` are the first left on either side."""
        best, least = -1, math.inf
        for number, onward in ((below, self.below), (above, self.above)):
            while 0 <= number < len(self.points) and abs(self.points[number][self.axis] - at[self.axis]) < least:
                apart = math.dist(self.points[number], at)
                if apart < least:
                    best, least = number, apart
                number = onward[number]
        return best

    def take(self, number: int) -> tuple[int, int]:
        """Takes a point out; returns the first left on either side of it."""
        below, above = self.below[number], self.above[number]
        if below >= 0:
            self.above[below] = above
        if above < len(self.points):
            self.below[above] = below
        return below, above
