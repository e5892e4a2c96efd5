"""A kind of machine the tool has no table for."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.model import KINDS, near


def check(subject: Subject) -> Iterator[Problem]:
    """`kind:` of every station."""
    for name, station in subject.model.stations.items():
        if station.kind not in KINDS:
            close = near(station.kind, KINDS)
            hint = f"Did you mean `{close[0]}`? " if close else ""
            message = f"no kind of machine is called `{station.kind}`"
            remedy = f"{hint}Kinds: {', '.join(KINDS)}."
            yield Problem(("station", name), ("kind",), message, (f"kind:{station.kind}",), remedy)


RULE = Rule(
    slug="kind-unknown",
    severity=Severity.error,
    why="The kind says what can be set, what can hurt and who paces the machine; without it nothing can be checked.",
    remedy="Name one of the kinds.",
    check=check,
    bad="""
stations/all.yaml:
  stations: {lockstitch: {kind: lockstich}}
""",
    good="""
stations/all.yaml:
  stations: {lockstitch: {kind: lockstitch}}
""",
)
