"""A station where people stand all shift."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity


def check(subject: Subject) -> Iterator[Problem]:
    """`relief:` beside `posture: standing`."""
    for name, station in subject.model.stations.items():
        if station.posture == "standing" and station.relief is None:
            message = f"work at {station.title} is done standing, and nothing interrupts it"
            yield Problem(("station", name), ("posture",), message)


RULE = Rule(
    slug="standing-only",
    severity=Severity.warning,
    why="Whoever stands the whole shift has sore legs and back, and looks less carefully towards its end.",
    remedy="Say under `relief:` what interrupts it: a seat, a change of station, a walk to the store.",
    check=check,
    bad="""
stations/all.yaml:
  stations: {bench: {posture: standing}}
""",
    good="""
stations/all.yaml:
  stations: {bench: {posture: standing, relief: Change to the packing table after every batch.}}
""",
)
