"""A machine in sight without the share of its time the operator owes."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity


def check(subject: Subject) -> Iterator[Problem]:
    """`share:` belongs to `attendance: in sight`, and only to it."""
    for name, station in subject.model.stations.items():
        if station.attendance == "in sight" and station.share is None:
            message = "attendance `in sight` without its `share:`"
            yield Problem(("station", name), ("attendance",), message, ())
        if station.attendance != "in sight" and station.share is not None:
            message = f"`share:` says nothing at attendance `{station.attendance}`"
            yield Problem(("station", name), ("share",), message, (), key=True)
        if station.share is not None and station.share > 1:
            yield Problem(("station", name), ("share",), "a share is at most 1, or 100 %", ())


RULE = Rule(
    slug="share-missing",
    severity=Severity.error,
    why="Labour of a machine that runs by itself is a share only the plant can know; a guess prices all its products.",
    remedy="Watch the operator over some cycles and type the share of the machine's time they owe it.",
    check=check,
    bad="""
stations/all.yaml:
  stations: {snap-press: {attendance: in sight}}
""",
    good="""
stations/all.yaml:
  stations: {snap-press: {attendance: in sight, share: 60 %}}
""",
    follows_from=("heat-unattended",),
)
