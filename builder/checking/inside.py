"""Whether a feature stays on what it lies on: its part, or the strip named by `on:`."""

from __future__ import annotations

from builder.geometry import ROUND_KINDS, FeatureShape, Outline, PartShape, Path, Point, path_inside
from builder.model import Feature, Fold, Seam, SewnTag

ON_THE_EDGE = 0.01
"""Nearer to the edge than this is on it, mm."""


def ground_of(shape: PartShape, feature: FeatureShape) -> Outline:
    """The area a feature must stay on. A box on a strip must stay on the strip."""
    on = feature.feature.on
    if on is not None and on in shape.features and shape.features[on].regions:
        return shape.features[on].regions[0]
    return shape.outline


def first_outside(shape: PartShape, feature: FeatureShape) -> Point | None:
    """The first point of a feature that lies outside its ground, None when all of it is inside.

    A notch is cut into the edge and never outside, a label caught in an edge may stand out beyond it, a zip beyond the
    edge it is sewn to; a path beside an edge that left the piece could not be built.
    """
    if feature.kind in ("notch", "zip") or _beside_an_edge(feature.feature):
        return None
    ground = ground_of(shape, feature)
    for path in feature.paths:
        if (point := path_inside(ground, path, ON_THE_EDGE)) is not None:
            return point
    if feature.kind in ("pleat", "dart"):
        return None  # the cloth they take lies between their lines
    items = max(len(feature.regions), len(feature.points))
    return next((point for number in range(items) if (point := _item_outside(ground, feature, number))), None)


def _beside_an_edge(feature: Feature) -> bool:
    if isinstance(feature, Seam):
        return feature.seam not in (("line",), ("along",))
    if isinstance(feature, SewnTag):
        return feature.in_ is not None
    return isinstance(feature, Fold) and feature.fold != "line"


def items_inside(ground: Outline, feature: FeatureShape) -> list[bool]:
    """For each hole, piece of hardware or bartack of a row, whether it stays on the ground."""
    return [_item_outside(ground, feature, number) is None for number in range(len(feature.points))]


def _item_outside(ground: Outline, feature: FeatureShape, number: int) -> Point | None:
    if number < len(feature.regions):
        return path_inside(ground, Path(feature.regions[number].segments), ON_THE_EDGE)
    point = feature.points[number]
    radius = feature.size[0] / 2 if feature.kind in ROUND_KINDS else 0.0
    clear = ground.contains(point, ON_THE_EDGE) and ground.distance_to_boundary(point) >= radius - ON_THE_EDGE
    return None if clear else point
