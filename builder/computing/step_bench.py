"""The bench of an operation: all that the times of its steps are computed from, in one size."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction

from builder.computing.sureness import Sureness, sureness_of
from builder.geometry import FeatureShape, ShapeBook
from builder.model import (
    EACH_PIECE,
    KINDS,
    ElementData,
    FeatureRef,
    Homes,
    MachineKind,
    Operation,
    Per,
    PlantModel,
    SettingValue,
    Station,
    Step,
    StudySummary,
    Values,
    find_feature,
    settings_of,
)


@dataclass(frozen=True, slots=True)
class Bench:
    """What the times of one operation are computed from: the operation at its station, in one size.

    homes   : where each feature name leads
    summary : what its study says, None without one
    then    : the bench as it was when the study was taken, when something the head states has changed since
    stale   : the readings are of other work, and count as estimates
    standard : what the plant's studies say of each element derived from them
    lots    : how many runs each lot has that a step may be done once for
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
    sure: Sureness
    summary: StudySummary | None = None
    then: Bench | None = None
    stale: bool = False
    standard: Mapping[str, ElementData] = field(default_factory=dict)
    lots: Mapping[Per, Fraction] = field(default_factory=dict)

    def share(self, step: Step) -> Fraction:
        """How often a step is done for each piece of the operation's run; 0 where the lot it hangs on is unknown."""
        return (step.per or EACH_PIECE).share(self.lots)

    @property
    def has_bobbin(self) -> bool:
        """Whether its lower thread comes from a bobbin: a lockstitch, class 300; a bartacker's where none is said."""
        stitch = self.settings.get("stitch")
        return self.kind.sews and (stitch.words.startswith("3") if stitch is not None else self.kind.model == "tack")

    def feature(self, name: str) -> tuple[FeatureRef, FeatureShape] | None:
        """The feature a step names: whose it is, and its shape; None where it leads nowhere or can't be built."""
        ref = find_feature(name, self.homes)
        shape = self.book.shape(ref.part, self.values) if ref is not None else None
        found = shape.features.get(ref.feature) if shape is not None and ref is not None else None
        return (ref, found) if ref is not None and found is not None else None

    def setting(self, name: str, default: float) -> float:
        """A setting's nominal value in base units, or its count; `default` when it isn't typed."""
        one = self.settings.get(name)
        if one is None:
            return default
        if one.count is not None:
            return float(one.count)
        return float(one.nominal) if one.nominal is not None else default


def bench_of(model: PlantModel, book: ShapeBook, name: str, values: Values) -> Bench | None:
    """The bench of an operation without its study, None when its station or kind is unknown."""
    operation = model.operations[name]
    station = model.stations.get(operation.station)
    if station is None or station.kind not in KINDS:
        return None
    kind, settings, sure = KINDS[station.kind], settings_of(model, name), sureness_of(model.plant)
    return Bench(model, book, name, values, operation, station, kind, settings, model.homes[name], sure)
