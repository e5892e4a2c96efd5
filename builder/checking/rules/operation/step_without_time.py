"""A step nobody gave a time."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.model import NO_SOURCE, ElementUse


def check(subject: Subject) -> Iterator[Problem]:
    """Steps without reading, element, estimate or machine model.

    A step that names an element its studies say too little of is that element's matter.
    """
    if subject.results is None:
        return
    for name, operation in subject.model.operations.items():
        time = subject.results.operations.get((name, "", ""))
        for number, step in enumerate(operation.steps):
            found = time.step(step.step) if time is not None else None
            named = step.time.name if isinstance(step.time, ElementUse) else ""
            if found is not None and found.source == NO_SOURCE and named not in subject.results.standard_data:
                message = f"step {step.step} has no time: no reading, no element, no estimate, no machine model"
                yield Problem(("operation", name), ("steps", number, "step"), message, (f"step:{step.step}",))


RULE = Rule(
    slug="step-without-time",
    severity=Severity.error,
    why="A step without time makes the product look cheaper and the line faster than it is.",
    remedy="Time it, name an element of the plant's table, or type an estimate such as `time: 3.5 s`.",
    check=check,
    bad="""
operations/sew-hem.yaml:
  steps: [{step: check, do: Count the stitches over 25 mm.}]
""",
    good="""
operations/sew-hem.yaml:
  steps: [{step: check, do: Count the stitches over 25 mm., time: 4 s}]
""",
    follows_from=(
        "pace-missing",
        "step-feature-missing",
        "study-step-gone",
    ),
    needs_results=True,
)
