"""A picture that teaches without a word below it."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity


def check(subject: Subject) -> Iterator[Problem]:
    """`caption:` of each picture that is marked right or wrong or has callouts."""
    for name, operation in subject.model.operations.items():
        for number, step in enumerate(operation.steps):
            for shot in step.shots:
                judged = bool(shot.verdict or len(step.shots) > 1)
                if judged and not shot.picture.caption:
                    kind = f"{shot.verdict} picture" if shot.verdict else "picture"
                    message = f"the {kind} of step {step.step} has no caption"
                    path = ("steps", number, *shot.file_path)
                    yield Problem(("operation", name), path, message, (f"step:{step.step}",))


RULE = Rule(
    slug="photo-without-caption",
    severity=Severity.warning,
    why="A cross says that it is wrong, not what is: the reader guesses.",
    remedy="Add `caption:` with what to see: *even stitches, closed corners*.",
    check=check,
    bad="""
operations/sew-hem.yaml:
  steps:
    - step: lay
      photo: {
        good: {file: photos/hem.jpg, alt: A hem.},
        bad: {file: photos/hem.jpg, alt: A hem., caption: crooked}}
""",
    good="""
operations/sew-hem.yaml:
  steps:
    - step: lay
      photo: {
        good: {file: photos/hem.jpg, alt: A hem., caption: straight},
        bad: {file: photos/hem.jpg, alt: A hem., caption: crooked}}
""",
    follows_from=("name-unknown", "photo-without-words"),
)
