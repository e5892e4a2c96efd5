"""A step that presses or pulls hard, too many times an hour."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.model import show_number, show_quantity


def check(subject: Subject) -> Iterator[Problem]:
    """`force:` of steps over the plant's, against how often an hour the step comes at standard pace."""
    model, results = subject.model, subject.results
    handling = model.plant.handling
    if results is None or handling is None or handling.force is None or handling.forces_per_hour is None:
        return
    for name, operation in model.operations.items():
        time = results.operations.get((name, "", ""))
        if time is None or time.labour_min <= 0:
            continue
        for number, step in enumerate(operation.steps):
            found = time.step(step.step)
            if step.force is None or found is None or step.force.value <= handling.force.value:
                continue
            hourly = float(found.share) * 60 / time.labour_min
            if hourly > handling.forces_per_hour:
                message = (
                    f"step {step.step} takes {show_quantity(step.force, model.plant.units, both=False)}"
                    f" {show_number(hourly, 0)} times an hour; over"
                    f" {show_quantity(handling.force, model.plant.units, both=False)}"
                    f" the plant allows {handling.forces_per_hour}"
                )
                yield Problem(("operation", name), ("steps", number, "force"), message, (f"step:{step.step}",))


RULE = Rule(
    slug="force-too-often",
    severity=Severity.warning,
    why="A hard push once is work; the same push all shift long is a sore wrist, then a sick one.",
    remedy="Let a jig, a lever or a press do it, or share the work between two people.",
    check=check,
    bad="""
plant.yaml:
  handling: {force: 40 N, forces per hour: 120, source: own works doctor}
operations/press-snap.yaml:
  steps: [{step: press, force: 60 N}]
""",
    good="""
plant.yaml:
  handling: {force: 40 N, forces per hour: 120, source: own works doctor}
operations/press-snap.yaml:
  steps: [{step: press, force: 30 N}]
""",
    follows_from=("step-without-time",),
    safety=True,
    needs_results=True,
)
