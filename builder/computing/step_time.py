"""Basic time of each step of an operation: study readings first, then the machine model and the typed hand work.

At a station the operator paces, a reading covers the whole step. At one that paces itself, a reading of a step the
machine does is the machine's run, never rated, and the hand work beside it is what `time:` says.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from fractions import Fraction

from builder.computing.machine_time import (
    chop_time,
    contour_time,
    cut_contours,
    cycle_time,
    seam_time,
    tack_time,
)
from builder.computing.study_time import basic_time
from builder.geometry import FeatureShape, PartShape, ShapeBook, measured_speed
from builder.model import (
    EACH_PIECE,
    KINDS,
    NO_SOURCE,
    Bartack,
    Estimate,
    Homes,
    MachineKind,
    Operation,
    PlantModel,
    Seam,
    SettingValue,
    Station,
    Step,
    StepTime,
    Values,
    cut_with,
    find_feature,
    settings_of,
)


@dataclass(frozen=True, slots=True)
class Bench:
    """What the times of one operation are computed from: the operation at its station, in one size.

    homes   : where each feature name leads
    studied : the dimensions its study was taken with, when they are others than `values`
    """

    model: PlantModel
    book: ShapeBook
    name: str
    values: Values
    operation: Operation
    station: Station
    kind: MachineKind
    settings: Mapping[str, SettingValue]
    homes: Homes
    studied: Values | None = None

    def setting(self, name: str, default: float) -> float:
        """A setting's nominal value in base units, or its count; `default` when it isn't typed."""
        one = self.settings.get(name)
        if one is None:
            return default
        if one.count is not None:
            return float(one.count)
        return float(one.nominal) if one.nominal is not None else default


def bench_of(
    model: PlantModel, book: ShapeBook, name: str, values: Values, studied: Values | None = None
) -> Bench | None:
    """The bench of an operation, None when its station or kind is unknown."""
    operation = model.operations[name]
    station = model.stations.get(operation.station)
    if station is None or station.kind not in KINDS:
        return None
    kind, settings = KINDS[station.kind], settings_of(model, name)
    return Bench(model, book, name, values, operation, station, kind, settings, model.homes[name], studied)


def step_times(bench: Bench) -> Iterator[StepTime]:
    """Times of all steps in their order."""
    for step in bench.operation.steps:
        yield _step_time(step, bench)


def _step_time(step: Step, bench: Bench) -> StepTime:
    plant = bench.model.plant
    bundle = bench.operation.bundle or plant.bundle
    share = (step.per or EACH_PIECE).share(plant.batch, bundle)
    run = modelled = machine_run(step, bench)
    hand, hand_estimated, hand_source = _hand(step, bench)
    study = bench.model.study_of(bench.name)
    readings = study.of_step(step.step) if study is not None else ()
    run_estimated = run if run and bench.station.pace.calibrated is None else 0.0
    sources = [source for source in (hand_source, "model" if run is not None else "") if source]
    if readings:
        self_paced = bench.kind.paced == "machine" and modelled is not None
        basic = float(basic_time([(r.seconds, r.rating) for r in readings], rated=not self_paced))
        if bench.studied is not None and (then := machine_run(step, replace(bench, values=bench.studied))):
            return _carried_over(step, bench, basic, then, share, len(readings))
        if self_paced:
            run, run_estimated = basic, 0.0
            sources = ["study", *([hand_source] if hand_source else [])]
        else:
            hand, hand_estimated, run, run_estimated, sources = basic, 0.0, None, 0.0, ["study"]
    return StepTime(
        step.step,
        hand,
        run or 0.0,
        hand_estimated,
        run_estimated,
        share,
        " + ".join(sources) or NO_SOURCE,
        len(readings),
        step.during or "",
        modelled,
    )


def _carried_over(step: Step, bench: Bench, basic: float, then: float, share: Fraction, readings: int) -> StepTime:
    """Readings taken with other dimensions: the manual part is kept, the machine's scaled by model(new)/model(then).

    basic : basic time of the readings [s]; then : the model's run for the dimensions of the study [s]
    All of it counts as estimated until the new dimensions are studied. Source: ours.
    """
    now = machine_run(step, bench) or 0.0
    if bench.kind.paced == "machine":
        hand, hand_estimated, source = _hand(step, bench)
        run = basic * now / then
        sources = " + ".join(one for one in ("study", "carried over", source) if one)
        return StepTime(step.step, hand, run, hand_estimated, run, share, sources, readings, step.during or "")
    machine = min(then, basic)
    seconds = basic - machine + machine * now / then
    return StepTime(step.step, seconds, 0.0, seconds, 0.0, share, "study + carried over", readings, step.during or "")


def _hand(step: Step, bench: Bench) -> tuple[float, float, str]:
    """Hand work of a step as typed: seconds, seconds that are estimated, source."""
    if step.time is None:
        return 0.0, 0.0, ""
    if isinstance(step.time, Estimate):
        seconds = float(step.time.seconds)
        return seconds, seconds, "estimate"
    element = bench.model.elements.get(step.time.name)
    if element is None:
        return 0.0, 0.0, ""
    seconds = float(step.time.count * element.time.value)
    return seconds, seconds if element.basis == "estimate" else 0.0, "element"


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
