"""Where a named dimension is drawn: from which point to which, and on which side its line lies."""

from __future__ import annotations

from collections.abc import Sequence

from builder.geometry import Bounds, FeatureShape, Outline, PartShape, Point, Segment, distance_point_segment
from builder.model import Bartack, Box, Fold, Seam

Drawn = tuple[Point, Point, Point]
"""Start, end, and the unit direction in which the dimension line stands off."""

_DOWN, _UP, _LEFT, _RIGHT = (0.0, -1.0), (0.0, 1.0), (-1.0, 0.0), (1.0, 0.0)


def dimension_points(shape: PartShape, short: str) -> Drawn | None:
    """The points of `width`, `handle-box.left`, `hem-seam.inset` … on a shape, None for what has no such line."""
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
    if dimension == "pitch" and len(feature.points) > 1:
        away = _DOWN if feature.points[0][1] == feature.points[1][1] else _RIGHT
        return feature.points[0], feature.points[1], away
    if isinstance(feature.feature, Bartack) and dimension in ("length", "width"):
        along = (feature.feature.stands == "across") == (dimension == "length")
        return _of_box("width" if along else "height", feature.regions[0].bounds())
    if dimension in ("width", "height", "length") and isinstance(feature.feature, Box) | bool(feature.regions):
        return _of_box("width" if dimension == "length" else dimension, box)
    return _to_edge(dimension, box, _ground(feature, shape).bounds())


def feature_bounds(feature: FeatureShape) -> Bounds:
    """Box around all of a feature."""
    boxes = [path.bounds() for path in feature.paths]
    boxes += [region.bounds() for region in feature.regions]
    boxes += [(x, y, x, y) for x, y in feature.points]
    return (min(b[0] for b in boxes), min(b[1] for b in boxes), max(b[2] for b in boxes), max(b[3] for b in boxes))


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
    found = tuple(segment for name in names if name in ground.edges for segment in ground.edge(name))
    return found or ground.segments
