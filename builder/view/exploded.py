"""An assembly taken apart: its layers lifted off each other in the order they lie, lowest below, each with its name.

What is worked now is in the accent; what is sewn through several layers lies on the uppermost of them.
Thin lines join the corners that come to lie on each other.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from builder.geometry import FeatureShape, Line, Outline, Point, oblique, oblique_path
from builder.model import (
    named,
    say,
)
from builder.view.details import DetailAsk
from builder.view.figure import Callout, FigureView, Stroke, bounds_of
from builder.view.hems import with_hems
from builder.view.scene import SceneFeature, SceneLayer, scene
from builder.view.strokes import feature_strokes
from builder.view.words import listed

_APART = 0.5
"""Clear space between two layers, of the height a layer has as seen."""
_LEAST_APART_MM = 14.0
_MANY = 4
_HEIGHT_MM = {False: 74.0, True: 98.0}
_TOLERANCE_MM = 0.2
_MEETS_MM = 2.0


@dataclass(frozen=True, slots=True)
class _Lifted:
    """One layer at its height: what is cut, its features, whether its wrong side is up."""

    title: str
    part: str
    outline: Outline
    features: tuple[SceneFeature, ...]
    when: str
    fill: str
    height: float


def layers_figure(ask: DetailAsk) -> FigureView | None:
    """The picture of `layers of PART`, None for a part of a single layer."""
    shape = ask.book.shape(ask.shown.name, ask.studio.values)
    if shape is None:
        return None
    shape, before = with_hems(shape, ask.studio.model, ask.studio.values, ask.work.before(ask.step))
    now = ask.work.now(ask.step)
    lifted = _lifted(scene(shape, before, now, False, False, ask.work.turned(ask.step)), ask)
    if len(lifted) < 2:
        return None
    strokes = tuple(_strokes(lifted, ask))
    width, _, text = ask.size
    titles = [say("{part}, wrong side up", part=one.title) if one.fill == "wrong" else one.title for one in lifted]
    return FigureView(
        name=ask.name,
        title=say("{part}: its layers", part=named(shape.part.title)),
        strokes=strokes,
        bounds=bounds_of(strokes),
        facts=tuple(_facts(lifted)),
        alt=say("{part}, taken apart. From below: {layers}.", part=named(shape.part.title), layers=listed(titles)),
        callouts=tuple(_callouts(lifted)),
        width_mm=width,
        height_mm=_HEIGHT_MM[len(lifted) > _MANY],
        text_mm=text,
    )


def _lifted(layers: Sequence[SceneLayer], ask: DetailAsk) -> list[_Lifted]:
    """The layers from below, strips as layers of their own above what they lie on."""
    flat: list[_Lifted] = []
    for layer in layers:
        strips = [one for one in layer.features if one.shape.kind == "strip"]
        rest = tuple(one for one in layer.features if one.shape.kind != "strip")
        if layer.when == "outline":
            # Sewn through what lies there so far; layers of an outer assembly come later.
            for one in rest if flat else ():
                at = _uppermost(one, flat)
                flat[at] = replace(flat[at], features=(*flat[at].features, one))
        else:
            fill = "wrong" if layer.wrong else "ground"
            flat.append(
                _Lifted(named(layer.shape.part.title), layer.shape.name, layer.outline, rest, layer.when, fill, 0.0)
            )
        flat += (_strip(one, ask) for one in strips)
    apart = _apart(flat) if flat else 0.0
    return [replace(one, height=number * apart) for number, one in enumerate(flat)]


def _uppermost(one: SceneFeature, layers: Sequence[_Lifted]) -> int:
    """The number of the highest layer under all of a feature, or under most of it."""
    spots = [one.placing.point(point) for point in _spots(one.shape)]
    under = [sum(layer.outline.contains(spot, 0.5) for spot in spots) for layer in layers]
    return max(range(len(layers)), key=lambda number: (under[number], number))


def _spots(shape: FeatureShape) -> Iterator[Point]:
    """Places that tell on what a feature lies: centres, or a point of each run."""
    yield from shape.points
    for path in shape.paths if not shape.points else ():
        yield from (run.point_at(0.5) for run in path.runs)


def _strip(one: SceneFeature, ask: DetailAsk) -> _Lifted:
    name = getattr(one.shape.feature, "strip", "")
    part = ask.studio.model.parts.get(name)
    title = part.title if part is not None else one.shape.name
    folds = replace(one, shape=replace(one.shape, regions=()))
    return _Lifted(title, name, one.placing.outline(one.shape.regions[0]), (folds,), one.when, "strip", 0.0)


def _apart(layers: Sequence[_Lifted]) -> float:
    """How far layers are lifted off each other: so that half of a layer can be seen under the next."""
    tallest = max(oblique((0.0, b[3] - b[1]))[1] for b in (one.outline.bounds() for one in layers))
    return max(_APART * tallest, _LEAST_APART_MM)


def _strokes(lifted: Sequence[_Lifted], ask: DetailAsk) -> Iterator[Stroke]:
    for number, layer in enumerate(lifted):
        role = "strip" if layer.fill == "strip" else "cut edge"
        edge = oblique_path(layer.outline.segments, layer.height, _TOLERANCE_MM)
        if number:
            yield from _leads(lifted[number - 1], layer)
        yield Stroke(role, layer.when, edge, closed=True, fill=layer.fill)
        for one in layer.features:
            if one.when == "hidden":
                continue  # it is the edge now
            stitch, pitch = ask.studio.stitches.get((one.part, one.shape.name), ("301", 3.0))
            for stroke in feature_strokes(one.shape, one.when, one.placing, stitch, pitch, False):
                # The mark of a notch is drawn for a part seen square; leant over, only its own lines are right.
                role = "cut edge" if stroke.role == "notch" else stroke.role
                path = oblique_path(stroke.path, layer.height, _TOLERANCE_MM)
                yield replace(stroke, role=role, path=path, numbers=())


def _leads(below: _Lifted, above: _Lifted) -> Iterator[Stroke]:
    """From the corners and the fittings of a layer down to where they come to lie on the one below."""
    left, bottom, right, top = above.outline.bounds()
    corners = ((left, bottom), (right, bottom), (right, top), (left, top))
    under = [spot for _, spot in _round_places(below)]
    fittings = (spot for kind, spot in _round_places(above) if kind == "hardware")
    meeting = (spot for spot in fittings if any(math.dist(spot, other) < _MEETS_MM for other in under))
    for corner in dict.fromkeys((*(_nearest(above.outline, corner) for corner in corners), *meeting)):
        if below.outline.contains(corner, 0.5):
            foot, tip = oblique(corner, below.height), oblique(corner, above.height)
            yield Stroke("lead", "part", (Line(foot, tip),))


def _round_places(layer: _Lifted) -> Iterator[tuple[str, Point]]:
    """Kind and place of each hole and fitting."""
    for one in layer.features:
        if one.shape.kind in ("hole", "drill hole", "hardware"):
            yield from ((one.shape.kind, one.placing.point(point)) for point in one.shape.points)


def _nearest(outline: Outline, corner: Point) -> Point:
    return min(
        (segment.start for segment in outline.segments),
        key=lambda p: (p[0] - corner[0]) ** 2 + (p[1] - corner[1]) ** 2,
    )


def _callouts(lifted: Sequence[_Lifted]) -> Iterator[Callout]:
    """Each layer's number from below and its name, at its right edge."""
    for number, layer in enumerate(lifted, start=1):
        at = max((segment.start for segment in layer.outline.segments), key=lambda p: (round(p[0], 3), -p[1]))
        words = f"{number} {layer.title}"
        if layer.fill == "wrong":
            words = say("{layer} (wrong side up)", layer=words)
        yield Callout(oblique(at, layer.height), words, accent=layer.when == "now")


def _facts(lifted: Sequence[_Lifted]) -> Iterator[tuple[str, str]]:
    for number, layer in enumerate(lifted, start=1):
        yield f"layer {number}", f"{layer.part} {'wrong' if layer.fill == 'wrong' else 'right'} side up"
        for one in sorted(layer.features, key=lambda feature: (feature.part, feature.shape.name)):
            yield f"{number}/{one.part}/{one.shape.name}", f"{one.shape.kind} {one.when}"
