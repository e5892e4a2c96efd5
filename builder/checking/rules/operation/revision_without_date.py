"""A later revision nobody dated or signed."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity

_FIRST = frozenset(("", "0", "00", "1", "01", "a"))


def check(subject: Subject) -> Iterator[Problem]:
    """Revisions behind the first without `date` or `recorded by`."""
    for name, operation in subject.model.operations.items():
        if operation.revision.strip().lower() in _FIRST:
            continue
        lacks = ["date"] if operation.date is None else []
        lacks += [] if operation.recorded_by else ["recorded by"]
        if lacks:
            words = " and ".join(f"`{one}:`" for one in lacks)
            message = f"revision {operation.revision} has no {words}"
            yield Problem(("operation", name), ("revision",), message)


RULE = Rule(
    slug="revision-without-date",
    severity=Severity.warning,
    why="Two sheets on the wall can't be told apart by age, and nobody can be asked why the method changed.",
    remedy="Type the day of the change and the code of who recorded it.",
    check=check,
    bad="""
operations/sew-hem.yaml: {revision: B, recorded by: E1}
""",
    good="""
operations/sew-hem.yaml: {revision: B, recorded by: E1, date: 2026-10-05}
""",
)
