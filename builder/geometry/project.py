"""Flat things seen from above and aside: an oblique projection that keeps horizontals true, for parts taken apart.

x keeps its length; y leans to the right and is shortened; z goes straight up the paper. Parallel lines stay parallel,
so an arc becomes an ellipse's, drawn as a polyline within a tolerance.
"""

from __future__ import annotations

from collections.abc import Iterable
from itertools import pairwise

from builder.geometry.segment import Arc, Line, Segment
from builder.geometry.vector import Point

LEAN, RISE = 0.38, 0.46
"""How far a mm of y goes to the right and up. Common practice of parallel drawings, no source."""


def oblique(point: Point, height: float = 0.0) -> Point:
    """A point of the plan at a height, as seen. All in mm."""
    x, y = point
    return x + LEAN * y, RISE * y + height


def oblique_path(segments: Iterable[Segment], height: float, tolerance: float = 0.05) -> tuple[Line, ...]:
    """Segments of the plan at a height, as seen, by straight lines.

    tolerance : how far a chord may leave an arc [mm]; the projection never lengthens it
    """
    found: list[Line] = []
    for segment in segments:
        points = segment.to_polyline(tolerance) if isinstance(segment, Arc) else [segment.start, segment.end]
        found += (Line(a, b) for a, b in pairwise([oblique(point, height) for point in points]) if a != b)
    return tuple(found)
