"""A hazard or protection the tool has no sign for."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.model import HAZARDS, PROTECTIONS, near


def check(subject: Subject) -> Iterator[Problem]:
    """Names in `hazards:` and `protection:`."""
    for name, station in subject.model.stations.items():
        for key, typed, known in (
            ("hazards", station.hazards, HAZARDS),
            ("protection", station.protection, PROTECTIONS),
        ):
            for number, one in enumerate(typed):
                if one not in known:
                    close = near(one, known)
                    hint = f"Did you mean `{close[0]}`? " if close else ""
                    message = f"no {key.removesuffix('s')} is called `{one}`"
                    remedy = f"{hint}Known: {', '.join(known)}."
                    yield Problem(("station", name), (key, number), message, (f"{key}:{one}",), remedy)


RULE = Rule(
    slug="hazard-unknown",
    severity=Severity.error,
    why="A caution without sign and words never reaches the sheet.",
    remedy="Use one of the known names.",
    check=check,
    bad="""
stations/all.yaml:
  stations: {lockstitch: {hazards: [moving needles]}}
""",
    good="""
stations/all.yaml:
  stations: {lockstitch: {hazards: [heavy load], protection: [finger guard, eye protection, hoist]}}
""",
    safety=True,
)
