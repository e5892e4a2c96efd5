"""A tolerance without gauge or plan."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity


def check(subject: Subject) -> Iterator[Problem]:
    """`with:` and `every:` of each tolerance."""
    for name, operation in subject.model.operations.items():
        for tolerance_name, tolerance in operation.tolerances.items():
            missing = [key for key, value in (("with", tolerance.with_), ("every", tolerance.every)) if value is None]
            if missing:
                message = f"tolerance {tolerance_name} doesn't say {' and '.join(missing)}"
                path = ("tolerances", tolerance_name)
                yield Problem(("operation", name), path, message, (f"tolerance:{tolerance_name}",), key=True)


RULE = Rule(
    slug="gauge-missing",
    severity=Severity.warning,
    why="A tolerance nobody measures is a wish.",
    remedy="Name the gauge (`with:`) and how often it is used (`every:`).",
    check=check,
    bad="""
operations/sew-hem.yaml:
  tolerances: {fold: {of: hem-fold.inset, is: ± 1 mm}}
  steps: [{step: fold-over, check: fold}]
""",
    good="""
operations/sew-hem.yaml:
  tolerances: {fold: {of: hem-fold.inset, is: ± 1 mm, with: rule, every: first piece}}
  steps: [{step: fold-over, check: fold}]
""",
)
