"""Two callouts with one number."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity


def check(subject: Subject) -> Iterator[Problem]:
    """Numbers typed with `as:` once in a picture."""
    for name, operation in subject.model.operations.items():
        for number, step in enumerate(operation.steps):
            for at, shot in enumerate(step.shots):
                seen: set[int] = set()
                for place, mark in shot.numbered():
                    if mark in seen:
                        message = f"number {mark} is twice in the picture of step {step.step}"
                        path = ("steps", number, *shot.path, "callouts", place)
                        about = (f"step:{step.step}", f"shot:{step.step}-{at}")
                        yield Problem(("operation", name), path, message, about)
                    seen.add(mark)


RULE = Rule(
    slug="callout-number-twice",
    severity=Severity.error,
    why="The legend explains a number once; the reader can't know which of the two is meant.",
    remedy="Give it another number, or leave `as:` out: they are counted in the order typed.",
    check=check,
    bad="""
operations/sew-hem.yaml:
  steps:
    - step: lay
      photo: {file: photos/hem.jpg, alt: A hem., caption: rendered,
        callouts: [{number: [40 %, 30 %], as: 1, says: edge},
          {number: [60 %, 30 %], as: 1, says: fold}]}
""",
    good="""
operations/sew-hem.yaml:
  steps:
    - step: lay
      photo: {file: photos/hem.jpg, alt: A hem., caption: rendered,
        callouts: [{number: [40 %, 30 %], says: edge},
          {number: [60 %, 30 %], says: fold}]}
""",
    follows_from=("name-unknown",),
)
