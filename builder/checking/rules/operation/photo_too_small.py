"""A photo that prints coarse."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.checking.sheet_room import photo_widths_mm
from builder.finding import Severity
from builder.model import Shot, show_number

LEAST_DPI = 200
"""Common practice, no source: below it the eye sees steps where a seam should be."""


def check(subject: Subject) -> Iterator[Problem]:
    """Pixels of each photo, of its part that is shown, over the width a sheet prints it at."""
    for name, operation in subject.model.operations.items():
        column = subject.model.column_of(name)
        for number, step in enumerate(operation.steps):
            # Of a drawing or a broken photo nobody knows pixels; then the widths of its neighbours aren't known either.
            if not step.shots or not all(shot.picture.file in subject.photos for shot in step.shots):
                continue
            sizes = [_shown(shot, subject.photos[shot.picture.file]) for shot in step.shots]
            for shot, pixels, width in zip(step.shots, sizes, photo_widths_mm(sizes, step, column), strict=True):
                dpi = pixels[0] / (width / 25.4)
                if dpi < LEAST_DPI:
                    message = (
                        f"the photo of step {step.step} has {pixels[0]} × {pixels[1]} pixels; printed"
                        f" {show_number(width, 0)} mm wide that is {show_number(dpi, 0)} dots per inch"
                    )
                    about = (f"step:{step.step}", f"photo:{shot.picture.file}")
                    yield Problem(("operation", name), ("steps", number, *shot.file_path), message, about)


def _shown(shot: Shot, pixels: tuple[int, int]) -> tuple[int, int]:
    left, top, right, bottom = shot.area
    return max(1, int((right - left) * pixels[0])), max(1, int((bottom - top) * pixels[1]))


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
    follows_from=("photo-without-words", "callout-empty", "callout-outside-picture"),
)
