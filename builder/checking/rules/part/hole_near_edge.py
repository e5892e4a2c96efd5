"""A hole, a slot or a snap too near to the raw edge."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.collision import MARK_MM
from builder.checking.edges import finished_edges, ground_part, woven_to_width
from builder.checking.inside import ON_THE_EDGE, ground_of
from builder.checking.rule import Problem, Rule, Subject
from builder.checking.walk import in_size, length_words
from builder.finding import Severity
from builder.geometry import FeatureShape, PartShape, Segment, discs_of, distance_point_segment

_ALONG = ("bottom", "top")


def check(subject: Subject) -> Iterator[Problem]:
    """Rim of each hole, slot and piece of hardware, marks left out, against the raw edges, in every size.

    Less cloth than the hole's own radius, or half the slot's width, tears out: common practice, no source.
    """
    seen: set[tuple[str, str]] = set()
    for size, shape in subject.shapes():
        for name, feature in shape.features.items():
            if not _cut_through(feature) or (shape.name, name) in seen:
                continue
            cloth = _least_cloth(subject, shape, feature)
            _, radius = discs_of(feature, 0)
            if cloth is not None and -ON_THE_EDGE <= cloth < radius - ON_THE_EDGE:
                seen.add((shape.name, name))
                left, wants = length_words(max(cloth, 0.0), subject.model), length_words(radius, subject.model)
                message = f"between {name} and a raw edge there are {left}{in_size(size)}, it wants {wants}"
                yield Problem(("part", shape.name), ("features", name), message, (f"feature:{name}",), key=True)


def _cut_through(feature: FeatureShape) -> bool:
    """Holes and slots that are no marks, and hardware pressed through; a buckle is sewn on."""
    if feature.kind == "slot":
        return True
    return feature.kind in ("hole", "hardware") and not feature.regions and feature.size[0] > MARK_MM


def _least_cloth(subject: Subject, shape: PartShape, feature: FeatureShape) -> float | None:
    """Least distance from the rim to a raw edge, mm; None when no edge is raw."""
    edges = _raw_edges(subject, shape, feature)
    if not edges:
        return None
    discs = [discs_of(feature, number) for number in range(len(feature.points))]
    return min(
        distance_point_segment(point, edge) - radius for points, radius in discs for point in points for edge in edges
    )


def _raw_edges(subject: Subject, shape: PartShape, feature: FeatureShape) -> list[Segment]:
    ground = ground_part(shape.part, feature.feature.on) or shape.name
    finished = finished_edges(subject, ground)
    if "all" in finished:
        return []
    finished |= set(_ALONG) if woven_to_width(subject, ground) else set()
    outline = ground_of(shape, feature)
    skipped = {number for name in finished & set(outline.edges) for number in range(*outline.edges[name])}
    return [segment for number, segment in enumerate(outline.segments) if number not in skipped]


RULE = Rule(
    slug="hole-near-edge",
    severity=Severity.warning,
    why="Too little cloth is left beside the hole, and it tears out at the first pull.",
    remedy="Move it inward, or fold or bind the edge first.",
    check=check,
    bad="""
parts/panel.yaml:
  features: {snap-place: {at: {bottom: 10 mm}}}
""",
    good="""
parts/panel.yaml:
  features: {snap-place: {at: {bottom: 14 mm}}}
""",
    follows_from=("shape-impossible", "expression-unreadable", "feature-outside-part", "row-off-strip"),
)
