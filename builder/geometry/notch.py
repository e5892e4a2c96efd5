"""What is cut into an edge as a notch: a V, a slit or a castle."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Literal

from builder.geometry.path import Path, polyline
from builder.geometry.shape import FeatureShape
from builder.geometry.vector import Point, add, left, lerp, scale

# Half the width of a notch's mouth for its depth. Common practice, no source.
_HALF: Mapping[str, float] = {"v": 0.5, "slit": 0.0, "castle": 0.5}


def notch_path(cut: Literal["v", "slit", "castle"], at: Point, along: Point, depth: float) -> Path:
    """The path of the cutter, from lip to lip; a slit is one line from the edge inward.

    at, along : the place on the edge, and the edge's direction there with the goods to its left
    """
    inward, half = scale(left(along), depth), scale(along, depth * _HALF[cut])
    before, after, tip = add(at, scale(half, -1.0)), add(at, half), add(at, inward)
    if cut == "slit":
        return polyline([at, tip])
    if cut == "castle":
        return polyline([before, add(before, inward), add(after, inward), after])
    return polyline([before, tip, after])


def notch_tip(feature: FeatureShape) -> Point:
    """The innermost point of a notch, the middle of a castle's bottom."""
    runs = feature.paths[0].runs
    return lerp(runs[1].start, runs[1].end, 0.5) if len(runs) == 3 else runs[0].end
