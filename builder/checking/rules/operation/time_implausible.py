"""A typed time that no step of work can take."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.model import Estimate, Step, show_seconds

# Common practice, no source: nothing is grasped faster, and what takes longer is more than one step.
LEAST_S, MOST_S = Fraction(3, 10), Fraction(600)


def check(subject: Subject) -> Iterator[Problem]:
    """Estimates and element times of steps, then the lines of the table of elements nobody uses so far."""
    model = subject.model
    for name, element in model.elements.items():
        if element.time is not None and not LEAST_S <= element.time.value <= MOST_S:
            message = f"the element {name} takes {_words(element.time.value)}"
            yield Problem(("element", name), ("time",), message)
    for name, operation in model.operations.items():
        for number, step in enumerate(operation.steps):
            seconds = _seconds(subject, step)
            if seconds is not None and not LEAST_S <= seconds <= MOST_S:
                message = f"step {step.step} takes {_words(seconds)}"
                yield Problem(("operation", name), ("steps", number, "time"), message, (f"step:{step.step}",))


def _seconds(subject: Subject, step: Step) -> Fraction | None:
    """The typed time of a step; None where its element alone is already found."""
    if isinstance(step.time, Estimate):
        return step.time.seconds
    element = subject.model.elements.get(step.time.name) if step.time is not None else None
    if element is None or element.time is None or step.time is None or not LEAST_S <= element.time.value <= MOST_S:
        return None
    return element.time.value * step.time.count


def _words(seconds: Fraction) -> str:
    side = f"under {show_seconds(LEAST_S)}" if seconds < LEAST_S else f"over {show_seconds(MOST_S, 0)}"
    return f"{show_seconds(seconds, 2)}, {side}"


RULE = Rule(
    slug="time-implausible",
    severity=Severity.warning,
    why="A slipped unit, minutes for seconds, goes unseen into the standard and from there into every price.",
    remedy="Correct the number or its unit; split a step that really takes so long.",
    check=check,
    bad="""
operations/sew-hem.yaml:
  steps: [{step: look, time: 12 min}]
""",
    good="""
operations/sew-hem.yaml:
  steps: [{step: look, time: 12 s}]
""",
)
