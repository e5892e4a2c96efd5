"""Where a named dimension is drawn: from which point to which, and on which side its line lies."""

from __future__ import annotations

import math
from collections.abc import Sequence

from builder.geometry import (
    Bounds,
    FeatureShape,
    Outline,
    PartShape,
    Point,
    Segment,
    axis_of,
    distance_point_segment,
    feature_bounds,
    has_sides,
)
from builder.model import Bartack, Box, Fold, Laid, Seam, Slot
from builder.view.chain import CHAINED, chain_line
from builder.view.shaping_lines import shaping_line
from builder.view.strokes_shaping import SHAPING

Drawn = tuple[Point, Point, Point]
"""Start, end, and the unit direction in which the dimension line stands off."""

_DOWN, _UP, _LEFT, _RIGHT = (0.0, -1.0), (0.0, 1.0), (-1.0, 0.0), (1.0, 0.0)


def dimension_points(shape: PartShape, short: str, whole: bool = False) -> Drawn | None:
    """The points of `width`, `handle-box.left`, `hem-seam.inset` … on a shape, None for what has no such line.

    whole : a pitch is drawn over all of its row
    """
    owner, _, dimension = short.rpartition(".")
    if not owner:
        if dimension == "allowance":
            return _allowance(shape, "")
        # A strip lies along x: its length is the width of its box, its width the height.
        lying = shape.part.outline is not None and shape.part.outline.strip is not None
        box = shape.seam_line.bounds() if shape.typed_seam and shape.seam_line else shape.bounds
        return _of_box("height" if lying and dimension == "width" else dimension, box)
    if owner == "allowance" and owner not in shape.features:
        return _allowance(shape, dimension)
    feature = shape.features.get(owner)
    if feature is None:
        return None
    box = feature_bounds(feature)
    if dimension == "inset":
        return _inset(feature, _ground(feature, shape))
    if dimension == "off":
        return _off(feature, shape)
    if feature.kind in SHAPING and (line := shaping_line(feature, dimension)) is not None:
        return line
    if dimension in CHAINED:
        return chain_line(feature, dimension, whole)
    if isinstance(feature.feature, Bartack | Slot) and dimension in ("length", "slot", "width"):
        return _of_long(feature, dimension)
    if dimension in ("width", "height", "length") and isinstance(feature.feature, Box) | bool(feature.regions):
        return _of_box("width" if dimension == "length" else dimension, box)
    at = feature.feature.at
    source = shape.features.get(at.from_) if at is not None and at.from_ is not None else None
    if source is not None and dimension in _BESIDE:
        return _beside(dimension, _first_bounds(feature), feature_bounds(source))
    ground = feature_bounds(source) if source is not None else _ground(feature, shape).bounds()
    return _to_edge(dimension, _first_bounds(feature) if feature.points else box, ground)


def _first_bounds(feature: FeatureShape) -> Bounds:
    """What a place is measured to: of a row, the centre of its first piece."""
    if not feature.points:
        return feature_bounds(feature)
    x, y = feature.points[0]
    return x, y, x, y


def _of_long(feature: FeatureShape, dimension: str) -> Drawn:
    """Length or width of the first of a row of slots or bartacks, as it is turned."""
    (x0, y0), (x1, y1) = axis_of(feature, 0)
    length = math.dist((x0, y0), (x1, y1))
    along = ((x1 - x0) / length, (y1 - y0) / length)
    aside = (along[1], -along[0]) if abs(along[0]) >= abs(along[1]) else (abs(along[1]), -along[0])
    half = feature.size[1] / 2
    if dimension != "width":
        out = (aside[0] * half, aside[1] * half)
        return (x0 + out[0], y0 + out[1]), (x1 + out[0], y1 + out[1]), aside
    return (x1 - aside[0] * half, y1 - aside[1] * half), (x1 + aside[0] * half, y1 + aside[1] * half), along


_BESIDE = ("right-of", "left-of", "above", "below")


def _beside(dimension: str, box: Bounds, source: Bounds) -> Drawn:
    """The gap between a feature and the one it is measured from."""
    left, bottom, right, top = box
    x, y = min(max(right, source[0]), source[2]), min(max(bottom, source[1]), source[3])
    match dimension:
        case "right-of":
            return (source[2], y), (left, bottom), _DOWN
        case "left-of":
            return (right, bottom), (source[0], y), _DOWN
        case "above":
            return (x, source[3]), (right, bottom), _RIGHT
    return (right, top), (x, source[1]), _RIGHT


def _ground(feature: FeatureShape, shape: PartShape) -> Outline:
    on = feature.feature.on
    if on is not None and on in shape.features and shape.features[on].regions:
        return shape.features[on].regions[0]
    return shape.outline


def _of_box(dimension: str, box: Bounds) -> Drawn | None:
    left, bottom, right, top = box
    if dimension in ("width", "length"):
        return (left, bottom), (right, bottom), _DOWN
    if dimension == "height":
        return (right, bottom), (right, top), _RIGHT
    return None


def _to_edge(dimension: str, box: Bounds, ground: Bounds) -> Drawn | None:
    left, bottom, right, top = box
    match dimension:
        case "left":
            return (ground[0], bottom), (left, bottom), _DOWN
        case "right":
            return (right, bottom), (ground[2], bottom), _DOWN
        case "bottom":
            return (right, ground[1]), (right, bottom), _RIGHT
        case "top":
            return (right, top), (right, ground[3]), _RIGHT
    return None


def _allowance(shape: PartShape, edge: str) -> Drawn | None:
    """Across from the seam line to the cut edge of an edge, or of the first edge without an entry of its own."""
    if shape.seam_line is None or shape.part.outline is None:
        return None
    named = [edge] if edge else [one for one in shape.outline.edges if one not in shape.part.outline.allowance]
    if not named or named[0] not in shape.seam_line.edges or named[0] not in shape.outline.edges:
        return None
    return _across(shape.seam_line.edge(named[0]), shape.outline.edge(named[0]))


def _inset(feature: FeatureShape, ground: Outline) -> Drawn | None:
    """Across from the seam to the edge beside it, at the middle of its longest run."""
    if not feature.paths:
        return None
    return _across(feature.paths[0].runs, _named_edges(feature, ground))


def _off(feature: FeatureShape, shape: PartShape) -> Drawn | None:
    """Across from a seam to the feature it runs beside."""
    spec = feature.feature
    other = shape.features.get(spec.of or "") if isinstance(spec, Seam) else None
    if other is None or not feature.paths:
        return None
    runs = feature.paths[0].runs
    if not has_sides(other):
        return _across(runs, tuple(one for path in other.paths for one in path.runs))
    area = other.regions[0]
    named = spec.sides if isinstance(spec, Seam) else ()
    sides = tuple(segment for name in named if name in area.edges for segment in area.edge(name))
    return _across(runs, sides or area.segments)


def _across(runs: Sequence[Segment], edges: Sequence[Segment]) -> Drawn | None:
    """From the longest run of a line square to the edges beside it, None where they lie on each other."""
    if not runs or not edges:
        return None
    run = max(runs, key=lambda one: one.length)
    at, (tx, ty) = run.point_at(0.62), run.tangent_at(0.62)
    gap = min(distance_point_segment(at, segment) for segment in edges)
    if gap < 1e-6:
        return None
    sides = ((at[0] + ty * gap, at[1] - tx * gap), (at[0] - ty * gap, at[1] + tx * gap))
    edge = min(sides, key=lambda side: min(distance_point_segment(side, segment) for segment in edges))
    return at, edge, (tx, ty)


def _named_edges(feature: FeatureShape, ground: Outline) -> tuple[Segment, ...]:
    """The edges a seam or fold is measured from: on a narrow strip another edge may be nearer."""
    spec = feature.feature
    names = spec.seam if isinstance(spec, Seam) else (spec.fold,) if isinstance(spec, Fold) else ()
    names = (spec.along or "",) if isinstance(spec, Laid) else names
    found = tuple(segment for name in names if name in ground.edges for segment in ground.edge(name))
    return found or ground.segments
