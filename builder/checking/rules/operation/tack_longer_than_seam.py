"""Back-tacks that are most of their seam."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.lengths import length_words
from builder.checking.rule import Problem, Rule, Subject, Worked
from builder.finding import Severity
from builder.model import Seam

MOST = 0.5
"""Tacks longer than this share of their seam are a slip. Common practice, no source."""


def check(subject: Subject) -> Iterator[Problem]:
    """Tack stitches times stitch length against half of the seam, in every size."""
    for name in subject.model.operations:
        stitch = subject.settings(name).get("stitch length")
        if stitch is None or stitch.nominal is None:
            continue
        for one in subject.worked(name):
            if one.key == "sew" and isinstance(one.feature, Seam) and one.feature.tack_ends:
                yield from _problem(subject, name, one, one.feature, float(stitch.nominal))


def _problem(subject: Subject, operation: str, one: Worked, seam: Seam, stitch_mm: float) -> Iterator[Problem]:
    ends = seam.tack_ends
    tacked = ends * seam.tack_stitches * stitch_mm
    for size, shape in subject.shapes_of(one.part):
        built = shape.features.get(one.name)
        length = sum(path.length for path in built.paths) if built is not None else 0.0
        if 0 < length * MOST < tacked - 1e-6:
            of = f" in size {size}" if size else ""
            each = "at each end" if ends == 2 else f"at the {seam.tack}"
            message = (
                f"{one.name} is {length_words(subject, length)} long{of}, and {seam.tack_stitches} stitches tacked "
                f"{each} take {length_words(subject, tacked)} of it"
            )
            yield Problem(("operation", operation), one.path, message, (f"feature:{one.name}", "setting:stitch length"))
            return


_PLANT = """
parts/panel.yaml:
  features:
    stay:
      seam: line
      points: [{left: 50 mm, bottom: 50 mm}, {left: 74 mm, bottom: 50 mm}]
      tack stitches: COUNT
operations/sew-hem.yaml:
  steps: [{step: stay, sew: stay, do: Sew the stay., time: 2 s}]
"""

RULE = Rule(
    slug="tack-longer-than-seam",
    severity=Severity.warning,
    why="The tacks lie on each other: a hard lump of thread in a seam cut through by its own needle holes.",
    remedy="Fewer `tack stitches:`, a tack at one end only, or a bartack in place of the seam.",
    check=check,
    bad=_PLANT.replace("COUNT", "5"),
    good=_PLANT.replace("COUNT", "2"),
    follows_from=("setting-unreadable", "setting-outside-range", "step-feature-missing"),
)
