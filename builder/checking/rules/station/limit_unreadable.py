"""Limits of a setting nobody can read, or of no setting."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.errors import TextFault
from builder.finding import Severity
from builder.model import KINDS, limit_range, near


def check(subject: Subject) -> Iterator[Problem]:
    """`settings:` of stations against the table of their kind."""
    for name, station in subject.model.stations.items():
        kind = KINDS.get(station.kind)
        for setting, limit in station.settings.items() if kind is not None else ():
            table = kind.settings if kind is not None else {}
            if setting not in table:
                close = near(setting, table)
                hint = f"Did you mean `{close[0]}`?" if close else f"It has: {', '.join(table) or 'none'}."
                message = f"a {kind.title if kind else ''} has no setting `{setting}`"
                yield Problem(
                    ("station", name), ("settings", setting), message, (f"setting:{setting}",), hint, key=True
                )
                continue
            try:
                limit_range(limit, table[setting])
            except TextFault as error:
                path = ("settings", setting, "limits")
                about = (f"setting:{setting}",)
                yield Problem(("station", name), path, error.message, about, error.remedy, offset=error.offset)


RULE = Rule(
    slug="station-limit-unreadable",
    severity=Severity.error,
    why="A limit that can't be read holds nothing back.",
    remedy="Write a range with its unit, such as `1..5 mm`.",
    check=check,
    bad="""
stations/all.yaml:
  stations: {lockstitch: {settings: {stitch length: {limits: 1 to 5 mm}}}}
""",
    good="""
stations/all.yaml:
  stations: {lockstitch: {settings: {stitch length: {limits: 1..5 mm}}}}
""",
    follows_from=("kind-unknown",),
)
