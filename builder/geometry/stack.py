"""What lies under the needle: every layer of a part as an area, and the stacks a seam meets on its way.

A part is one layer, folded on itself where a fold has been made; a sub-assembly is the layers of its parts; a strip
lies on top, twice where its end is folded under. A strip counts as one layer of its own part: what was sewn on that
before isn't looked at. A fold that doesn't follow one straight line is left out. Tapes that bind an edge, hardware
and threads are no layers here; pleats are left flat. So the stack is never more than what lies there.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from builder.geometry.halves import staying
from builder.geometry.measure import segments_cross
from builder.geometry.outline import Outline, turned_round
from builder.geometry.placing import Placing
from builder.geometry.ray import across, beside, wall
from builder.geometry.segment import Arc, Bounds, Line, Segment
from builder.geometry.shape import FeatureShape, PartShape
from builder.geometry.vector import Point, add, left, scale
from builder.model import Fold, Laid, Strip

Stack = tuple[str, ...]
"""Parts under one place, by name, sorted; a part that lies there twice stands twice."""

Done = Collection[tuple[str, str]]
"""Work done so far, as (base part, feature)."""

_FAR_MM = 1e5
_MOST_LAYERS = 64
# A piece of a run this short between two boundaries is rounding, mm.
_SHORT = 1e-6


@dataclass(frozen=True, slots=True)
class Layer:
    """One layer: the part it is cut from and where it lies. `walls`: it ends there; it lies to the left of each."""

    part: str
    outline: Outline
    walls: tuple[Line, ...] = ()

    def holds(self, point: Point) -> bool:
        """Does the layer lie at that place?"""
        return all(beside(wall, point) >= 0 for wall in self.walls) and self.outline.contains(point)


def layers_of(shape: PartShape, done: Done) -> tuple[Layer, ...]:
    """All layers of a part in its own coordinates, with the strips and folds that are done.

    The part itself is looked at as it is drawn, flat: a place on either side of a fold has the layers of both. Parts
    inside it are folded: nothing lies beyond their folds.
    """
    return tuple(_layers(shape, done, flat=True))


def stacks_along(feature: FeatureShape, layers: Sequence[Layer]) -> frozenset[Stack]:
    """The different stacks a seam, a box or the edge of a bartack goes through."""
    lines = [(line, line.bounds()) for layer in layers for line in (*layer.outline.segments, *layer.walls)]
    boxes = [(layer, layer.outline.bounds()) for layer in layers]
    return frozenset(
        tuple(sorted(layer.part for layer, box in boxes if _in_box(point, box) and layer.holds(point)))
        for run in _runs(feature)
        for point in _places(run, lines)
    )


def _layers(shape: PartShape, done: Done, flat: bool) -> list[Layer]:
    own = _pieces(shape, done)
    strips: dict[str, list[Layer]] = {}
    for feature in shape.features.values():
        if (shape.name, feature.name) not in done:
            continue
        if isinstance(feature.feature, Laid):
            strips[feature.name] = [Layer(feature.feature.material, outline) for outline in feature.regions]
        elif isinstance(feature.feature, Strip):
            outlines = (*feature.regions, *_under(feature))
            strips[feature.name] = [Layer(feature.feature.strip, outline) for outline in outlines]
        elif isinstance(feature.feature, Fold):
            on = feature.feature.on
            target = own if on is None else strips.get(on, [])
            _fold(feature, target, staying(feature, shape.outline), flat)
    return [*own, *(layer for layers in strips.values() for layer in layers)]


def _pieces(shape: PartShape, done: Done) -> list[Layer]:
    """The part itself, or the layers of the parts it is made from."""
    if not shape.components:
        return [Layer(shape.name, shape.outline)]
    return [_placed(layer, one.placing) for one in shape.components for layer in _layers(one.shape, done, flat=False)]


def _placed(layer: Layer, placing: Placing) -> Layer:
    walls = (placing.segment(wall) for wall in layer.walls)
    # Turned over, what lay to the left lies to the right.
    turned = tuple(wall.reversed() if placing.flipped else wall for wall in walls if isinstance(wall, Line))
    return Layer(layer.part, placing.outline(layer.outline), turned)


def _under(strip: FeatureShape) -> Iterator[Outline]:
    """What lies folded under a strip: a rectangle from its fold inwards."""
    depth = strip.size[0]
    if depth > 0 and strip.paths and isinstance(fold := strip.paths[0].runs[0], Line):
        aside = scale(left(fold.tangent_at(0)), depth)
        a, b, c, d = fold.start, fold.end, add(fold.end, aside), add(fold.start, aside)
        yield Outline((Line(a, b), Line(b, c), Line(c, d), Line(d, a)))


def _fold(feature: FeatureShape, target: list[Layer], stays: Point, flat: bool) -> None:
    """Lays what is beyond a straight fold back on the rest."""
    runs = feature.paths[0].runs if feature.paths else ()
    if len(runs) != 1 or not isinstance(runs[0], Line) or 2 * len(target) > _MOST_LAYERS:
        return
    fold = wall(runs[0], stays, _FAR_MM)
    back = [_mirrored(layer, fold) for layer in target]
    if not flat:
        target[:] = [replace(layer, walls=(*layer.walls, fold)) for layer in target]
        back = [replace(layer, walls=(*layer.walls, fold)) for layer in back]
    target += back


def _mirrored(layer: Layer, line: Line) -> Layer:
    """The layer on the other side of a line."""
    outline = Outline(tuple(_mirror(segment, line) for segment in layer.outline.segments), layer.outline.edges)
    walls = tuple(Line(across(wall.end, line), across(wall.start, line)) for wall in layer.walls)
    return Layer(layer.part, turned_round(outline), walls)


def _mirror(segment: Segment, line: Line) -> Segment:
    start, end = across(segment.start, line), across(segment.end, line)
    if isinstance(segment, Line):
        return Line(start, end)
    return Arc(start, end, across(segment.centre, line), not segment.clockwise)


def _runs(feature: FeatureShape) -> Iterator[Segment]:
    for path in feature.paths:
        yield from path.runs
    for region in feature.regions if not feature.paths else ():
        yield from region.segments


def _places(run: Segment, lines: Sequence[tuple[Segment, Bounds]]) -> Iterator[Point]:
    """One place in each piece of a run between the boundaries it crosses."""
    shares = {0.0, 1.0}
    box = run.bounds()
    for line, around in lines:
        if _boxes_meet(box, around):
            shares.update(share for point in segments_cross(run, line) if 0 < (share := run.share_of(point)) < 1)
    for first, last in pairwise(sorted(shares)):
        if (last - first) * run.length > _SHORT:
            yield run.point_at((first + last) / 2)


def _in_box(point: Point, box: Bounds) -> bool:
    return box[0] <= point[0] <= box[2] and box[1] <= point[1] <= box[3]


def _boxes_meet(a: Bounds, b: Bounds) -> bool:
    return a[0] <= b[2] and b[0] <= a[2] and a[1] <= b[3] and b[1] <= a[3]
