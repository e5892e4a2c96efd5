"""Thread an operation sews, step by step, from its geometry in one size, its settings and what it sews through.

Where a fact is missing (a thickness, the bight of an overedge) the thread is unknown and only the seam's length is
told: half a sum would look like a whole one.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from builder.computing.thread_use import (
    GEOMETRIC,
    OVEREDGE,
    ThreadUse,
    bartack_thread,
    ratio_factors,
    sampled_factors,
    tack_thread,
    tail_thread,
    thread_factors,
)
from builder.geometry import FeatureShape, Sewn, ShapeBook, sewn_by, stitches_per_run
from builder.model import (
    STITCHES,
    Bartack,
    Dart,
    Operation,
    PlantModel,
    Seam,
    SettingValue,
    Station,
    Values,
    settings_of,
)


@dataclass(frozen=True, slots=True)
class SewnThread:
    """What one feature takes of thread in one run of the operation.

    seam_mm : length of its path, 0 for a bartack
    use     : None where it can't be worked out
    rows    : rows its step sews in one pass, each with threads of its own
    """

    step: int
    feature: FeatureShape
    seam_mm: float
    use: ThreadUse | None
    rows: int


@dataclass(frozen=True, slots=True)
class _Maker:
    """An operation's settings and station, and the way from them to thread."""

    model: PlantModel
    operation: Operation
    station: Station | None
    stitch: str
    stitch_mm: float
    bight_mm: float

    def thread(self, sewn: Sewn) -> ThreadUse | None:
        """The thread of a feature, with its tacks and ends."""
        if isinstance(sewn.feature.feature, Bartack):
            return self._bartacks(sewn, sewn.feature.feature)
        found = ThreadUse()
        for path in sewn.feature.paths:
            if self.stitch_mm <= 0:
                return None
            # The needle is down at every corner, so stitches are a little shorter than set.
            factors = self._factors(sum(stitches_per_run(path, self.stitch_mm)) / path.length, sewn)
            if factors is None:
                return None
            found = found.plus(factors.times(path.length)).plus(self._ends(factors, sewn))
        return found

    def _factors(self, stitches_per_mm: float, sewn: Sewn) -> ThreadUse | None:
        sample = self.operation.thread_sample
        if sample is not None:
            return sampled_factors(float(sample.needle), float(sample.bobbin))
        if self.stitch not in GEOMETRIC:
            return ratio_factors(self.stitch)
        thickness = _thickness(sewn, self.model)
        if thickness is None or (self.stitch in OVEREDGE and self.bight_mm <= 0):
            return None
        return thread_factors(self.stitch, stitches_per_mm, thickness, self.bight_mm)

    def _ends(self, factors: ThreadUse, sewn: Sewn) -> ThreadUse:
        """Tacks of a seam, and the thread left hanging at its ends."""
        seam = sewn.feature.feature
        found = self._tails()
        if isinstance(seam, Seam | Dart):
            found = found.plus(tack_thread(factors, seam.tack_stitches, self.stitch_mm, seam.tack_ends))
        return found

    def _tails(self) -> ThreadUse:
        tail = self.station.tail if self.station is not None else None
        return (
            tail_thread(self.stitch, float(tail.value)) if tail is not None and self.stitch in STITCHES else ThreadUse()
        )

    def _bartacks(self, sewn: Sewn, tack: Bartack) -> ThreadUse | None:
        thickness = _thickness(sewn, self.model)
        if thickness is None:
            return None
        length, width = sewn.feature.size
        one = bartack_thread(tack.bartack, length, width, thickness)
        return one.plus(self._tails()).times(max(len(sewn.feature.points), 1))


def thread_sewn(model: PlantModel, book: ShapeBook, name: str, values: Values) -> Iterator[SewnThread]:
    """Each feature one run of an operation sews, with its thread."""
    settings = settings_of(model, name)
    operation = model.operations[name]
    maker = _Maker(
        model,
        operation,
        model.stations.get(operation.station),
        # A bartacker's stitch may be left unsaid: it makes a lockstitch.
        settings["stitch"].words if "stitch" in settings else "304",
        _aimed(settings.get("stitch length")),
        _aimed(settings.get("cut width")),
    )
    rows = settings["rows"].count or 1 if "rows" in settings else 1
    for sewn in sewn_by(model, book, name, values):
        tack = isinstance(sewn.feature.feature, Bartack)
        seam = 0.0 if tack else sum(path.length for path in sewn.feature.paths)
        together = min(rows, len(operation.steps[sewn.step].sew))
        yield SewnThread(sewn.step, sewn.feature, seam, maker.thread(sewn), together)


def all_thread(sewn: tuple[SewnThread, ...], a_row: bool = False) -> ThreadUse | None:
    """The thread of all features together; None where that of one is unknown, or nothing is sewn.

    a_row : of one of the rows that are sewn in one pass, as one bobbin of several gives it
    """
    total = ThreadUse()
    for one in sewn:
        if one.use is None:
            return None
        total = total.plus(one.use.times(1 / one.rows) if a_row else one.use)
    return total if sewn else None


def thread_names(model: PlantModel, name: str) -> tuple[str, str] | None:
    """Materials of the needle threads, and of the bobbin or looper threads: the same one where only one is set."""
    settings = settings_of(model, name)
    if "thread" not in settings:
        return None
    needle = settings["thread"].words
    return needle, settings["bobbin thread"].words if "bobbin thread" in settings else needle


def _thickness(sewn: Sewn, model: PlantModel) -> float | None:
    """Of the thickest stack, mm; None where a layer's is unknown, or no layer is known at all."""
    found: list[float] = []
    for stack in sewn.stacks:
        materials = [model.material_under(layer) for layer in stack]
        layers = [one[1].under_foot if one is not None else None for one in materials]
        if None in layers:
            return None
        found.append(float(sum(one for one in layers if one is not None)))
    return max(found, default=0.0) or None


def _aimed(value: SettingValue | None) -> float:
    return float(value.nominal) if value is not None and value.nominal is not None else 0.0
