"""A dangerous machine whose shift begins without the checks of its kind."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.model import KINDS


def check(subject: Subject) -> Iterator[Problem]:
    """The kind's start checks, each by name under the station's `start:`."""
    for name, station in subject.model.stations.items():
        kind = KINDS.get(station.kind)
        missing = [one for one in kind.start_checks if one not in station.start] if kind is not None else []
        if kind is not None and missing:
            where = ("start",) if station.start else ("kind",)
            message = f"a {kind.title} is checked before the first piece of a shift; nothing is said on "
            message += " and ".join(f"`{one}`" for one in missing)
            yield Problem(("station", name), where, message, tuple(f"start:{one}" for one in missing), key=True)


_PRESS = """
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
      pace: {cycle: 2 s, calibrated: 2026-09-01}
"""

RULE = Rule(
    slug="start-check-missing",
    severity=Severity.error,
    why="A guard that doesn't stop the ram, or a fan that doesn't draw, shows only when somebody is hurt.",
    remedy="Say under `start:` what the operator does and what must be seen, as the machine's manual asks for it.",
    check=check,
    bad=_PRESS,
    good=f"{_PRESS}      start: {{guard: With the guard open it must not start.}}\n",
    follows_from=("kind-unknown",),
    safety=True,
)
