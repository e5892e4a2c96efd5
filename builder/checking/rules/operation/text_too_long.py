"""A sentence of a step that runs over too many lines."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.prose import STEP_KEYS
from builder.checking.rule import Problem, Rule, Subject
from builder.checking.sheet_room import lines_needed
from builder.finding import Severity
from builder.model import show_number

MOST_LINES = 4
"""Lines of one sentence that are still read at the machine: common practice, no source."""
_WORTH_MEASURING = 60  # letters; fewer never fill so many lines


def check(subject: Subject) -> Iterator[Problem]:
    """`do`, `key` and `why` of each step at the station's type size, without what line ends leave empty."""
    model = subject.model
    for name, operation in model.operations.items():
        station = model.stations.get(operation.station)
        if station is None:
            continue
        distance = float(station.distance.value)
        for number, step in enumerate(operation.steps):
            for key in STEP_KEYS:
                text = getattr(step, key) or ""
                if len(text) <= _WORTH_MEASURING:
                    continue
                lines = lines_needed(key, text, step, model.column_of(name), distance)
                if lines > MOST_LINES:
                    message = f"`{key}` of step {step.step} takes over {MOST_LINES} lines: {show_number(lines, 1)}"
                    yield Problem(("operation", name), ("steps", number, key), message, (f"step:{step.step}",))


RULE = Rule(
    slug="text-too-long",
    severity=Severity.warning,
    why="What can't be taken in at a glance is read once, in the first week, and never again.",
    remedy="Say it shorter, let the picture say it, or split the step.",
    check=check,
    bad="""
operations/sew-hem.yaml:
  steps: [{step: hem, do: Take the panel with both hands and hold it so that the folded edge looks to the right and
    lies flat on the table without a wave then sew the hem from one end of it to the other end of it.}]
""",
    good="""
operations/sew-hem.yaml:
  steps: [{step: hem, do: Sew the hem from end to end with the folded edge on the right.}]
""",
)
