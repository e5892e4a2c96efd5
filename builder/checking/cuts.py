"""Where an operation cuts a part out, shared by the rules on what a cutter takes."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from builder.checking.rule import PathStep, Subject
from builder.model import MachineKind, Station


@dataclass(frozen=True, slots=True)
class Cut:
    """A part cut out by a step; `path` leads to its name there."""

    operation: str
    part: str
    path: tuple[PathStep, ...]
    station: Station
    kind: MachineKind


def cuts(subject: Subject, *models: str) -> Iterator[Cut]:
    """Parts cut out at stations whose kind is timed by one of these models (`contour`, `chop`, `cycle`)."""
    model = subject.model
    for name, operation in model.operations.items():
        station, kind = model.stations.get(operation.station), model.kind_of(name)
        if station is None or kind is None or kind.model not in models:
            continue
        for number, step in enumerate(operation.steps):
            for index, part in enumerate(step.cut):
                if part in operation.makes and part in model.parts:
                    yield Cut(name, part, ("steps", number, "cut", index), station, kind)
