"""How large the work of a step is: the length and the corners of what it works on, in one size."""

from __future__ import annotations

import math
from dataclasses import dataclass

from builder.computing.sew_time import SMOOTH_CORNER_DEG
from builder.computing.step_bench import Bench
from builder.geometry import FeatureShape, PartShape, Path
from builder.model import Step, Strip


@dataclass(frozen=True, slots=True)
class Extent:
    """Length [mm] and corners of a step's work; None where nothing in the files says it."""

    length_mm: float | None
    corners: float | None

    def of(self, variable: str) -> float | None:
        """Its `length` or its `corners`."""
        return {"length": self.length_mm, "corners": self.corners}[variable]


NOWHERE = Extent(None, None)


def step_extent(step: Step, bench: Bench) -> Extent:
    """Sewn, folded or marked: the length of the lines, and the turns on the way. Laid on: the longest side of what is
    laid, and its corners. Cut: the outline. Handwork without a feature: the longest side of the part the step shows,
    else of what the operation makes, and that part's corners.

    Several features of one step count together. Source: ours.
    """
    work, names = step.work
    if not work:
        return _piece(_handled(step, bench), bench)
    extents = [_cut(name, bench) if work == "cut" else _feature(name, bench) for name in names]
    known = [one for one in extents if one.length_mm is not None]
    if not known:
        return NOWHERE
    return Extent(math.fsum(one.length_mm or 0.0 for one in known), math.fsum(one.corners or 0.0 for one in known))


def _handled(step: Step, bench: Bench) -> str:
    if step.part_shown is not None:
        return step.part_shown.name
    return next(iter(bench.operation.makes), "")


def _piece(name: str, bench: Bench) -> Extent:
    shape = bench.book.shape(name, bench.values) if name else None
    return _sides(shape) if shape is not None else NOWHERE


def _sides(shape: PartShape) -> Extent:
    left, bottom, right, top = shape.bounds
    return Extent(max(right - left, top - bottom), _turns(Path(shape.outline.segments)))


def _cut(name: str, bench: Bench) -> Extent:
    shape = bench.book.shape(name, bench.values)
    return NOWHERE if shape is None else Extent(shape.outline.perimeter(), _turns(Path(shape.outline.segments)))


def _feature(name: str, bench: Bench) -> Extent:
    named = bench.feature(name)
    return NOWHERE if named is None else _extent_of(named[1], bench)


def _extent_of(feature: FeatureShape, bench: Bench) -> Extent:
    if isinstance(feature.feature, Strip):
        return _piece(feature.feature.strip, bench)
    if not feature.paths:
        return NOWHERE
    return Extent(math.fsum(path.length for path in feature.paths), math.fsum(_turns(path) for path in feature.paths))


def _turns(path: Path) -> float:
    """Corners between its runs; where a closed path begins, one more if it turns there."""
    angles = [*path.corner_angles()]
    if path.closed and len(path.runs) > 1:
        angles += Path((path.runs[-1], path.runs[0])).corner_angles()
    return float(sum(abs(angle) > SMOOTH_CORNER_DEG for angle in angles))
