"""A station where the hands go farther than the plant allows."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.model import show_quantity


def check(subject: Subject) -> Iterator[Problem]:
    """`reach` of each station against the plant's own limit; silent where either isn't typed."""
    plant = subject.model.plant
    limit = plant.handling.reach if plant.handling is not None else None
    if limit is None:
        return
    for name, station in subject.model.stations.items():
        if station.reach is not None and station.reach.value > limit.value:
            reach, most = (show_quantity(one, plant.units, both=False) for one in (station.reach, limit))
            message = f"at {station.title} the hands go {reach} far in every cycle; the plant allows {most}"
            yield Problem(("station", name), ("reach",), message)


RULE = Rule(
    slug="reach-too-far",
    severity=Severity.warning,
    why="An arm stretched out in every cycle tires the shoulder long before the end of the shift, and then hurts it.",
    remedy="Bring the stack or the tray nearer, and type the new reach.",
    check=check,
    bad="""
plant.yaml:
  handling: {reach: 500 mm, source: own works doctor}
stations/all.yaml:
  stations: {bench: {reach: 620 mm}}
""",
    good="""
plant.yaml:
  handling: {reach: 500 mm, source: own works doctor}
stations/all.yaml:
  stations: {bench: {reach: 480 mm}}
""",
    safety=True,
)
