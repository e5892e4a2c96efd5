"""A part larger than the bed it is cut on."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.cuts import Cut, cuts
from builder.checking.lengths import length_words
from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.model import Bed

_SLACK_MM = 1e-6


def check(subject: Subject) -> Iterator[Problem]:
    """The box round each part cut out against the station's `bed`, either way round, in every size."""
    for cut in cuts(subject, "contour", "cycle"):
        if cut.station.bed is not None:
            yield from _problem(subject, cut, cut.station.bed)


def _problem(subject: Subject, cut: Cut, bed: Bed) -> Iterator[Problem]:
    short, long = sorted((float(bed.width.value), float(bed.length.value)))
    for size, shape in subject.shapes_of(cut.part):
        left, bottom, right, top = shape.bounds
        narrow, tall = sorted((right - left, top - bottom))
        if narrow > short + _SLACK_MM or tall > long + _SLACK_MM:
            of = f" in size {size}" if size else ""
            mine = f"{length_words(subject, right - left)} x {length_words(subject, top - bottom)}"
            its = f"{length_words(subject, bed.width.value)} x {length_words(subject, bed.length.value)}"
            message = f"{cut.part} is {mine}{of}; the bed of {cut.station.title} is {its}"
            yield Problem(("operation", cut.operation), cut.path, message, (f"part:{cut.part}",))
            return


_PLANT = """
stations/all.yaml:
  stations: {laser: {bed: {width: 250 mm, length: LENGTH}}}
operations/cut-panel.yaml:
  steps: [{step: cut, cut: panel}]
"""

RULE = Rule(
    slug="bed-too-small",
    severity=Severity.error,
    why="The piece comes out in two, or is cut by hand, and no two are alike.",
    remedy="Cut it on a larger bed, or divide the part.",
    check=check,
    bad=_PLANT.replace("LENGTH", "280 mm"),
    good=_PLANT.replace("LENGTH", "320 mm"),
    follows_from=("shape-impossible",),
)
