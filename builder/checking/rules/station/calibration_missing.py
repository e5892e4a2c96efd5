"""Machine times that rest on constants nobody measured here."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.model import KINDS, MachineKind, PlantModel


def check(subject: Subject) -> Iterator[Problem]:
    """Stations never calibrated at which some step has its machine time from the model alone."""
    model = subject.model
    resting: dict[str, list[str]] = {}
    for name, operation in model.operations.items():
        station, kind = model.stations.get(operation.station), model.kind_of(name)
        if station is None or kind is None or station.pace.calibrated is not None:
            continue
        if _modelled(name, kind, model):
            resting.setdefault(operation.station, []).append(name)
    for station_name, names in resting.items():
        station = model.stations[station_name]
        if station.pace.missing(KINDS[station.kind].needs):
            continue  # reported by pace-missing
        others = f" and {len(names) - 1} more" if len(names) > 1 else ""
        message = f"`pace:` was never calibrated; the machine time of {names[0]}{others} is an estimate"
        yield Problem(("station", station_name), ("pace",), message, (f"operation:{names[0]}",), key=True)


def _modelled(operation: str, kind: MachineKind, model: PlantModel) -> bool:
    """Has some step that the kind's machine does, and no reading of it?"""
    works = {"seam": ("sew",), "tack": ("sew",), "contour": ("cut",), "chop": ("cut",), "cycle": ("cut", "set")}
    study = model.study_of(operation)
    return any(
        step.work[0] in works.get(kind.model, ()) and (study is None or not study.of_step(step.step))
        for step in model.operations[operation].steps
    )


_PLANT = """
products/pouch.yaml: {route: [cut-panel, sew-hem, press-snap, press-more]}
stations/all.yaml:
  stations:
    spare-press:
      title: Spare press
      kind: setting press
      count: 1
      distance: 0.6 m
      attendance: constant
      protection: [press guard]
      start: {guard: With the guard open it must not start.}
      pace: PACE
parts/panel.yaml:
  features: {second-snap: {hardware: snap, diameter: 12 mm, at: {centre: 0 mm, bottom: 60 mm}}}
operations/press-more.yaml:
  operation: press-more
  title: Press the second snap
  code: SNP-20
  station: spare-press
  needs: {panel-snapped: 1, snap: 1}
  makes: panel-closed
  settings: {die: S-12}
  steps: [{step: press, set: second-snap, do: Press the snap., time: 4 s}]
"""

RULE = Rule(
    slug="calibration-missing",
    severity=Severity.note,
    why="Constants from a catalogue are for another motor and another hand; prices and line balance follow them.",
    remedy="Time some seams or cuts at the machine, correct the constants and type the day as `calibrated:`.",
    check=check,
    bad=_PLANT.replace("PACE", "{cycle: 2 s}"),
    good=_PLANT.replace("PACE", "{cycle: 2 s, calibrated: 2026-09-01}"),
    follows_from=("kind-unknown", "pace-missing"),
)
