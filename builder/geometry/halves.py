"""A part divided by a fold across it: what stays, what moves over, and how that comes to lie.

The path of a fold that says what `moves` runs so that what stays lies to its left.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import pairwise

from builder.geometry.measure import carriers_cross
from builder.geometry.outline import Outline
from builder.geometry.path import Path
from builder.geometry.placing import Placing
from builder.geometry.segment import Line, Segment
from builder.geometry.shape import FeatureShape, PartShape
from builder.geometry.vector import TOUCH, Point, add, angle_deg, cross, distance, left, lerp, sub
from builder.model import Fold

_CHORD_MM = 0.05
_ON_LINE_MM = 1e-6


def fold_across(feature: FeatureShape) -> Line | None:
    """The line of a fold across the part that says what moves, what stays to its left; None for any other feature."""
    run = feature.paths[0].runs[0] if feature.paths and len(feature.paths[0].runs) == 1 else None
    across = isinstance(feature.feature, Fold) and feature.feature.fold == "line" and feature.feature.moves is not None
    if across and isinstance(run, Line):
        return run
    return None


def staying(feature: FeatureShape, outline: Outline) -> Point:
    """A point of what a fold leaves where it is: as it says, else the middle of the part."""
    line = fold_across(feature)
    return outline.centroid() if line is None else add(line.point_at(0.5), left(line.tangent_at(0.5)))


def lies_left(line: Line, point: Point) -> bool:
    """Is the point to the left of the line that goes on both ways, or on it?"""
    return cross(sub(line.end, line.start), sub(point, line.start)) >= -_ON_LINE_MM * line.length


def mirrored_over(line: Line) -> Placing:
    """What is folded over a line, as one motion: a reflection."""
    turn = 2 * angle_deg(sub(line.end, line.start)) + 180
    x, y = Placing(turn_deg=turn, flipped=True).point(line.start)
    return Placing(line.start[0] - x, line.start[1] - y, turn % 360, True)


def left_half(shape: PartShape, line: Line, without: str = "") -> PartShape | None:
    """The part to the left of a line, its features with it; None when nothing lies there.

    without : a feature left out: the fold itself
    """
    outline = left_outline(shape.outline, line)
    if outline is None:
        return None
    halves = (_left_feature(one, line) for name, one in shape.features.items() if name != without)
    return replace(shape, outline=outline, features={one.name: one for one in halves if one is not None})


def left_outline(outline: Outline, line: Line) -> Outline | None:
    """An area to the left of a line, None when there is none; its arcs as chords, its edges without names."""
    points = [point for segment in outline.segments for point in segment.to_polyline(_CHORD_MM)[:-1]]
    kept: list[Point] = []
    for before, here in zip([*points[-1:], *points[:-1]], points, strict=True):
        was, now = _off(line, before), _off(line, here)
        if (was >= 0) != (now >= 0):
            kept.append(lerp(before, here, was / (was - now)))
        if now >= 0:
            kept.append(here)
    sides = [Line(a, b) for a, b in zip(kept, [*kept[1:], *kept[:1]], strict=True) if distance(a, b) > TOUCH]
    found = Outline(tuple(sides)) if len(sides) > 2 else None
    return found if found is not None and found.area() > TOUCH else None


def _off(line: Line, point: Point) -> float:
    """Distance to the left of the line, mm; 0 on it."""
    off = cross(sub(line.end, line.start), sub(point, line.start)) / line.length
    return 0.0 if abs(off) < _ON_LINE_MM else off


def _left_feature(one: FeatureShape, line: Line) -> FeatureShape | None:
    points = tuple(point for point in one.points if lies_left(line, point))
    if one.kind == "notch":
        # A notch is cut as a whole: it goes with the place on the edge where it stands.
        return one if points else None
    regions = tuple(half for region in one.regions if (half := left_outline(region, line)) is not None)
    paths = tuple(path for whole in one.paths for path in _left_paths(whole, line))
    if not (points or regions or paths):
        return None
    return replace(one, points=points, regions=regions, paths=paths)


def _left_paths(path: Path, line: Line) -> Iterator[Path]:
    runs: list[Segment] = []
    for piece in (piece for run in path.runs for piece in _pieces(run, line)):
        inside = lies_left(line, piece.point_at(0.5))
        if runs and not inside:
            yield Path(tuple(runs))
            runs = []
        if inside:
            runs.append(piece)
    if runs:
        yield Path(tuple(runs))


def _pieces(run: Segment, line: Line) -> Sequence[Segment]:
    """A run cut where it crosses the line."""
    found = {round(run.share_of(point), 9) for point in carriers_cross(run, line)}
    # A crossing at an end, or on the carrier beyond it, cuts nothing.
    shares = sorted(share for share in found if TOUCH < share < 1 - TOUCH)
    return [run.part(first, last) for first, last in pairwise([0.0, *shares, 1.0])] if shares else [run]
