"""Inside work during a step that has no machine run."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.model import KINDS


def check(subject: Subject) -> Iterator[Problem]:
    """`during:` names a working step at a machine that paces itself."""
    model = subject.model
    for name, operation in model.operations.items():
        station = model.stations.get(operation.station)
        kind = KINDS.get(station.kind) if station is not None else None
        steps = {step.step: step for step in operation.steps}
        for number, step in enumerate(operation.steps):
            if step.during is None or kind is None or step.during not in steps:
                continue
            if kind.paced != "machine" or not steps[step.during].work[0]:
                message = f"step {step.during} has no machine time of its own, so nothing can be done during it"
                yield Problem(("operation", name), ("steps", number, "during"), message, (f"step:{step.step}",))


RULE = Rule(
    slug="during-not-a-run",
    severity=Severity.error,
    why="Work counted inside a machine's time that isn't there is work nobody is given time for.",
    remedy="Take `during:` out, or name a step the machine does by itself.",
    check=check,
    bad="""
operations/sew-hem.yaml:
  steps: [{step: look, during: hem}]
""",
    good="""
operations/cut-panel.yaml:
  steps: [{step: stack, do: Band the last pieces., during: cut, time: 3 s}]
""",
    follows_from=(
        "name-unknown",
        "kind-unknown",
    ),
)
