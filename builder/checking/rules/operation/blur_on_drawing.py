"""A hidden area of a drawing, which has no pixels to hide."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.model import Blur


def check(subject: Subject) -> Iterator[Problem]:
    """`blur:` on photos only."""
    for name, operation in subject.model.operations.items():
        for number, step in enumerate(operation.steps):
            for shot in step.shots:
                if not shot.picture.file.lower().endswith(".svg"):
                    continue
                for place, one in enumerate(shot.picture.callouts):
                    if isinstance(one, Blur):
                        message = f"step {step.step} hides an area of a drawing"
                        path = ("steps", number, *shot.path, "callouts", place)
                        yield Problem(("operation", name), path, message, (f"step:{step.step}",))


RULE = Rule(
    slug="blur-on-drawing",
    severity=Severity.error,
    why="A drawing is kept as lines, so what should be hidden could be read in the file.",
    remedy="Delete it in the drawing program, or save the drawing as a PNG.",
    check=check,
    bad="""
operations/sew-hem.yaml:
  steps:
    - step: lay
      photo: {file: photos/hem.svg, alt: A hem., caption: drawn,
        callouts: [{blur: [[10 %, 20 %], [30 %, 40 %]]}]}
""",
    good="""
operations/sew-hem.yaml:
  steps:
    - step: lay
      photo: {file: photos/hem.svg, alt: A hem., caption: drawn,
        callouts: [{ring: [10 %, 20 %]}]}
""",
    follows_from=("name-unknown",),
)
