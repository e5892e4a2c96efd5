"""A stitch type the station can't sew."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity


def check(subject: Subject) -> Iterator[Problem]:
    """The typed stitch against the station's list."""
    model = subject.model
    for name, operation in model.operations.items():
        station = model.stations.get(operation.station)
        stitch = subject.settings(name).get("stitch")
        if station is None or stitch is None or not station.stitches or stitch.words in station.stitches:
            continue
        message = f"{station.title} sews {', '.join(station.stitches)}, not {stitch.words}"
        about = ("setting:stitch", f"station:{operation.station}")
        yield Problem(("operation", name), ("settings", "stitch"), message, about)


RULE = Rule(
    slug="stitch-not-sewn",
    severity=Severity.error,
    why="The seam on the sheet can't be made where the sheet hangs.",
    remedy="Choose one of the station's stitch types, or another station.",
    check=check,
    bad="""
operations/sew-hem.yaml:
  settings: {stitch: 514, needles: 2, threads: 4}
""",
    good="""
operations/sew-hem.yaml:
  settings: {stitch: 301}
""",
    follows_from=("setting-unreadable",),
)
