"""A photo that prints coarse."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.checking.sheet_room import photo_width_mm
from builder.finding import Severity
from builder.model import show_number

LEAST_DPI = 200
"""Common practice, no source: below it the eye sees steps where a seam should be."""


def check(subject: Subject) -> Iterator[Problem]:
    """Pixels of each photo over the width a sheet prints it at."""
    paper = subject.model.plant.paper
    for name, operation in subject.model.operations.items():
        for number, step in enumerate(operation.steps):
            pixels = subject.photos.get(step.photo or "")
            if pixels is None:
                continue
            width = photo_width_mm(pixels, step, paper)
            dpi = pixels[0] / (width / 25.4)
            if dpi < LEAST_DPI:
                message = (
                    f"the photo of step {step.step} has {pixels[0]} × {pixels[1]} pixels; printed"
                    f" {show_number(width, 0)} mm wide that is {show_number(dpi, 0)} dots per inch"
                )
                about = (f"step:{step.step}", f"photo:{step.photo}")
                yield Problem(("operation", name), ("steps", number, "photo"), message, about)


RULE = Rule(
    slug="photo-too-small",
    severity=Severity.warning,
    why=f"Under {LEAST_DPI} dots per inch a skipped stitch is a grey spot, and the photo shows nothing.",
    remedy="Take it again nearer, or use the file as the camera made it.",
    check=check,
    bad="""
operations/sew-hem.yaml:
  steps: [{step: lay, photo: photos/small.jpg, alt: A straight hem., caption: rendered picture}]
""",
    good="""
operations/sew-hem.yaml:
  steps: [{step: lay, photo: photos/hem.jpg, alt: A straight hem., caption: rendered picture}]
""",
    follows_from=("photo-without-words",),
)
