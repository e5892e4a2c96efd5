"""A step that does two kinds of work."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.model import WORK_KEYS


def check(subject: Subject) -> Iterator[Problem]:
    """More than one of sew, cut, place, fold, mark, set in a step."""
    for name, operation in subject.model.operations.items():
        for number, step in enumerate(operation.steps):
            found = [key for key in WORK_KEYS if getattr(step, key)]
            if len(found) > 1:
                message = f"step {step.step} has two kinds of work: {' and '.join(found)}"
                yield Problem(
                    ("operation", name), ("steps", number, found[1]), message, (f"step:{step.step}",), key=True
                )


RULE = Rule(
    slug="step-two-kinds",
    severity=Severity.error,
    why="One picture and one time can't show and count two kinds of work.",
    remedy="Make two steps of it.",
    check=check,
    bad="""
operations/sew-hem.yaml:
  steps: [{step: hem, fold: hem-fold}]
""",
    good="""
operations/sew-hem.yaml:
  steps: [{step: hem, sew: hem-seam}]
""",
)
