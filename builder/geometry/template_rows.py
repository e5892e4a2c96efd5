"""Rows of places on a part to the card they are marked with."""

from __future__ import annotations

from collections.abc import Sequence

from builder.geometry.outline import Outline
from builder.geometry.shape import FeatureShape, PartShape
from builder.geometry.template_card import SLIT_MM, MarkingCard, Places, marking_card
from builder.geometry.vector import GeometryFault
from builder.model import At, Bartack


def card_for(shape: PartShape, names: Sequence[str]) -> MarkingCard:
    """The marking card of some features of a part, all measured on the part or on one patch of it.

    The datum edges are those the first of them is typed from; from a centre line, the left or bottom edge.
    Raises GeometryFault for a feature without single places, or features on different grounds.
    """
    features = [shape.features[name] for name in names if name in shape.features]
    for one in features:
        if not one.points or one.kind == "notch":
            raise GeometryFault(f"{one.name} has no single places to mark: bartacks, holes and hardware have")
    if len({one.feature.on for one in features}) > 1:
        raise GeometryFault("The features lie on different things, so no one card can be laid flush.")
    if not features:
        raise GeometryFault("There is no place to mark.")
    return marking_card(ground_of(shape, features[0]).bounds(), [_places(one) for one in features], datums(features[0]))


def ground_of(shape: PartShape, feature: FeatureShape) -> Outline:
    """What a feature is measured on: a patch it is typed `on:`, else its part."""
    on = feature.feature.on
    return shape.features[on].regions[0] if on is not None and shape.features[on].regions else shape.outline


def datums(feature: FeatureShape) -> tuple[str, str]:
    """The edges a feature is typed from: left or right, bottom or top."""
    at = feature.feature.at or At()
    return "right" if at.right is not None else "left", "top" if at.top is not None else "bottom"


def _places(feature: FeatureShape) -> Places:
    spec = feature.feature
    if isinstance(spec, Bartack):
        length = feature.size[0]
        return Places(feature.points, (length, SLIT_MM) if spec.stands == "across" else (SLIT_MM, length))
    # Hardware is marked by its centre; its own hole is punched at the station that sets it.
    return Places(feature.points, (feature.size[0] if feature.kind == "hole" else 0.0, 0.0))
