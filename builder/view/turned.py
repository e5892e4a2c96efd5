"""Parts turned right side out: which seams lie inside, and the edge they make."""

from __future__ import annotations

from collections.abc import Sequence

from builder.geometry import FeatureShape, Outline, PartShape, Path, Segment, inside_edge, sewn_edge
from builder.model import Seam

_REACH_MM = 30.0
"""A seam farther from an edge than this isn't that edge's."""


def closing_seams(shape: PartShape, before: frozenset[tuple[str, str]]) -> list[FeatureShape]:
    """Seams along edges that close a part: they join it to another, or an assembly's layers to each other."""
    return [
        one
        for name, one in shape.features.items()
        if (shape.name, name) in before
        and isinstance(seam := one.feature, Seam)
        and seam.seam != ("line",)
        and seam.binding is None
        and seam.on is None
        and (seam.joins or shape.components)
    ]


def at_seams(outline: Outline, closing: Sequence[Path]) -> tuple[Outline, tuple[Segment, ...]]:
    """The edge as closing seams make it, and where the raw edges lie inside."""
    inside: list[Segment] = []
    for path in closing:
        allowance = outline.distance_to_boundary(path.runs[0].point_at(0.5))
        if allowance > _REACH_MM or not outline.contains(path.runs[0].point_at(0.5)):
            continue
        outline = sewn_edge(outline, path)
        inside += inside_edge(outline, path, allowance)
    return outline, tuple(inside)
