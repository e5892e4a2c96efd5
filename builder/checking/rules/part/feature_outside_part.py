"""A feature that leaves its part."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.geometry import FeatureShape, PartShape, Path, path_inside
from builder.model import Strip


def check(subject: Subject) -> Iterator[Problem]:
    """Seams, boxes, bartacks, holes, hardware and folds of every part, in every size, inside the outline."""
    seen: set[tuple[str, str]] = set()
    for name in subject.model.parts:
        for size, shape in subject.shapes(name):
            for feature in shape.features.values():
                if (name, feature.name) in seen or isinstance(feature.feature, Strip):
                    continue
                point = _outside(shape, feature)
                if point is not None:
                    seen.add((name, feature.name))
                    of = f" in size {size}" if size else ""
                    message = f"{feature.name} leaves {name}{of} at x {point[0]:.1f} mm, y {point[1]:.1f} mm"
                    path = ("features", feature.name)
                    yield Problem(("part", name), path, message, (f"feature:{feature.name}",), key=True)


_ON_THE_EDGE = 0.01


def _outside(shape: PartShape, feature: FeatureShape) -> tuple[float, float] | None:
    """The first point of a feature that lies outside its part, None when all of it is inside."""
    if feature.kind == "notch":
        return None
    ground = shape.outline
    on = feature.feature.on
    if on is not None and on in shape.features and shape.features[on].regions:
        ground = shape.features[on].regions[0]  # a box on a strip must stay on the strip
    for path in feature.paths:
        if (point := path_inside(ground, path, _ON_THE_EDGE)) is not None:
            return point
    for region in feature.regions:
        if (point := path_inside(ground, Path(region.segments), _ON_THE_EDGE)) is not None:
            return point
    radius = feature.size[0] / 2 if feature.kind in ("hole", "hardware") else 0.0
    for point in feature.points:
        if not ground.contains(point, _ON_THE_EDGE) or ground.distance_to_boundary(point) < radius - _ON_THE_EDGE:
            return point
    return None


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
    ),
)
