"""Features cut off where a seam has closed their part: what lies in the allowance is inside by now."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import pairwise

from builder.geometry.halves import left_outline, lies_left
from builder.geometry.measure import boundary_meets
from builder.geometry.outline import Outline
from builder.geometry.path import Path
from builder.geometry.segment import Line, Segment
from builder.geometry.shape import FeatureShape
from builder.geometry.vector import TOUCH, Point

_BESIDE_MM = 1.0
_TOUCHING_MM = 1e-3
_SAME = 9


def trimmed(one: FeatureShape, outline: Outline, closing: Sequence[Path]) -> FeatureShape | None:
    """A seam, a box or a strip without what lies in the allowance of closing seams; None when nothing is left.

    outline : the part's edge with the seams; other features are kept as they are
    """
    if one.kind not in ("seam", "box", "strip"):
        return one
    paths = tuple(piece for path in one.paths for piece in _inside(path, outline))
    regions = tuple(kept for region in one.regions if (kept := _region(region, outline, closing)) is not None)
    return replace(one, paths=paths, regions=regions) if paths or regions else None


def _inside(path: Path, outline: Outline) -> Iterator[Path]:
    runs: list[Segment] = []
    for piece in (piece for run in path.runs for piece in _cut(run, outline)):
        within = outline.contains(piece.point_at(0.5), _TOUCHING_MM)
        if runs and not within:
            yield Path(tuple(runs))
            runs = []
        if within:
            runs.append(piece)
    if runs:
        yield Path(tuple(runs))


def _cut(run: Segment, outline: Outline) -> list[Segment]:
    found = {round(run.share_of(point), _SAME) for point in boundary_meets(outline, run)}
    shares = [0.0, *sorted(share for share in found if TOUCH < share < 1 - TOUCH), 1.0]
    return [run.part(first, last) for first, last in pairwise(shares)] if len(shares) > 2 else [run]


def _region(region: Outline, outline: Outline, closing: Sequence[Path]) -> Outline | None:
    """The area cut along each straight stretch of seam that runs past all of it."""
    kept: Outline | None = region
    for line in (run for path in closing for run in path.runs if isinstance(run, Line)):
        if kept is None:
            return None
        inward = line if lies_left(line, outline.centroid()) else Line(line.end, line.start)
        beyond = [point for point in kept.corners() if not lies_left(inward, point)]
        if beyond and all(_passed(inward, point) for point in beyond):
            kept = left_outline(kept, inward)
    return kept


def _passed(line: Line, point: Point) -> bool:
    """Does the stretch of seam run past a point, not end before it?"""
    slack = _BESIDE_MM / line.length
    return -slack <= line.share_of(point) <= 1 + slack
