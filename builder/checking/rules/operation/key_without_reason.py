"""A key point without its reason."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity


def check(subject: Subject) -> Iterator[Problem]:
    """`why:` beside every `key:`."""
    for name, operation in subject.model.operations.items():
        for number, step in enumerate(operation.steps):
            if step.key is not None and step.why is None:
                message = f"step {step.step} has a key point without a reason"
                yield Problem(("operation", name), ("steps", number, "key"), message, (f"step:{step.step}",))


RULE = Rule(
    slug="key-without-reason",
    severity=Severity.warning,
    why="A key point nobody explains is the first thing left out when the bundle is late.",
    remedy="Say with `why:` what goes wrong without it.",
    check=check,
    bad="""
operations/sew-hem.yaml:
  steps: [{step: hem, key: Start at the left notch.}]
""",
    good="""
operations/sew-hem.yaml:
  steps: [{step: hem, key: Start at the left notch., why: The nap runs that way.}]
""",
)
