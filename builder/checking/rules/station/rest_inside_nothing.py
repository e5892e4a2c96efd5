"""Rest inside machine time at a station that has none."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.model import KINDS


def check(subject: Subject) -> Iterator[Problem]:
    """`rest inside: yes` where no machine runs by itself, or where the operator owes its time nothing."""
    for name, station in subject.model.stations.items():
        kind = KINDS.get(station.kind)
        if not station.rest_inside or kind is None:
            continue
        if kind.paced != "machine":
            message = f"no machine runs by itself at {station.title}, so nobody rests while it runs"
            yield Problem(("station", name), ("rest inside",), message)
        elif station.attendance == "free":
            message = f"at {station.title} the operator owes the machine's time nothing, so rest in it is not paid"
            yield Problem(("station", name), ("rest inside",), message)


RULE = Rule(
    slug="rest-inside-nothing",
    severity=Severity.warning,
    why="A flag that changes no time is read as if it did, by whoever defends the standard.",
    remedy="Take the line out, or correct the station's kind or attendance.",
    check=check,
    bad="""
stations/all.yaml:
  stations: {lockstitch: {rest inside: yes}}
""",
    good="""
stations/all.yaml:
  stations: {laser: {rest inside: yes}}
""",
    follows_from=("kind-unknown",),
)
