"""The plies along a straight cut through a part: its components in their layers, what is laid on, folded and bound.

Work counts in the order of the part's file, as far as it is done. A fold lays what is beyond it under or over the
rest: what lies there is met by the cut's mirror image, so a fold is two cuts joined. Folds that don't follow one
straight line, and those worked on a strip after it was laid, are left out.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from builder.geometry.halves import staying
from builder.geometry.outline import Outline, rectangle
from builder.geometry.placing import Placing
from builder.geometry.ply import Bend, End, EndKind, Pierced, Plies, Ply, through
from builder.geometry.ray import FAR_MM, Ray, left_range, wall
from builder.geometry.segment import Line, Segment
from builder.geometry.shape import FeatureShape, PartShape
from builder.geometry.vector import Point, cross
from builder.model import Bartack, Box, Fold, Seam, Strip

_SAME_MM = 1e-6
# The sine of the angle under which a run goes along a cut.
_ALONG = 1e-3
# A tape nobody gave a width covers this share more than the seam's distance from the edge.
_COVERS = 1.3


@dataclass(frozen=True, slots=True)
class CutAsk:
    """What a cut needs to know.

    done      : work done so far and now, as (base part, feature)
    shape_of  : the shape of a part by name, None where it has none
    width_of  : width of a tape by its material, None where nobody typed it
    """

    done: Collection[tuple[str, str]]
    shape_of: Callable[[str], PartShape | None]
    width_of: Callable[[str], float | None]


@dataclass(frozen=True, slots=True)
class _Met:
    """What a cut met, and the images of the cut on the flat part that lie there."""

    found: Plies
    images: tuple[Ray, ...]


def plies_along(shape: PartShape, ray: Ray, ask: CutAsk) -> Plies:
    """All plies, bends and stitches of a part along a cut, its right side upward."""
    return _cut(shape, ray, _done_features(shape, ask), ask, shape.name).found


def done_folds(shape: PartShape, ask: CutAsk) -> Iterator[Line]:
    """Long lines of the part's own folds that are done, what stays to their left."""
    for one in _done_features(shape, ask):
        if isinstance(one.feature, Fold) and (line := _fold_line(one)) is not None:
            yield wall(line, staying(one, shape.outline))


def _done_features(shape: PartShape, ask: CutAsk) -> tuple[FeatureShape, ...]:
    """What is done on a part itself. Folds of a part formed from another only tell its shape: it is drawn folded."""
    formed = shape.part.formed_from is not None
    return tuple(
        one
        for one in shape.features.values()
        if (shape.name, one.name) in ask.done and not (formed and isinstance(one.feature, Fold))
    )


def _cut(shape: PartShape, ray: Ray, features: Sequence[FeatureShape], ask: CutAsk, name: str) -> _Met:
    """The part with the first features of those done."""
    if not features:
        return _Met(_bare(shape, ray, ask, name), (ray,))
    last = features[-1]
    if isinstance(last.feature, Fold):
        line = _fold_line(last)
        if line is None or last.feature.on is not None:
            return _cut(shape, ray, features[:-1], ask, name)
        side = wall(line, staying(last, shape.outline))
        return _folded(
            lambda one: _cut(shape, one, features[:-1], ask, name), ray, side, last.feature.side == "wrong", last.name
        )
    met = _cut(shape, ray, features[:-1], ask, name)
    match last.feature:
        case Strip():
            return replace(met, found=_with_strip(met.found, last, ray, ask, f"{name}/{last.name}"))
        case Seam() | Box() | Bartack():
            return replace(met, found=_sewn(met, shape, last, ask))
    return met


def _bare(shape: PartShape, ray: Ray, ask: CutAsk, name: str) -> Plies:
    """The part without features of its own: a ply, or the plies of the parts it is made from in their layers."""
    found = Plies()
    for number, one in enumerate(sorted(shape.components, key=lambda component: component.layer)):
        label = f"{name}.{number}.{one.shape.name}"
        inner = ray.moved(one.placing.inverse())
        plies = _cut(one.shape, inner, _done_features(one.shape, ask), ask, label).found
        found = (plies.turned() if one.placing.flipped else plies).over(found)
    if shape.components:
        return found
    return Plies(tuple(_pieces(shape, ray, name)))


def _pieces(shape: PartShape, ray: Ray, name: str) -> Iterator[Ply]:
    """The stretches of a cut that lie on a flat part."""
    places = [ray.low, *ray.crosses(shape.outline.segments), ray.high]
    spans = [(a, b) for a, b in pairwise(places) if b - a > _SAME_MM]
    inside = [span for span in spans if shape.outline.contains(ray.at((span[0] + span[1]) / 2))]
    for number, (low, high) in enumerate(_joined(inside)):
        ends = [End(u, _edge_kind(shape, ray.at(u))) for u in (low, high)]
        yield Ply(name if not number else f"{name}:{number}", shape.name, ends[0], ends[1])


def _joined(spans: Sequence[tuple[float, float]]) -> Iterator[tuple[float, float]]:
    """Spans that touch as one: a cut may only graze an edge."""
    at: tuple[float, float] | None = None
    for low, high in spans:
        if at is not None and low - at[1] < 1e-3:
            at = at[0], high
            continue
        if at is not None:
            yield at
        at = low, high
    if at is not None:
        yield at


def _edge_kind(shape: PartShape, point: Point) -> EndKind:
    """Webbing and tape have woven edges along, cut ends across."""
    outline = shape.part.outline
    if outline is None or outline.strip is None:
        return "cut"
    _, bottom, _, top = shape.bounds
    return "woven" if min(abs(point[1] - bottom), abs(point[1] - top)) < 1e-3 else "cut"


def _fold_line(one: FeatureShape) -> Line | None:
    runs = one.paths[0].runs if one.paths else ()
    return runs[0] if len(runs) == 1 and isinstance(runs[0], Line) else None


def _folded(cut: Callable[[Ray], _Met], ray: Ray, side: Line, under: bool, name: str) -> _Met:
    """What stays, with what was beyond the fold laid under or over it.

    side : the line of the fold, what stays to its left
    """
    low, high = left_range(ray, side)
    if high - low < _SAME_MM:
        return _Met(Plies(), ())
    stays = cut(ray.clipped(low, high))
    back = cut(ray.mirrored(side).clipped(low, high))
    kept = stays.found.within(low, high, "fold")
    laid = back.found.within(low, high, "fold").turned()
    bends = tuple(
        Bend(one.name, f"{other.name}~{name}", end, way)
        for end, way in ((high, 1), (low, -1))
        if abs(end) < FAR_MM
        for one in kept.plies
        for other in laid.plies
        if _origin(one) == _origin(other) and _ends_at(one, end, way) and _ends_at(other, end, way)
    )
    laid = laid.renamed(lambda one: f"{one}~{name}")
    whole = kept.over(laid) if under else laid.over(kept)
    return _Met(replace(whole, bends=(*whole.bends, *bends)), (*stays.images, *back.images))


def _origin(one: Ply) -> str:
    """The ply a piece of it is of."""
    return ":".join(part for part in one.name.split(":") if not part.isdigit())


def _ends_at(one: Ply, end: float, way: int) -> bool:
    return abs((one.high if way > 0 else one.low).at - end) < 1e-4


def _with_strip(found: Plies, strip: FeatureShape, ray: Ray, ask: CutAsk, name: str) -> Plies:
    """A strip laid on, with all that was worked on it, its end folded under where it says so."""
    assert isinstance(strip.feature, Strip)
    shape = ask.shape_of(strip.feature.strip)
    if shape is None:
        return found
    inner = ray.moved(_strip_placing(strip, shape).inverse())
    features = _done_features(shape, ask)
    if strip.size[0] > 0:
        x = shape.bounds[0] + strip.size[0]
        side = wall(Line((x, shape.bounds[1]), (x, shape.bounds[3])), (shape.bounds[2] + 1.0, 0.0))
        plies = _folded(lambda one: _cut(shape, one, features, ask, name), inner, side, True, "under").found
    else:
        plies = _cut(shape, inner, features, ask, name).found
    return plies.over(found) if strip.feature.side == "right" else found.over(plies.turned())


def _strip_placing(strip: FeatureShape, shape: PartShape) -> Placing:
    """Where the strip's part lies; of a folded end the fold is at the edge of what is seen."""
    assert isinstance(strip.feature, Strip)
    left, bottom, right, top = shape.bounds
    folded = strip.size[0]
    seen = rectangle(right - left - folded, top - bottom) if folded else shape.outline
    turn = float(strip.feature.turn.value) if strip.feature.turn is not None else 0.0
    box, here = Placing(0.0, 0.0, turn).outline(seen).bounds(), strip.regions[0].bounds()
    back = Placing(-left - folded, -bottom) if folded else Placing()
    return back.then(Placing(here[0] - box[0], here[1] - box[1], turn))


def _sewn(met: _Met, shape: PartShape, one: FeatureShape, ask: CutAsk) -> Plies:
    """What a seam goes through; a binding first puts its tape round the edge."""
    found = met.found
    for image in met.images:
        for at, width in _stitched(one, image):
            if isinstance(one.feature, Seam) and one.feature.binding is not None:
                found = _bound(found, at, image, one, shape, ask)
            found = replace(
                found,
                pierced=(*found.pierced, Pierced(shape.name, one.name, at, through(found.plies, at), width)),
            )
    return found


def _stitched(one: FeatureShape, ray: Ray) -> Iterator[tuple[float, float]]:
    """Places where a feature's stitches lie on a cut, with their width along it."""
    if isinstance(one.feature, Bartack):
        for region in one.regions:
            places = ray.crosses(region.segments)
            if len(places) > 1:
                yield (places[0] + places[-1]) / 2, places[-1] - places[0]
        return
    # A run along the cut is met nowhere in particular.
    runs = [run for path in one.paths for run in path.runs]
    met = [run for run in runs if not isinstance(run, Line) or abs(cross(run.tangent_at(0.5), ray.way)) > _ALONG]
    for at in ray.crosses(met):
        yield at, 0.0


def _bound(found: Plies, at: float, ray: Ray, one: FeatureShape, shape: PartShape, ask: CutAsk) -> Plies:
    """A tape folded round the edge beside a seam: below, round the edge, above."""
    assert isinstance(one.feature, Seam)
    assert one.feature.binding is not None
    places = ray.crosses(_ground(one, shape).segments)
    if not places:
        return found
    edge = min(places, key=lambda place: abs(place - at))
    way = 1 if edge > at or (edge == at and not _ground(one, shape).contains(ray.at(at + 0.1))) else -1
    width = ask.width_of(one.feature.binding)
    half = width / 2 if width is not None else _COVERS * abs(edge - at)
    inner = End(edge - way * half, "woven")
    outer = End(edge, "fold")
    low, high = (inner, outer) if way > 0 else (outer, inner)
    # A seam all round is met twice.
    tape, name = one.feature.binding, f"{shape.name}/{one.name}.{len(found.pierced)}"
    lower, upper = Ply(f"{name}.below", tape, low, high, False), Ply(f"{name}.above", tape, low, high, True)
    bends = (*found.bends, Bend(lower.name, upper.name, edge, way))
    return replace(found, plies=(lower, *found.plies, upper), bends=bends)


def _ground(one: FeatureShape, shape: PartShape) -> Outline:
    on = one.feature.on
    if on is not None and on in shape.features and shape.features[on].regions:
        return shape.features[on].regions[0]
    return shape.outline


def longest_runs(one: FeatureShape) -> list[Segment]:
    """The longest runs of a seam, all that are as long to a hundredth."""
    runs = [run for path in one.paths for run in _whole(path.runs)]
    most = max((run.length for run in runs), default=0.0)
    return [run for run in runs if run.length > 0.99 * most]


def _whole(runs: Sequence[Segment]) -> Sequence[Segment]:
    """Runs of a ring with the one it starts in the middle of in one piece again."""
    first, last = runs[0], runs[-1]
    if len(runs) < 3 or not isinstance(first, Line) or not isinstance(last, Line) or last.end != first.start:
        return runs
    whole = Line(last.start, first.end)
    straight = abs(whole.length - first.length - last.length) < _SAME_MM
    return (*runs[1:-1], whole) if straight else runs


def middle_of(outline: Outline) -> Point:
    """The middle of an area's box."""
    left, bottom, right, top = outline.bounds()
    return (left + right) / 2, (bottom + top) / 2
