"""What the machine runs for a step, from its geometry and the settings of its operation."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping

from builder.computing.cut_path import cut_contours, mark_areas
from builder.computing.cut_time import chop_time, contour_time, cycle_time, mark_time
from builder.computing.pace_value import pace_value
from builder.computing.sew_time import seam_time, tack_time
from builder.computing.step_bench import Bench
from builder.geometry import FeatureShape, Goods, PartShape, measured_speed, seam_goods
from builder.model import Bartack, Dart, FeatureRef, Pleat, Seam, Step, Zip, cut_with, find_feature

_NO_GOODS = Goods()


def machine_run(step: Step, bench: Bench) -> float | None:
    """Seconds the machine runs for a step each time it is done, None when no model times such work there."""
    work, names = step.work
    model = bench.kind.model
    if not model or not work or bench.station.pace.missing(bench.kind.needs):
        return None
    if work == "sew":
        return _sew_run(names, bench)
    seconds = [one for name in names if (one := _run_of(work, name, bench)) is not None]
    return sum(seconds) if seconds else None


def _run_of(work: str, name: str, bench: Bench) -> float | None:
    if work == "cut":
        return _cut_run(name, bench)
    named = bench.feature(name)
    if named is None:
        return None
    ref, feature = named
    if work == "mark" and bench.kind.model == "contour":
        return _mark_run(ref, feature, bench)
    if work == "set" and bench.kind.model == "cycle":
        return cycle_time(max(len(feature.points), 1), bench.station.pace)
    return None


def _sew_run(names: tuple[str, ...], bench: Bench) -> float | None:
    """All paths of a step: each from start to finish, the work moved on between them.

    Two needles sew two rows in one pass; each row is a seam of its own on the part.
    """
    goods = _goods(bench)
    passes = [one for name in names for one in _sewn(name, goods, bench)]
    if not passes:
        return None
    rows = min(bench.setting("rows", 1.0), float(len(names))) if len(names) > 1 else 1.0
    moves = math.ceil(len(passes) / rows) - 1
    return sum(passes) / rows + moves * pace_value(bench.station.pace.reposition)


def _sewn(name: str, goods: Mapping[FeatureRef, Goods], bench: Bench) -> Iterator[float]:
    """Seconds of each path of a seam or box, or of a whole row of bartacks."""
    named = bench.feature(name)
    if named is None:
        return
    ref, feature = named
    pace = bench.station.pace
    speed = _speed(feature, goods.get(ref, _NO_GOODS), bench)
    if bench.kind.model == "tack" and isinstance(feature.feature, Bartack):
        yield tack_time(feature.feature.bartack, feature.feature.pieces, pace, speed)
        return
    stitch = bench.setting("stitch length", 0.0)
    if bench.kind.model != "seam" or stitch <= 0:
        return
    tack, ends = 0, 0
    if isinstance(feature.feature, Pleat | Zip):
        return  # pleats are folded, a zip is sewn in by seams of its own
    if isinstance(feature.feature, Seam | Dart):
        tack = feature.feature.tack_stitches
        ends = feature.feature.tack_ends
    yield from (seam_time(path, stitch, tack, ends, pace, speed) for path in feature.paths)


def _goods(bench: Bench) -> Mapping[FeatureRef, Goods]:
    """What each seam goes through; worked out only where a measured speed asks for it."""
    if not any(one.thickest is not None or one.layers is not None for one in bench.station.seam_speeds):
        return {}
    return seam_goods(bench.name, bench.model, bench.book, bench.values)


def _speed(feature: FeatureShape, goods: Goods, bench: Bench) -> float:
    """Stitches a second: as set, but no faster than this plant measured for such a seam."""
    measured = measured_speed(feature, bench.station, goods)
    return min(bench.setting("speed", math.inf), float(measured.top_speed.value) if measured is not None else math.inf)


def _cut_run(name: str, bench: Bench) -> float | None:
    shape = bench.book.shape(name, bench.values)
    if shape is None:
        return None
    pieces = bench.operation.makes.get(name, 1)
    seconds = _one_cut(name, shape, bench)
    return None if seconds is None else pieces * seconds


def _one_cut(name: str, shape: PartShape, bench: Bench) -> float | None:
    pace, model, layers = bench.station.pace, bench.kind.model, max(int(bench.setting("layers", 1)), 1)
    if model == "chop":
        left, _, right, _ = shape.bounds
        feed, dwell = bench.setting("feed speed", 0.0) or None, bench.setting("dwell", 0.0) or None
        return chop_time(right - left, int(bench.setting("lanes", 1)), pace, feed, dwell)
    if model == "cycle":
        return cycle_time(1 / layers, pace)
    speed = bench.setting("speed", 0.0)
    if model != "contour" or speed <= 0:
        return None
    contours = cut_contours(shape, features_cut(name, shape, bench), bench.setting("kerf", 0.0))
    lead = bench.setting("lead in", 0.0)
    return contour_time(contours, speed, int(bench.setting("passes", 1)), pace, lead) / layers


def features_cut(name: str, shape: PartShape, bench: Bench) -> list[FeatureShape]:
    """Holes and notches cut with an outline: not those that a step of their own marks, punches or sets."""
    state = bench.model.states.get(name)
    named = {find_feature(one, bench.homes) for step in bench.operation.steps for one in step.work[1]}
    worked = state.worked if state is not None else frozenset()
    return [
        shape.features[one]
        for one in cut_with(shape.part)
        if one in shape.features and (shape.name, one) in worked and FeatureRef(shape.name, one) not in named
    ]


def _mark_run(ref: FeatureRef, feature: FeatureShape, bench: Bench) -> float | None:
    """A feature marked line by line on each piece; None where the operation doesn't set how."""
    speed, spacing = bench.setting("raster speed", 0.0), bench.setting("line spacing", 0.0)
    areas = mark_areas(feature)
    if speed <= 0 or spacing <= 0 or not areas:
        return None
    return bench.operation.makes.get(ref.part, 1) * mark_time(areas, spacing, speed, bench.station.pace)
