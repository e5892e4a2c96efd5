"""Two steps of one operation with the same name."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity


def check(subject: Subject) -> Iterator[Problem]:
    """Names of steps are unique in their operation."""
    for name, operation in subject.model.operations.items():
        seen: set[str] = set()
        for number, step in enumerate(operation.steps):
            if step.step in seen:
                message = f"two steps are called {step.step}"
                yield Problem(("operation", name), ("steps", number, "step"), message, (f"step:{step.step}",))
            seen.add(step.step)


RULE = Rule(
    slug="step-name-twice",
    severity=Severity.error,
    why="Readings, records and translations find a step by its name; with two of them they land on the wrong one.",
    remedy="Rename one of the steps.",
    check=check,
    bad="""
products/pouch.yaml: {route: [cut-panel, sew-hem, press-snap, look-again]}
operations/look-again.yaml:
  operation: look-again
  title: Look at the panel
  code: T-10
  station: bench
  needs: {panel-snapped: 1}
  makes: panel-seen
  steps: [{step: look, do: Look at the front., time: 2 s}, {step: look, do: Look at the back., time: 2 s}]
""",
    good="""
products/pouch.yaml: {route: [cut-panel, sew-hem, press-snap, look-again]}
operations/look-again.yaml:
  operation: look-again
  title: Look at the panel
  code: T-10
  station: bench
  needs: {panel-snapped: 1}
  makes: panel-seen
  steps: [{step: look, do: Look at the front., time: 2 s}, {step: turn, do: Look at the back., time: 2 s}]
""",
)
