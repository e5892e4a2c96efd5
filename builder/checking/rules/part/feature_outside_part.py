"""A feature that leaves its part."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.inside import first_outside
from builder.checking.rule import Problem, Rule, Subject
from builder.checking.walk import in_size
from builder.finding import Severity
from builder.model import Strip


def check(subject: Subject) -> Iterator[Problem]:
    """Seams, boxes, bartacks, holes, hardware, folds, pleats, darts, elastic: in every size, inside the outline."""
    seen: set[tuple[str, str]] = set()
    for size, shape in subject.shapes():
        for feature in shape.features.values():
            if (shape.name, feature.name) in seen or isinstance(feature.feature, Strip):
                continue
            point = first_outside(shape, feature)
            if point is not None:
                seen.add((shape.name, feature.name))
                where = f"x {point[0]:.1f} mm, y {point[1]:.1f} mm"
                message = f"{feature.name} leaves {shape.name}{in_size(size)} at {where}"
                path = ("features", feature.name)
                yield Problem(("part", shape.name), path, message, (f"feature:{feature.name}",), key=True)


RULE = Rule(
    slug="feature-outside-part",
    severity=Severity.error,
    why="A seam beside the cloth can't be sewn; a hole off the edge is a torn edge.",
    remedy="Move the feature, or make the part larger.",
    check=check,
    bad="""
parts/panel.yaml:
  features: {snap-hole: {hole: 4 mm, at: {left: 310 mm, top: 20 mm}}}
""",
    good="""
parts/panel.yaml:
  features: {snap-hole: {hole: 4 mm, at: {left: 20 mm, top: 20 mm}}}
""",
    follows_from=(
        "shape-impossible",
        "expression-unreadable",
        "row-off-strip",
    ),
)
