"""An area with no extent: nothing of a crop is left, or nothing is hidden."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.model import Arrow, Blur, Frame, Ring, Shot


def check(subject: Subject) -> Iterator[Problem]:
    """Crops, hidden areas and boxes have a width and a height, rings a size, arrows a length."""
    for name, operation in subject.model.operations.items():
        for number, step in enumerate(operation.steps):
            for at, shot in enumerate(step.shots):
                for path, words in _empty(shot):
                    message = f"the {words} in the picture of step {step.step} has no size"
                    about = (f"step:{step.step}", f"shot:{step.step}-{at}")
                    yield Problem(("operation", name), ("steps", number, *shot.path, *path), message, about)


def _empty(shot: Shot) -> Iterator[tuple[tuple[str | int, ...], str]]:
    if shot.picture.crop is not None and _flat(shot.picture.crop):
        yield ("crop",), "crop"
    for number, one in enumerate(shot.picture.callouts):
        match one:
            case Blur() if _flat(one.blur):
                yield ("callouts", number, "blur"), "hidden area"
            case Frame() if _flat(one.box):
                yield ("callouts", number, "box"), "box"
            case Arrow() if one.arrow[0] == one.arrow[1]:
                yield ("callouts", number, "arrow"), "arrow"
            case Ring() if one.size <= 0:
                yield ("callouts", number, "size"), "ring"


def _flat(corners: tuple[tuple[Fraction, Fraction], tuple[Fraction, Fraction]]) -> bool:
    """Do two corners lie above or beside each other?"""
    return corners[0][0] == corners[1][0] or corners[0][1] == corners[1][1]


RULE = Rule(
    slug="callout-empty",
    severity=Severity.error,
    why="What was to be hidden is not hidden, and what was to be shown is not shown.",
    remedy="Type two opposite corners, as [[10 %, 20 %], [40 %, 35 %]].",
    check=check,
    bad="""
operations/sew-hem.yaml:
  steps:
    - step: lay
      photo: {file: photos/hem.jpg, alt: A hem., caption: rendered,
        callouts: [{blur: [[10 %, 20 %], [10 %, 40 %]]}]}
""",
    good="""
operations/sew-hem.yaml:
  steps:
    - step: lay
      photo: {file: photos/hem.jpg, alt: A hem., caption: rendered,
        callouts: [{blur: [[10 %, 20 %], [30 %, 40 %]]}]}
""",
    follows_from=("name-unknown",),
)
