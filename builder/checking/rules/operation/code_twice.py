"""Two operations with one code."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity


def check(subject: Subject) -> Iterator[Problem]:
    """The code of an operation that another one has already; capitals make no difference."""
    first: dict[str, str] = {}
    for name, operation in subject.model.operations.items():
        other = first.setdefault(operation.code.casefold(), name)
        if other != name:
            message = f"{other} has the code {subject.model.operations[other].code} too"
            yield Problem(("operation", name), ("code",), message, (f"operation:{other}",))


RULE = Rule(
    slug="code-twice",
    severity=Severity.error,
    why="A ticket, a fault list or a time booked on the code lands at the wrong operation.",
    remedy="Give one of the two a code of its own.",
    check=check,
    bad="""
operations/sew-hem.yaml: {code: CUT-10}
""",
    good="""
operations/sew-hem.yaml: {code: SEW-10}
""",
)
