"""A station whose posture and whose relaxation disagree about standing."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity


def check(subject: Subject) -> Iterator[Problem]:
    """`posture: standing` without `standing: yes` in `relaxation:`, or `sitting` with it; `sit-stand` may have either.

    A plant none of whose stations states its relaxation holds all strain in its fatigue allowance; it has no finding.
    """
    stations = subject.model.stations
    if all(station.relaxation is None for station in stations.values()):
        return
    for name, station in stations.items():
        relaxation = station.relaxation
        stands = relaxation is not None and relaxation.standing
        if station.posture == "standing" and not stands:
            message = f"work at {station.title} is done standing, and its relaxation leaves standing out"
            yield Problem(("station", name), ("posture",), message)
        if station.posture == "sitting" and stands:
            message = f"the relaxation of {station.title} counts standing, and its posture is sitting"
            yield Problem(("station", name), ("relaxation", "standing"), message)


RULE = Rule(
    slug="standing-relaxation",
    severity=Severity.warning,
    why="Two operators with the same work and other allowances ask for the reason; here there is none.",
    remedy="Type `standing: yes` in the station's `relaxation:`, or correct its posture.",
    check=check,
    bad="""
stations/all.yaml:
  stations: {bench: {posture: standing, relief: Change after every batch., relaxation: {monotony: medium}}}
""",
    good="""
stations/all.yaml:
  stations: {bench: {posture: standing, relief: Change after every batch., relaxation: {standing: yes}}}
""",
)
