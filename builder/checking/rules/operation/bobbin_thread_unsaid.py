"""A lockstitch whose lower thread nobody named."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity

LOCKSTITCHES = ("301", "304", "308")
"""Types whose lower thread comes from a bobbin."""


def check(subject: Subject) -> Iterator[Problem]:
    """Lockstitches at stations that list `bobbin thread`, without it."""
    model = subject.model
    for name, operation in model.operations.items():
        station = model.stations.get(operation.station)
        stitch = subject.settings(name).get("stitch")
        if station is None or stitch is None or stitch.words not in LOCKSTITCHES:
            continue
        if "bobbin thread" in station.settings and "bobbin thread" not in operation.settings:
            message = f"stitch {stitch.words} takes a bobbin thread, and none is named"
            about = ("setting:bobbin thread", f"station:{operation.station}")
            yield Problem(("operation", name), ("settings",), message, about, key=True)


_STATION = """
stations/all.yaml:
  stations: {lockstitch: {settings: {bobbin thread: {set at: bobbin winder, verify: value}}}}
"""

RULE = Rule(
    slug="bobbin-thread-unsaid",
    severity=Severity.warning,
    why="The bobbin of the last job goes on: half of the seam is then another thread, and nobody sees it.",
    remedy="Type `bobbin thread:`, also where it is the same as the needle thread.",
    check=check,
    bad=f"""{_STATION}
operations/sew-hem.yaml:
  settings: {{thread: thread-70}}
""",
    good=f"""{_STATION}
operations/sew-hem.yaml:
  settings: {{thread: thread-70, bobbin thread: thread-70}}
""",
    follows_from=("setting-unreadable",),
)
