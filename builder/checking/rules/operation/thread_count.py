"""Needles and threads that don't make the stitch type."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.model import STITCHES


def check(subject: Subject) -> Iterator[Problem]:
    """Needles and threads typed, and the station's needles, against ISO 4915; `rows` multiplies them."""
    model = subject.model
    for name, operation in model.operations.items():
        settings = subject.settings(name)
        station = model.stations.get(operation.station)
        if "stitch" not in settings or station is None:
            continue
        stitch = STITCHES[settings["stitch"].words]
        rows = settings["rows"].count if "rows" in settings and settings["rows"].count else 1
        for setting, each in (("needles", stitch.needles), ("threads", stitch.threads)):
            typed = settings[setting].count if setting in settings else None
            if typed is not None and typed != each * rows:
                of = f"{rows} rows of " if rows > 1 else ""
                message = f"{of}stitch {stitch.type} ({stitch.title}) takes {each * rows} {setting}, not {typed}"
                yield Problem(
                    ("operation", name), ("settings", setting), message, (f"setting:{setting}", "setting:stitch")
                )
        if station.needles is not None and stitch.needles * rows > station.needles:
            message = (
                f"stitch {stitch.type} takes {stitch.needles * rows} needles; {station.title} has {station.needles}"
            )
            about = ("setting:stitch", f"station:{operation.station}")
            yield Problem(("operation", name), ("settings", "stitch"), message, about)


RULE = Rule(
    slug="thread-count",
    severity=Severity.error,
    why="A machine threaded for another stitch type skips, or sews a seam that opens.",
    remedy="Thread what ISO 4915 asks for the type, or correct the stitch type.",
    check=check,
    bad="""
operations/sew-hem.yaml:
  settings: {threads: 3}
""",
    good="""
operations/sew-hem.yaml:
  settings: {needles: 1, threads: 2}
""",
    follows_from=(
        "setting-unreadable",
        "stitch-not-sewn",
    ),
)
