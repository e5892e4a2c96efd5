"""The area a polyline closes: is a point in it, is a box? Asked of the same heights again and again."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Sequence

from builder.drawing.box import Box
from builder.drawing.svg import XY


class Area:
    """An area closed by a polyline (even-odd).

    points : the polyline; home: the box round it
    """

    def __init__(self, points: Sequence[XY]) -> None:
        self.points = points
        xs, ys = [x for x, _ in points], [y for _, y in points]
        self.home = Box(min(xs), min(ys), max(xs), max(ys))
        self._crossings: dict[float, list[float]] = {}

    def holds(self, point: XY) -> bool:
        """Is the point inside?"""
        x, y = point
        if not (self.home.x0 <= x <= self.home.x1 and self.home.y0 <= y <= self.home.y1):
            return False
        known = self._crossings.get(y)
        if known is None:
            known = self._crossings[y] = crossings(self.points, y)
        return (len(known) - bisect_right(known, x)) % 2 == 1

    def holds_box(self, box: Box) -> bool:
        """Are its four corners inside?"""
        x0, y0, x1, y1 = box
        return self.holds((x0, y0)) and self.holds((x1, y0)) and self.holds((x1, y1)) and self.holds((x0, y1))


def crossings(points: Sequence[XY], y: float) -> list[float]:
    """Where the level line at a height crosses the closed polyline, from left to right."""
    found = []
    ax, ay = points[-1]
    for bx, by in points:
        if (ay > y) != (by > y):
            found.append(ax + (y - ay) * (bx - ax) / (by - ay))
        ax, ay = bx, by
    found.sort()
    return found
