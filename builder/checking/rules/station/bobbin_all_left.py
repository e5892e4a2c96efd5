"""A bobbin whose rest is as long as what it holds."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity


def check(subject: Subject) -> Iterator[Problem]:
    """`left` against `holds` in the station's table of bobbins."""
    for name, station in subject.model.stations.items():
        for thread, bobbin in station.bobbins.items():
            left = bobbin.left.value if bobbin.left is not None else 0
            if left >= bobbin.holds.value:
                message = f"of a bobbin of {thread} nothing is left to sew with: it holds no more than its rest"
                yield Problem(
                    ("station", name),
                    ("bobbins", thread, "left" if bobbin.left is not None else "holds"),
                    message,
                    (f"station:{name}", f"material:{thread}"),
                )


RULE = Rule(
    slug="bobbin-all-left",
    severity=Severity.error,
    why="Every piece would need more than a bobbin.",
    remedy="Correct `holds` or `left`; perhaps one of them is in another unit.",
    check=check,
    bad="""
stations/all.yaml:
  stations: {lockstitch: {bobbins: {thread-70: {holds: 27 mm, left: 1.5 m}}}}
""",
    good="""
stations/all.yaml:
  stations: {lockstitch: {bobbins: {thread-70: {holds: 27 m, left: 1.5 m}}}}
""",
)
