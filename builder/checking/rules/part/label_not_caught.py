"""A label in an edge that no seam catches."""

from __future__ import annotations

import math
from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.checking.walk import inner_parts
from builder.finding import Severity
from builder.geometry import Outline, PartShape, Path, Placing
from builder.model import Seam, SewnTag

_STEP_MM = 1.0
"""A seam is looked at in steps of this length; a label is wider."""


def check(subject: Subject) -> Iterator[Problem]:
    """Labels caught in an edge against all seams of their part, and of the assemblies it goes into; every size.

    A seam catches a label where it runs through it. One that is caught in some size is left alone.
    """
    loose: dict[tuple[str, str], str] = {}
    caught: set[tuple[str, str]] = set()
    for _, shape in subject.shapes():
        seams = [path for one in shape.features.values() if isinstance(one.feature, Seam) for path in one.paths]
        for part, placing in ((shape, Placing()), *((one.shape, one.placing) for one in inner_parts(shape))):
            for name, edge, region in _labels(part, placing):
                loose.setdefault((part.name, name), edge)
                if any(_runs_through(path, region) for path in seams):
                    caught.add((part.name, name))
    for (part_name, name), edge in loose.items():
        if (part_name, name) not in caught:
            message = f"no seam runs through {name}, which lies in edge {edge} of {part_name}"
            yield Problem(("part", part_name), ("features", name), message, (f"feature:{name}",), key=True)


def _labels(part: PartShape, placing: Placing) -> Iterator[tuple[str, str, Outline]]:
    for name, feature in part.features.items():
        if isinstance(feature.feature, SewnTag) and feature.feature.in_ is not None:
            yield name, feature.feature.in_, placing.outline(feature.regions[0])


def _runs_through(path: Path, region: Outline) -> bool:
    left, bottom, right, top = region.bounds()
    for run in path.runs:
        x0, y0, x1, y1 = run.bounds()
        if x1 < left or x0 > right or y1 < bottom or y0 > top:
            continue
        steps = max(math.ceil(run.length / _STEP_MM), 1)
        if any(region.contains(run.point_at(step / steps)) for step in range(steps + 1)):
            return True
    return False


_PLANT = """
parts/panel.yaml:
  features:
    low-seam: {seam: bottom, inset: 8 mm}
    brand: {tag: snap, width: 20 mm, height: 30 mm, in: bottom, at: {left: 80 mm}, overhang: OVERHANG, folded: centre}
operations/sew-hem.yaml:
  steps:
    - {step: label, place: brand, do: Slip the label in., time: 3 s}
    - {step: low, sew: low-seam, do: Sew the lower edge., time: 2 s}
"""

RULE = Rule(
    slug="label-not-caught",
    severity=Severity.error,
    why="The label falls out of the finished edge, or hangs by a few threads.",
    remedy="Give it less overhang, place it where the seam runs, or name the edge that is sewn.",
    check=check,
    bad=_PLANT.replace("OVERHANG", "24 mm"),
    good=_PLANT.replace("OVERHANG", "15 mm"),
    follows_from=("shape-impossible", "expression-unreadable", "part-without-shape"),
)
