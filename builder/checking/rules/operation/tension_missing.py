"""A seam whose tension nobody wrote down."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity


def check(subject: Subject) -> Iterator[Problem]:
    """Operations at sewing stations that list `top tension`, without it."""
    model = subject.model
    for name, operation in model.operations.items():
        station, kind = model.stations.get(operation.station), model.kind_of(name)
        if station is None or kind is None or not kind.sews or "top tension" not in station.settings:
            continue
        if "top tension" not in operation.settings:
            where = ("settings",) if operation.settings else ("station",)
            message = f"no top tension is typed, and {station.title} has one to set"
            about = ("setting:top tension", f"station:{operation.station}")
            yield Problem(("operation", name), where, message, about, key=True)


_STATION = """
stations/all.yaml:
  stations: {lockstitch: {settings: {top tension: {limits: 0.6..2.5 N, set at: tension nut, verify: gauge}}}}
"""

RULE = Rule(
    slug="tension-missing",
    severity=Severity.warning,
    why="Each operator sets it by feel; loops show on one machine and puckers on the next.",
    remedy="Sew a good sample, measure the thread's tension and type it as `top tension:` with its tolerance.",
    check=check,
    bad=f"""{_STATION}
operations/sew-hem.yaml:
  settings: {{needle: Nm 100 R}}
""",
    good=f"""{_STATION}
operations/sew-hem.yaml:
  settings: {{needle: Nm 100 R, top tension: 1.2 N ± 0.2}}
""",
    follows_from=("setting-unreadable",),
)
