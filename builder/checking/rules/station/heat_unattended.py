"""A heat process nobody attends."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.model import KINDS


def check(subject: Subject) -> Iterator[Problem]:
    """`attendance: free` at a laser, a hot blade or any heat."""
    for name, station in subject.model.stations.items():
        kind = KINDS.get(station.kind)
        if kind is not None and kind.heat and station.attendance == "free":
            message = f"a {kind.title} is never left alone, but its attendance is `free`"
            yield Problem(("station", name), ("attendance",), message, ())


RULE = Rule(
    slug="heat-unattended",
    severity=Severity.error,
    why="Goods under a laser or a hot blade catch fire within seconds.",
    remedy="Write `attendance: constant`, or `in sight` with its `share:`.",
    check=check,
    bad="""
stations/all.yaml:
  stations: {laser: {attendance: free}}
""",
    good="""
stations/all.yaml:
  stations: {laser: {attendance: in sight, share: 30 %}}
""",
    safety=True,
)
