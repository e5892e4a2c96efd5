"""Folds along an edge, such as a hem: what is left of the outline once they are made."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from builder.geometry import FeatureShape, Line, Outline, PartShape, Point, beyond_fold
from builder.model import Fold

_FLAT_MM2 = 1e-4


def edge_folds(shape: PartShape) -> Iterator[FeatureShape]:
    """Folds along an edge, which change the outline once they are made."""
    for one in shape.features.values():
        if isinstance(one.feature, Fold) and one.feature.fold != "line":
            yield one


def folded_along(outline: Outline, folds: Sequence[FeatureShape]) -> Outline:
    """The outline without what is folded under."""
    for fold in folds:
        points = _without_spikes(beyond_fold(outline.segments, fold.paths[0].runs[0], outline.centroid()))
        sides = zip(points, (*points[1:], points[0]), strict=True)
        outline = Outline(tuple(Line(a, b) for a, b in sides if a != b))
    return outline


def _without_spikes(points: tuple[Point, ...]) -> tuple[Point, ...]:
    """A ring without corners it only goes to and comes back from: what a fold cut off beside a step of the edge."""
    found = list(points)
    number = 0
    while len(found) > 3 and number < len(found):
        (ax, ay), (bx, by), (cx, cy) = found[number - 1], found[number], found[(number + 1) % len(found)]
        there, back = (bx - ax, by - ay), (cx - bx, cy - by)
        flat = abs(there[0] * back[1] - there[1] * back[0]) < _FLAT_MM2
        if flat and there[0] * back[0] + there[1] * back[1] <= 0:
            found.pop(number)
            number = max(0, number - 1)
        else:
            number += 1
    return tuple(found)
