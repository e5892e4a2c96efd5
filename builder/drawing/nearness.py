"""How far a point is from a polyline, asked of the same few lines by many points. Printed millimetres."""

from __future__ import annotations

import math
from collections.abc import Sequence
from itertools import pairwise

from builder.drawing.svg import XY

Pieces = list[tuple[float, float, float, float, float]]
"""The straight pieces of a polyline: start, way to the end, and the square of its length."""


def pieces_of(points: Sequence[XY]) -> Pieces:
    """A polyline as pieces."""
    found = []
    for (ax, ay), (bx, by) in pairwise(points):
        dx, dy = bx - ax, by - ay
        found.append((ax, ay, dx, dy, dx * dx + dy * dy))
    return found


def distance(point: XY, pieces: Pieces) -> float:
    """Distance of a point from the nearest piece, infinite when there is none."""
    x, y = point
    least = math.inf
    for ax, ay, dx, dy, size in pieces:
        px, py = x - ax, y - ay
        share = px * dx + py * dy
        if share > 0:
            share = share / size if share < size else 1.0
            px -= dx * share
            py -= dy * share
        square = px * px + py * py
        if square < least:
            least = square
    return math.sqrt(least)
