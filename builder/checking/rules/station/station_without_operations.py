"""A station where nothing is done."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.flow import whole
from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity


def check(subject: Subject) -> Iterator[Problem]:
    """Stations no operation names. A bench is a table, not a machine: nobody keeps one up for nothing."""
    model = subject.model
    if not whole(subject) or not model.operations:
        return
    used = {one.station for one in model.operations.values()}
    for name, station in model.stations.items():
        if name not in used and station.kind != "bench":
            yield Problem(("station", name), (), f"no operation is done at {name}", (), key=True)


RULE = Rule(
    slug="station-without-operations",
    severity=Severity.note,
    why="It is counted as a place of the plant, and its limits are kept up for nobody.",
    remedy="Name it in the operations done there, or take it out.",
    check=check,
    bad="""
stations/all.yaml:
  stations:
    second-press: {title: Second press, kind: setting press, count: 1, distance: 0.6 m, attendance: constant,
      pace: {cycle: 2 s, calibrated: 2026-09-01}, protection: [press guard],
      start: {guard: With the guard open it must not start.}}
""",
    good="""
stations/all.yaml:
  stations:
    second-press: {title: Second press, kind: setting press, count: 1, distance: 0.6 m, attendance: constant,
      pace: {cycle: 2 s, calibrated: 2026-09-01}, protection: [press guard],
      start: {guard: With the guard open it must not start.}}
operations/press-second.yaml:
  operation: press-second
  title: Press the snap once more
  code: SNP-20
  station: second-press
  needs: {panel-snapped: 1}
  makes: panel-pressed
  settings: {die: S-12}
  steps: [{step: press, do: Press it once more., time: 4 s}]
products/pouch.yaml: {route: [cut-panel, sew-hem, press-snap, press-second]}
""",
    follows_from=("name-unknown", "name-differs"),
)
