"""A tolerance no step checks."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity


def check(subject: Subject) -> Iterator[Problem]:
    """Tolerances of each operation against what its own steps name in `check:`.

    An inspection later on finds the fault too late, so it doesn't count.
    """
    for name, operation in subject.model.operations.items():
        checked = {one for step in operation.steps for one in step.check}
        for tolerance in operation.tolerances:
            if tolerance not in checked:
                message = f"no step checks the tolerance {tolerance}"
                path = ("tolerances", tolerance)
                yield Problem(("operation", name), path, message, (f"tolerance:{tolerance}",), key=True)


RULE = Rule(
    slug="tolerance-unchecked",
    severity=Severity.warning,
    why="Nobody is told when to measure it, so nobody does.",
    remedy="Name it in `check:` of the step after which it can be measured.",
    check=check,
    bad="""
operations/sew-hem.yaml:
  tolerances: {fold: {of: hem-fold.inset, is: ± 1 mm, with: rule, every: first piece}}
""",
    good="""
operations/sew-hem.yaml:
  tolerances: {fold: {of: hem-fold.inset, is: ± 1 mm, with: rule, every: first piece}}
  steps: [{step: fold-over, check: fold}]
""",
    follows_from=("name-unknown", "key-unknown"),
)
