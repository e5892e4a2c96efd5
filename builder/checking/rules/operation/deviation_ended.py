"""A deviation past its last day."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.deviation_example import deviation_example
from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity


def check(subject: Subject) -> Iterator[Problem]:
    """Deviations whose last day is over, against today."""
    for name, operation in subject.model.operations.items():
        typed = operation.deviation
        if typed is not None and typed.until < subject.today:
            message = f"this deviation ended on {typed.until.isoformat()}"
            yield Problem(("operation", name), ("deviation", "until"), message, (f"operation:{typed.instead_of}",))


RULE = Rule(
    slug="deviation-ended",
    severity=Severity.warning,
    why="Its sheet still hangs, and somebody works by it on a batch it was never meant for.",
    remedy="Take the sheet down and the file out, move the day, or make it the operation's own way.",
    check=check,
    bad=deviation_example(until="2026-10-01"),
    good=deviation_example(),
    follows_from=("name-unknown", "value-unreadable", "key-unknown"),
)
