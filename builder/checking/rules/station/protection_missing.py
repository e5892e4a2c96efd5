"""A hazard nothing protects from."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.model import HAZARDS, KINDS


def check(subject: Subject) -> Iterator[Problem]:
    """Hazards that come with the kind, and those typed, each answered by the station's protection."""
    for name, station in subject.model.stations.items():
        kind = KINDS.get(station.kind)
        hazards = dict.fromkeys((*(kind.hazards if kind else ()), *station.hazards))
        for hazard in hazards:
            if hazard not in HAZARDS:
                continue
            for group in HAZARDS[hazard].answers:
                if not set(group) & set(station.protection):
                    message = f"{hazard}: nothing protects from it; it takes {' or '.join(group)}"
                    where = ("protection",) if station.protection else ("kind",)
                    yield Problem(("station", name), where, message, (f"hazard:{hazard}", *group), key=True)


RULE = Rule(
    slug="protection-missing",
    severity=Severity.error,
    why="Somebody gets hurt.",
    remedy="Name the protection under `protection:`, and see that it is there.",
    check=check,
    bad="""
stations/all.yaml:
  stations: {lockstitch: {protection: [eye protection]}}
""",
    good="""
stations/all.yaml:
  stations: {lockstitch: {protection: [finger guard, eye shield]}}
""",
    safety=True,
)
