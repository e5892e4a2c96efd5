"""A photo nobody put into words."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity


def check(subject: Subject) -> Iterator[Problem]:
    """`alt:` of every picture."""
    for name, operation in subject.model.operations.items():
        for number, step in enumerate(operation.steps):
            for shot in step.shots:
                if not shot.picture.alt:
                    message = f"the photo of step {step.step} has no text alternative"
                    path = ("steps", number, *shot.file_path)
                    yield Problem(("operation", name), path, message, (f"step:{step.step}",))


RULE = Rule(
    slug="photo-without-words",
    severity=Severity.error,
    why="A reader who can't see the picture gets nothing from it, and a tagged PDF can't be made.",
    remedy="Add `alt:` with what the photo shows.",
    check=check,
    bad="""
operations/sew-hem.yaml:
  steps: [{step: lay, photo: photos/hem.jpg}]
""",
    good="""
operations/sew-hem.yaml:
  steps: [{step: lay, photo: photos/hem.jpg, alt: A straight hem., caption: rendered picture}]
""",
    follows_from=("name-unknown",),
)
