"""A wrong picture without a right one, or a right without a wrong."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity


def check(subject: Subject) -> Iterator[Problem]:
    """Where one picture of a step is judged, both kinds are there."""
    for name, operation in subject.model.operations.items():
        for number, step in enumerate(operation.steps):
            judged = [shot for shot in step.shots if shot.verdict]
            if len({shot.verdict for shot in judged}) == 1:
                found = judged[0].verdict
                other = "wrong" if found == "right" else "right"
                message = f"step {step.step} shows {found} work and no {other}"
                path = ("steps", number, *judged[0].path)
                yield Problem(("operation", name), path, message, (f"step:{step.step}",))


RULE = Rule(
    slug="photo-pair-one-sided",
    severity=Severity.warning,
    why="Who sees only one of the two doesn't learn where the one ends and the other begins.",
    remedy="Add the other picture, or leave `shows:` out.",
    check=check,
    bad="""
operations/sew-hem.yaml:
  steps:
    - step: lay
      photo: {bad: {file: photos/hem.jpg, alt: A hem., caption: crooked}}
""",
    good="""
operations/sew-hem.yaml:
  steps:
    - step: lay
      photo: {
        good: {file: photos/hem.jpg, alt: A hem., caption: straight},
        bad: {file: photos/hem.jpg, alt: A hem., caption: crooked}}
""",
    follows_from=("name-unknown",),
)
