"""What the machine runs for a step, from its geometry and the settings of its operation."""

from __future__ import annotations

import math

from builder.computing.machine_time import (
    chop_time,
    contour_time,
    cut_contours,
    cycle_time,
    seam_time,
    tack_time,
)
from builder.computing.step_bench import Bench
from builder.geometry import FeatureShape, PartShape, measured_speed
from builder.model import Bartack, Seam, Step, cut_with, find_feature


def machine_run(step: Step, bench: Bench) -> float | None:
    """Seconds the machine runs for a step each time it is done, None when no model times such work there."""
    work, names = step.work
    model = bench.kind.model
    if not model or not work or bench.station.pace.missing(bench.kind.needs):
        return None
    total, found = 0.0, False
    for name in names:
        seconds = _run_of(work, name, bench)
        if seconds is not None:
            total, found = total + seconds, True
    # Two needles sew two rows in one pass; each row is a seam of its own on the part.
    rows = bench.setting("rows", 1.0) if work == "sew" and len(names) > 1 else 1.0
    return total / min(rows, float(len(names))) if found else None


def _run_of(work: str, name: str, bench: Bench) -> float | None:
    if work == "cut":
        return _cut_run(name, bench)
    ref = find_feature(name, bench.homes)
    shape = bench.book.shape(ref.part, bench.values) if ref is not None else None
    feature = shape.features.get(ref.feature) if shape is not None and ref is not None else None
    if feature is None:
        return None
    if work == "sew":
        return _sew_run(feature, bench)
    if work == "set" and bench.kind.model == "cycle":
        return cycle_time(max(len(feature.points), 1), bench.station.pace)
    return None


def _sew_run(feature: FeatureShape, bench: Bench) -> float | None:
    pace = bench.station.pace
    speed = _speed(feature, bench)
    if bench.kind.model == "tack" and isinstance(feature.feature, Bartack):
        return tack_time(feature.feature.bartack, feature.feature.count, pace, speed)
    stitch = bench.setting("stitch length", 0.0)
    if bench.kind.model != "seam" or not feature.paths or stitch <= 0:
        return None
    tack, ends = 0, 0
    if isinstance(feature.feature, Seam):
        tack = feature.feature.tack_stitches
        ends = {"start and end": 2, "start": 1, "end": 1, "none": 0}[feature.feature.tack]
    return sum(seam_time(path, stitch, tack, ends, pace, speed) for path in feature.paths)


def _speed(feature: FeatureShape, bench: Bench) -> float:
    """Stitches a second: as set, but no faster than this plant measured for such a seam."""
    measured = measured_speed(feature, bench.station)
    return min(bench.setting("speed", math.inf), float(measured.top_speed.value) if measured is not None else math.inf)


def _cut_run(name: str, bench: Bench) -> float | None:
    shape = bench.book.shape(name, bench.values)
    if shape is None:
        return None
    pieces = bench.operation.makes.get(name, 1)
    seconds = _one_cut(shape, bench)
    return None if seconds is None else pieces * seconds


def _one_cut(shape: PartShape, bench: Bench) -> float | None:
    pace, model = bench.station.pace, bench.kind.model
    if model == "chop":
        left, _, right, _ = shape.bounds
        feed, dwell = bench.setting("feed speed", 0.0) or None, bench.setting("dwell", 0.0) or None
        return chop_time(right - left, int(bench.setting("lanes", 1)), pace, feed, dwell)
    if model == "cycle":
        return cycle_time(1, pace)
    speed = bench.setting("speed", 0.0)
    if model != "contour" or speed <= 0:
        return None
    cut = [shape.features[one] for one in cut_with(shape.part) if one in shape.features]
    layers = max(int(bench.setting("layers", 1)), 1)
    return contour_time(cut_contours(shape, cut), speed, int(bench.setting("passes", 1)), pace) / layers
