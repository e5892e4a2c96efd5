"""A deviation that doesn't make what the operation it stands in for makes."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.deviation_example import deviation_example
from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity


def check(subject: Subject) -> Iterator[Problem]:
    """Deviations from deviations, and those that make something else."""
    operations = subject.model.operations
    for name, operation in operations.items():
        typed = operation.deviation
        if typed is None or typed.instead_of not in operations:
            continue
        usual, owner, path = operations[typed.instead_of], ("operation", name), ("deviation", "instead of")
        about = (f"operation:{typed.instead_of}",)
        if usual.deviation is not None:
            yield Problem(owner, path, f"{typed.instead_of} is itself a deviation", about)
        elif set(operation.makes) != set(usual.makes):
            made, meant = ", ".join(operation.makes), ", ".join(usual.makes)
            yield Problem(owner, path, f"{typed.instead_of} makes {meant}, this makes {made}", about)


RULE = Rule(
    slug="deviation-other-work",
    severity=Severity.error,
    why="The next operation takes what the usual one makes; anything else has no place on the route.",
    remedy="Make the same, or name the operation that is really done another way.",
    check=check,
    bad=deviation_example(instead="press-snap"),
    good=deviation_example(),
    follows_from=("name-unknown", "value-unreadable", "key-unknown"),
)
