"""A callout nobody sees, because it lies outside what is shown."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.model import WHOLE, Area, Blur, Shot, show_number


def check(subject: Subject) -> Iterator[Problem]:
    """Places of callouts between the edges of the picture, or of its crop; a crop inside the picture."""
    for name, operation in subject.model.operations.items():
        for number, step in enumerate(operation.steps):
            for at, shot in enumerate(step.shots):
                about = (f"step:{step.step}", f"shot:{step.step}-{at}")
                for path, (x, y), (left, top, right, bottom) in _places(shot):
                    if not (left <= x <= right and top <= y <= bottom):
                        shown = f"{show_number(float(x) * 100, 1)} %, {show_number(float(y) * 100, 1)} %"
                        cropped = shot.picture.crop is not None and path[0] != "crop"
                        what = "what its crop leaves of the picture" if cropped else "the picture"
                        message = f"[{shown}] lies outside {what} of step {step.step}"
                        yield Problem(("operation", name), ("steps", number, *shot.path, *path), message, about)


def _places(shot: Shot) -> Iterator[tuple[tuple[str | int, ...], tuple[Fraction, Fraction], Area]]:
    """Each place with the path to it and where it must lie. A hidden area may reach beyond what is shown."""
    for number, corner in enumerate(shot.picture.crop or ()):
        yield ("crop", number), corner, WHOLE
    for number, one in enumerate(shot.picture.callouts):
        for path, spot in one.points():
            yield ("callouts", number, *path), spot, WHOLE if isinstance(one, Blur) else shot.area


RULE = Rule(
    slug="callout-outside-picture",
    severity=Severity.error,
    why="What is pointed out beside the picture is not pointed out.",
    remedy="Places are shares of the whole picture, from its left and from its top, between 0 % and 100 %.",
    check=check,
    bad="""
operations/sew-hem.yaml:
  steps:
    - step: lay
      photo: {file: photos/hem.jpg, alt: A hem., caption: rendered,
        callouts: [{ring: [40 %, 130 %]}]}
""",
    good="""
operations/sew-hem.yaml:
  steps:
    - step: lay
      photo: {file: photos/hem.jpg, alt: A hem., caption: rendered,
        callouts: [{ring: [40 %, 30 %]}]}
""",
    follows_from=("name-unknown", "callout-empty"),
)
