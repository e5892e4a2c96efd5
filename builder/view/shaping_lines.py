"""Where the own dimensions of pleats, darts, zips and elastic are drawn."""

from __future__ import annotations

from collections.abc import Sequence

from builder.geometry import FeatureShape, Line, Path, Point
from builder.model import Pleat

_DOWN, _RIGHT = (0.0, -1.0), (1.0, 0.0)


def shaping_line(feature: FeatureShape, dimension: str) -> tuple[Point, Point, Point] | None:
    """Start, end and the direction away of an own dimension of a pleat, a dart, a zip or elastic, None without one."""
    if feature.kind == "pleat":
        return _pleat_line(feature, dimension)
    if feature.kind == "dart" and dimension == "dart":
        start, end = feature.paths[0].start, feature.marks[0][1].start
        return start, end, Line(feature.paths[0].end, feature.marks[1][1].start).tangent_at(0)
    if feature.kind == "dart" and dimension == "depth":
        fold = feature.marks[1][1]
        other = feature.marks[0][1].start
        return fold.start, fold.end, Line(fold.start, other).tangent_at(0)
    if dimension == "length":
        path = feature.paths[0]
        dx, dy = Line(path.start, path.end).tangent_at(0)
        return path.start, path.end, (dy, -dx)
    return None


def _pleat_line(feature: FeatureShape, dimension: str) -> tuple[Point, Point, Point] | None:
    marks = feature.marks
    if dimension == "pleat":
        outer, inner = _first(marks, "pleat outer"), _first(marks, "pleat inner")
        return outer.start, inner.start, Line(outer.end, outer.start).tangent_at(0)
    if dimension == "length":
        outer = _first(marks, "pleat outer")
        return outer.start, outer.end, _DOWN if outer.start[1] == outer.end[1] else _RIGHT
    if dimension == "pitch" and isinstance(feature.feature, Pleat) and feature.feature.count > 1:
        per = sum(role == "pleat outer" for role, _ in marks) // feature.feature.count
        all_outer = [path for role, path in marks if role == "pleat outer"]
        return all_outer[0].end, all_outer[per].end, Line(all_outer[0].start, all_outer[0].end).tangent_at(0)
    return None


def _first(marks: Sequence[tuple[str, Path]], role: str) -> Path:
    return next(path for one, path in marks if one == role)
