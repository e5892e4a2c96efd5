"""Seams that studies have timed, by station and by how they are kept on their line: what a calibration is fitted to."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from builder.computing.calibrate import Calibration, TimedSeam, calibrate
from builder.computing.pace_value import pace_value
from builder.computing.sew_time import leg_lengths, whole_stitches_mm
from builder.computing.step_bench import Bench, bench_of
from builder.geometry import ShapeBook
from builder.model import PlantModel, Results, Seam, Step, StudySummary, Values


@dataclass(frozen=True, slots=True)
class StationFit:
    """What the studied seams of a station, kept on their line in one way, say of its constants.

    held  : one of the ways, '' where a seam doesn't say
    fit   : None where nothing can be said; `refusal` says why
    """

    station: str
    held: str
    seams: int
    fit: Calibration | None
    refusal: str


def station_fits(model: PlantModel, book: ShapeBook, results: Results, values: Values) -> Iterator[StationFit]:
    """Constants from the studies of each sewing station the operator paces, next to which the typed ones stand.

    values : dimensions of the reference size; a study of another size, or whose conditions have changed, is left out
    """
    found: dict[tuple[str, str], list[TimedSeam]] = {}
    for name, summary in results.studies.items():
        bench = bench_of(model, book, name, values)
        if bench is None or bench.kind.model != "seam" or bench.kind.paced != "operator":
            continue
        for held, seam in _timed(bench, summary, results):
            found.setdefault((bench.operation.station, held), []).append(seam)
    for (station, held), seams in found.items():
        pace = model.stations[station].pace
        up, down = pace_value(pace.acceleration), pace_value(pace.braking)
        if up <= 0 or down <= 0:
            yield StationFit(station, held, len(seams), None, "acceleration and braking are not typed")
            continue
        fit, refusal = calibrate(seams, up, down)
        yield StationFit(station, held, len(seams), fit, refusal)


def _timed(bench: Bench, summary: StudySummary, results: Results) -> Iterator[tuple[str, TimedSeam]]:
    """Steps that sew one path, from start to finish, and were read as they are sewn now."""
    time = results.operations.get((bench.name, "", ""))
    for step in bench.operation.steps:
        study, now = summary.step(step.step), time.step(step.step) if time is not None else None
        if study is None or now is None or "carried over" in now.source or "stale" in now.source:
            continue
        seam = _seam(step, study.basic_s - (now.typed_s or 0.0), bench)
        if seam is not None:
            yield seam


def _seam(step: Step, seconds: float, bench: Bench) -> tuple[str, TimedSeam] | None:
    """The one path a step sews; typed hand work beside it is taken off its reading, the rest stays in."""
    kind, names = step.work
    stitch = bench.setting("stitch length", 0.0)
    named = bench.feature(names[0]) if kind == "sew" and len(names) == 1 else None
    if named is None or len(named[1].paths) != 1 or stitch <= 0 or seconds <= 0:
        return None
    feature = named[1]
    legs = tuple(whole_stitches_mm(length, stitch) for length in leg_lengths(feature.paths[0]))
    held, tacks = "", tuple[float, ...]()
    if isinstance(feature.feature, Seam):
        held = feature.feature.held or ""
        tacks = (feature.feature.tack_stitches * stitch,) * (2 * feature.feature.tack_ends)
    return held, TimedSeam(legs, len(legs) - 1, tacks, stitch, seconds)
