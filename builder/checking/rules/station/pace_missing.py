"""A machine model without its constants."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.model import KINDS


def check(subject: Subject) -> Iterator[Problem]:
    """Constants the kind's machine model needs, under `pace:`."""
    for name, station in subject.model.stations.items():
        kind = KINDS.get(station.kind)
        missing = station.pace.missing(kind.needs) if kind is not None else []
        if kind is not None and missing:
            where = ("pace",) if len(missing) < len(kind.needs) else ("kind",)
            message = f"the machine time of a {kind.title} needs {', '.join(missing)}"
            yield Problem(("station", name), where, message, (), key=True)


RULE = Rule(
    slug="pace-missing",
    severity=Severity.error,
    why="Without them no seam or cut at this station has a machine time.",
    remedy="Measure them at the machine and type them under `pace:`.",
    check=check,
    bad="""
products/pouch.yaml: {route: [cut-panel, sew-hem, press-snap, press-more]}
operations/press-more.yaml:
  operation: press-more
  title: Press the second snap
  code: SNP-20
  station: spare-press
  needs: {panel-snapped: 1}
  makes: panel-closed
  settings: {die: S-12}
  steps: [{step: press, do: Press the snap., time: 4 s}]
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
""",
    good="""
products/pouch.yaml: {route: [cut-panel, sew-hem, press-snap, press-more]}
operations/press-more.yaml:
  operation: press-more
  title: Press the second snap
  code: SNP-20
  station: spare-press
  needs: {panel-snapped: 1}
  makes: panel-closed
  settings: {die: S-12}
  steps: [{step: press, do: Press the snap., time: 4 s}]
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
      pace: {cycle: 2 s}
""",
    follows_from=("kind-unknown",),
)
