"""One short function a kind of feature: typed lengths to paths, regions and points on the part."""

from __future__ import annotations

from collections.abc import Mapping

from builder.geometry.arrays import bartack_shape, round_shape, row_points, slot_shape
from builder.geometry.halves import lies_left
from builder.geometry.notch import notch_path
from builder.geometry.offset import inset_path
from builder.geometry.outline import Outline, rectangle
from builder.geometry.path import Path, box, box_and_cross, polyline
from builder.geometry.places import Lengths, Measured
from builder.geometry.placing import Placing
from builder.geometry.seam_beside import all_round, along_edges, refuse_beside, seam_beside
from builder.geometry.segment import Line
from builder.geometry.sewn_tag import caught, laid_on, tag_size, turned_size
from builder.geometry.shape import FeatureShape
from builder.geometry.shaping import dart_shape, elastic_shape, pleat_shape, zip_shape
from builder.geometry.vector import GeometryFault, Point
from builder.model import (
    At,
    Bartack,
    Box,
    Dart,
    DrillHole,
    Elastic,
    Feature,
    Fold,
    Hardware,
    Hole,
    Laid,
    Notch,
    Pleat,
    Row,
    Seam,
    SewnTag,
    Slot,
    Strip,
    Zip,
)

NOTCH_DEPTH_MM = 6.0
"""Depth of a notch nobody gave one. Common practice, no source."""


def feature_shape(
    name: str, feature: Feature, outline: Outline, before: Mapping[str, FeatureShape], lengths: Lengths
) -> FeatureShape:
    """The shape of a feature. `before` holds the features above it in the file. Raises GeometryFault."""
    ground, lengths = outline, Measured(lengths, before)
    if feature.on is not None:
        if feature.on not in before or not before[feature.on].regions:
            raise GeometryFault(f"{name} lies on {feature.on}, which stands below it in the file or covers no area")
        ground = before[feature.on].regions[0]
    match feature:
        case Notch():
            return _notch(name, feature, ground, lengths)
        case Hole() | DrillHole() | Hardware():
            return round_shape(name, feature, _row(name, feature, ground, lengths), lengths)
        case Slot():
            return slot_shape(name, feature, _row(name, feature, ground, lengths), lengths)
        case SewnTag():
            return _tag(name, feature, ground, lengths)
        case Strip():
            return _strip(name, feature, ground, lengths)
        case Seam():
            return _seam(name, feature, ground, before, lengths)
        case Box():
            return _box(name, feature, ground, lengths)
        case Bartack():
            return bartack_shape(name, feature, _row(name, feature, ground, lengths), lengths)
        case Fold():
            return _fold(name, feature, ground, lengths)
        case Pleat():
            return pleat_shape(name, feature, ground, lengths)
        case Dart():
            return dart_shape(
                name, feature, ground, _on_edge(name, feature.edge, feature.at, ground, lengths)[0], lengths
            )
        case Zip():
            return zip_shape(name, feature, _laid(name, feature, ground, lengths), ground, lengths)
        case Elastic():
            return elastic_shape(name, feature, _laid(name, feature, ground, lengths), ground, lengths)
    raise GeometryFault(f"{name} is of a kind that has no shape")


def _notch(name: str, feature: Notch, ground: Outline, lengths: Lengths) -> FeatureShape:
    depth = lengths.mm(feature.depth, NOTCH_DEPTH_MM, f"{name}.depth")
    at, along = _on_edge(name, feature.notch, feature.at, ground, lengths)
    return FeatureShape(name, "notch", feature, (notch_path(feature.cut, at, along, depth),), (), (at,), (depth, 0))


def _tag(name: str, feature: SewnTag, ground: Outline, lengths: Lengths) -> FeatureShape:
    if feature.in_ is not None:
        width, _ = tag_size(name, feature, lengths)
        return caught(name, feature, *_on_edge(name, feature.in_, feature.at, ground, lengths, width), lengths)
    corner = lengths.corner(feature.at, ground.bounds(), turned_size(name, feature, lengths), name)
    return laid_on(name, feature, corner, lengths)


def _on_edge(
    name: str, edge: str, at: At | None, ground: Outline, lengths: Lengths, width: float = 0.0
) -> tuple[Point, Point]:
    """The point of an edge at a place, and the edge's direction there (interior to the left).

    width : of what lies there along the edge; the point is its middle
    """
    x, y = (one + width / 2 for one in lengths.corner(at, ground.bounds(), (width, width), name))
    across = at is not None and any(one is not None for one in (at.left, at.right, at.centre, at.right_of, at.left_of))
    for segment in ground.edge(edge):
        (x1, y1), (x2, y2) = segment.start, segment.end
        low, high, wanted = (min(x1, x2), max(x1, x2), x) if across else (min(y1, y2), max(y1, y2), y)
        if low <= wanted <= high and high > low:
            share = (wanted - (x1 if across else y1)) / ((x2 - x1) if across else (y2 - y1))
            return segment.point_at(share), segment.tangent_at(share)
    raise GeometryFault(f"{name} lies beyond the end of edge {edge}")


def _row(name: str, feature: Row, ground: Outline, lengths: Lengths) -> tuple[Point, ...]:
    return row_points(name, feature, lengths.corner(feature.at, ground.bounds(), (0.0, 0.0), name), lengths)


def _strip(name: str, feature: Strip, ground: Outline, lengths: Lengths) -> FeatureShape:
    shape = lengths.component_shape(feature.strip)
    if shape is None:
        raise KeyError(feature.strip)
    left_, bottom, right, top = shape.bounds
    folded = lengths.mm(feature.folded_under, 0.0, f"{name}.folded-under")
    if folded >= right - left_:
        raise GeometryFault(f"{name} folds under more than its length")
    visible = shape.outline if not folded else rectangle(right - left_ - folded, top - bottom)
    turn = float(feature.turn.value) if feature.turn is not None else 0.0
    turned = Placing(0.0, 0.0, turn, False).outline(visible).bounds()
    x, y = lengths.corner(feature.at, ground.bounds(), (turned[2] - turned[0], turned[3] - turned[1]), name)
    region = Placing(x - turned[0], y - turned[1], turn, False).outline(visible)
    fold = (Path((region.edge("left")[0],)),) if folded and "left" in region.edges else ()
    return FeatureShape(name, "strip", feature, fold, (region,), (), (folded, 0.0))


def _laid(name: str, feature: Laid, ground: Outline, lengths: Lengths) -> Path | None:
    return polyline(_points(name, feature.points, ground, lengths)) if feature.points else None


def _seam(
    name: str, feature: Seam, ground: Outline, before: Mapping[str, FeatureShape], lengths: Lengths
) -> FeatureShape:
    refuse_beside(name, feature)
    if feature.seam == ("along",):
        return FeatureShape(name, "seam", feature, seam_beside(name, feature, before, lengths))
    if feature.seam == ("line",):
        path = polyline(_points(name, feature.points, ground, lengths))
    else:
        gaps = (
            lengths.mm(feature.start_gap, 0.0, f"{name}.start-gap"),
            lengths.mm(feature.end_gap, 0.0, f"{name}.end-gap"),
        )
        inset = lengths.mm(feature.inset, 0.0, f"{name}.inset")
        line = lengths.seam_line if inset == 0 and _follows(feature) else None
        path = (
            all_round(feature.start, ground, inset, line)
            if feature.seam == ("all",)
            else along_edges(feature.seam, ground, inset, gaps, line)
        )
    return FeatureShape(name, "seam", feature, (path,))


def _follows(feature: Seam) -> bool:
    """Whether a seam follows the seam line of its part; where one allowance is beside it, its inset already does."""
    return feature.inset is None and feature.on is None and feature.binding is None


def _points(name: str, points: tuple[At, ...], ground: Outline, lengths: Lengths) -> list[Point]:
    if len(points) < 2:
        raise GeometryFault(f"{name} is a line and needs two points or more")
    return [
        lengths.corner(at, ground.bounds(), (0.0, 0.0), f"{name}.point-{number}") for number, at in enumerate(points, 1)
    ]


def _box(name: str, feature: Box, ground: Outline, lengths: Lengths) -> FeatureShape:
    width, height = lengths.mm(feature.width, short=f"{name}.width"), lengths.mm(feature.height, short=f"{name}.height")
    x, y = lengths.corner(feature.at, ground.bounds(), (width, height), name)
    path = box_and_cross(width, height) if feature.box == "cross" else box(width, height)
    return FeatureShape(name, "box", feature, (Placing(x, y, 0.0, False).path(path),), (), (), (width, height))


def _fold(name: str, feature: Fold, ground: Outline, lengths: Lengths) -> FeatureShape:
    if feature.fold == "line":
        path = _stays_left(polyline(_points(name, feature.points, ground, lengths)), feature, ground)
    else:
        path = inset_path(ground, feature.fold, feature.fold, lengths.mm(feature.inset, 0.0, f"{name}.inset"))
    return FeatureShape(name, "fold", feature, (path,))


def _stays_left(path: Path, feature: Fold, ground: Outline) -> Path:
    """The line of a fold so that the edge that moves lies to its right."""
    edge = ground.edge(feature.moves) if feature.moves is not None else ()
    if not edge or not isinstance(path.runs[0], Line):
        return path
    return path.reversed() if lies_left(path.runs[0], edge[len(edge) // 2].point_at(0.5)) else path
