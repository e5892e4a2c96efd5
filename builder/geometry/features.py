"""One short function a kind of feature: typed lengths to paths, regions and points on the part."""

from __future__ import annotations

from collections.abc import Mapping
from itertools import pairwise
from typing import Protocol

from builder.geometry.offset import inset_path
from builder.geometry.outline import Outline, rectangle
from builder.geometry.path import Path, box, box_and_cross, polyline
from builder.geometry.placing import Placing
from builder.geometry.seam_line import along_seam_line, started_midway
from builder.geometry.segment import Bounds
from builder.geometry.shape import FeatureShape, PartShape
from builder.geometry.vector import GeometryFault, Point, add, left, scale, sub
from builder.model import (
    At,
    Bartack,
    Box,
    Expression,
    Feature,
    Fold,
    Hardware,
    Hole,
    Notch,
    Quantity,
    Seam,
    Strip,
    Values,
)

NOTCH_DEPTH_MM = 6.0
"""Depth of a notch nobody gave one. Common practice, no source."""


class Lengths(Protocol):
    """Reads typed lengths and places; the part builder is one."""

    values: Values
    seam_line: Outline | None

    def mm(self, typed: Quantity | Expression | None, default: float = 0.0, short: str = "") -> float: ...

    def corner(self, at: At | None, box: Bounds, size: tuple[float, float], owner: str) -> Point: ...

    def component_shape(self, name: str) -> PartShape | None: ...


def feature_shape(
    name: str, feature: Feature, outline: Outline, before: Mapping[str, FeatureShape], lengths: Lengths
) -> FeatureShape:
    """The shape of a feature. `before` holds the features above it in the file, for `on:`. Raises GeometryFault."""
    ground = outline
    if feature.on is not None:
        if feature.on not in before or not before[feature.on].regions:
            raise GeometryFault(f"{name} lies on {feature.on}, which stands below it in the file or covers no area")
        ground = before[feature.on].regions[0]
    match feature:
        case Notch():
            return _notch(name, feature, ground, lengths)
        case Hole() | Hardware():
            return _round(name, feature, ground, lengths)
        case Strip():
            return _strip(name, feature, ground, lengths)
        case Seam():
            return _seam(name, feature, ground, lengths)
        case Box():
            return _box(name, feature, ground, lengths)
        case Bartack():
            return _bartack(name, feature, ground, lengths)
        case Fold():
            return _fold(name, feature, ground, lengths)
    raise GeometryFault(f"{name} is of a kind that has no shape")


def _notch(name: str, feature: Notch, ground: Outline, lengths: Lengths) -> FeatureShape:
    depth = lengths.mm(feature.depth, NOTCH_DEPTH_MM, f"{name}.depth")
    at, along = _on_edge(name, feature.notch, feature.at, ground, lengths)
    inward = left(along)
    half = scale(along, depth / 2)
    tip = add(at, scale(inward, depth))
    return FeatureShape(name, "notch", feature, (polyline([sub(at, half), tip, add(at, half)]),), (), (at,), (depth, 0))


def _on_edge(name: str, edge: str, at: At | None, ground: Outline, lengths: Lengths) -> tuple[Point, Point]:
    """The point of an edge at a place, and the edge's direction there (interior to the left)."""
    x, y = lengths.corner(at, ground.bounds(), (0.0, 0.0), name)
    across = at is not None and any(one is not None for one in (at.left, at.right, at.centre))
    for segment in ground.edge(edge):
        (x1, y1), (x2, y2) = segment.start, segment.end
        low, high, wanted = (min(x1, x2), max(x1, x2), x) if across else (min(y1, y2), max(y1, y2), y)
        if low <= wanted <= high and high > low:
            share = (wanted - (x1 if across else y1)) / ((x2 - x1) if across else (y2 - y1))
            return segment.point_at(share), segment.tangent_at(share)
    raise GeometryFault(f"{name} lies beyond the end of edge {edge}")


def _row(name: str, feature: Hole | Hardware | Bartack, first: Point, lengths: Lengths) -> tuple[Point, ...]:
    pitch = lengths.mm(feature.pitch, 0.0, f"{name}.pitch")
    if feature.count > 1 and pitch <= 0:
        raise GeometryFault(f"{name} is a row of {feature.count} without a pitch")
    step = (pitch, 0.0) if feature.direction == "across" else (0.0, pitch)
    return tuple(add(first, scale(step, float(number))) for number in range(feature.count))


def _round(name: str, feature: Hole | Hardware, ground: Outline, lengths: Lengths) -> FeatureShape:
    if isinstance(feature, Hole):
        kind, diameter = "hole", lengths.mm(feature.hole, short=f"{name}.hole")
    else:
        kind, diameter = "hardware", lengths.mm(feature.diameter, short=f"{name}.diameter")
    first = lengths.corner(feature.at, ground.bounds(), (0.0, 0.0), name)
    return FeatureShape(name, kind, feature, (), (), _row(name, feature, first, lengths), (diameter, 0.0))


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


def _seam(name: str, feature: Seam, ground: Outline, lengths: Lengths) -> FeatureShape:
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
            _all_round(feature, ground, line, inset)
            if feature.seam == ("all",)
            else _along(feature.seam, ground, line, inset, gaps)
        )
    return FeatureShape(name, "seam", feature, (path,))


def _follows(feature: Seam) -> bool:
    """Whether a seam follows the seam line of its part; where one allowance is beside it, its inset already does."""
    return feature.inset is None and feature.on is None and feature.binding is None


def _all_round(feature: Seam, ground: Outline, line: Outline | None, inset: float) -> Path:
    """All round from the middle of an edge."""
    edge = ground.edge(feature.start) if feature.start is not None else ground.edge(next(iter(ground.edges)))
    if not edge:
        raise GeometryFault(f"the seam can't start on edge {feature.start}: its corners leave nothing of it")
    runs = line.segments if line is not None else inset_path(ground, None, None, inset).runs
    return started_midway(runs, edge[len(edge) // 2].point_at(0.5))


def _along(
    edges: tuple[str, ...], ground: Outline, line: Outline | None, inset: float, gaps: tuple[float, float]
) -> Path:
    """Along edges in the order named: against the ring when that is how they follow each other."""
    # A flipped outline keeps the names of its edges, not their order round the ring.
    names = sorted(ground.edges, key=lambda name: ground.edges[name][0])
    for edge in edges:
        ground.edge(edge)
    forward = all(names[(names.index(one) + 1) % len(names)] == other for one, other in pairwise(edges))
    if line is not None:
        path = along_seam_line(ground, line, *((edges[0], edges[-1]) if forward else (edges[-1], edges[0])))
        return (path if forward else path.reversed()).shortened(*gaps)
    if forward:
        return inset_path(ground, edges[0], edges[-1], inset, start_gap=gaps[0], end_gap=gaps[1])
    return inset_path(ground, edges[-1], edges[0], inset, start_gap=gaps[1], end_gap=gaps[0]).reversed()


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


def _bartack(name: str, feature: Bartack, ground: Outline, lengths: Lengths) -> FeatureShape:
    length, width = lengths.mm(feature.length, short=f"{name}.length"), lengths.mm(feature.width, short=f"{name}.width")
    first = lengths.corner(feature.at, ground.bounds(), (0.0, 0.0), name)
    points = _row(name, feature, first, lengths)
    dx, dy = (length, width) if feature.stands == "across" else (width, length)
    regions = tuple(Placing(px - dx / 2, py - dy / 2, 0.0, False).outline(rectangle(dx, dy)) for px, py in points)
    return FeatureShape(name, "bartack", feature, (), regions, points, (length, width))


def _fold(name: str, feature: Fold, ground: Outline, lengths: Lengths) -> FeatureShape:
    if feature.fold == "line":
        path = polyline(_points(name, feature.points, ground, lengths))
    else:
        path = inset_path(ground, feature.fold, feature.fold, lengths.mm(feature.inset, 0.0, f"{name}.inset"))
    return FeatureShape(name, "fold", feature, (path,))
