"""A reason without the key point it is the reason of."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity


def check(subject: Subject) -> Iterator[Problem]:
    """`key:` beside every `why:`."""
    for name, operation in subject.model.operations.items():
        for number, step in enumerate(operation.steps):
            if step.why is not None and step.key is None:
                message = f"step {step.step} says why, but not what to mind"
                yield Problem(("operation", name), ("steps", number, "why"), message, (f"step:{step.step}",))


RULE = Rule(
    slug="reason-without-key",
    severity=Severity.note,
    why="A line was lost: the reader learns the reason of something the sheet doesn't ask for.",
    remedy="Type the key point under `key:`, or take the reason out.",
    check=check,
    bad="""
operations/sew-hem.yaml:
  steps: [{step: hem, why: A slanted hem shows.}]
""",
    good="""
operations/sew-hem.yaml:
  steps: [{step: hem, key: Start at the left notch., why: A slanted hem shows.}]
""",
    follows_from=("key-unknown",),
)
