"""A setting that every operation at such a machine needs."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.model import KINDS


def check(subject: Subject) -> Iterator[Problem]:
    """Required settings of the kind of machine."""
    for name, operation in subject.model.operations.items():
        station = subject.model.stations.get(operation.station)
        kind = KINDS.get(station.kind) if station is not None else None
        if kind is None:
            continue
        for setting, one in kind.settings.items():
            if one.required and setting not in operation.settings:
                where = ("settings",) if operation.settings else ("station",)
                message = f"the setting `{setting}` is missing; a {kind.title} needs it"
                yield Problem(("operation", name), where, message, (f"setting:{setting}",), key=True)


RULE = Rule(
    slug="setting-missing",
    severity=Severity.error,
    why="What the sheet doesn't say, every operator sets in their own way.",
    remedy="Type the setting under `settings:`.",
    check=check,
    bad="""
products/pouch.yaml: {route: [cut-panel, sew-hem, press-snap, press-more]}
operations/press-more.yaml:
  operation: press-more
  title: Press the second snap
  code: SNP-20
  station: snap-press
  needs: {panel-snapped: 1}
  makes: panel-closed
  settings: {pressure: 4 bar}
  steps: [{step: press, do: Press the snap., time: 4 s}]
""",
    good="""
products/pouch.yaml: {route: [cut-panel, sew-hem, press-snap, press-more]}
operations/press-more.yaml:
  operation: press-more
  title: Press the second snap
  code: SNP-20
  station: snap-press
  needs: {panel-snapped: 1}
  makes: panel-closed
  settings: {die: S-12, pressure: 4 bar}
  steps: [{step: press, do: Press the snap., time: 4 s}]
""",
    follows_from=("setting-unreadable",),
)
