"""What a figure is asked to show, and the words on it: callouts, rings, the side, the text alternative."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from builder.geometry import FeatureShape, PartShape, Path, Point, feature_bounds, fold_across
from builder.model import (
    Part,
    Tolerance,
    named,
    plain,
    say,
)
from builder.view.figure import Callout
from builder.view.scene import Made, SceneFeature, SceneLayer
from builder.view.strokes_shaping import SHAPING
from builder.view.words import feature_words, listed

_MOST_ALIKE = 2
_NAMED = ("strip", "fold", "hole", "drill hole", "slot", "hardware", "bartack", "notch", "tag")


@dataclass(frozen=True, slots=True)
class Ask:
    """What a figure is asked to show.

    checks : (dimension's full name, tolerance) worked to in this step
    overall: with the part's own width and height
    turned : base parts that lie right side out, their seams inside
    over   : 'over' where the step before showed the other side
    hands  : radius of the zone fingers stay out of at the start of the work, mm, and its words
    rings  : (part, feature) to look at; order : what is worked now, in working order
    """

    name: str
    title: str
    part: str
    before: Made
    now: Made = frozenset()
    wrong: bool = False
    order: tuple[tuple[str, str], ...] = ()
    cut_now: bool = False
    checks: tuple[tuple[str, Tolerance], ...] = ()
    rings: Made = frozenset()
    turned: frozenset[str] = frozenset()
    over: str = ""
    hands: tuple[float, str] = (0.0, "")
    words: bool = True
    overall: bool = False
    size: tuple[float, float, float] = (98.0, 62.0, 2.8)


def ringed(layers: Sequence[SceneLayer], rings: Made) -> Iterator[Point]:
    for layer in layers:
        for name, feature in layer.shape.features.items():
            if (layer.shape.name, name) in rings:
                for point in feature.points or (_middle(feature),):
                    yield layer.placing.point(point)


def _middle(feature: FeatureShape) -> Point:
    """The middle of all of a feature."""
    left, bottom, right, top = feature_bounds(feature)
    return (left + right) / 2, (bottom + top) / 2


def callouts(now: Sequence[SceneFeature], layers: Sequence[SceneLayer], ask: Ask) -> Iterator[Callout]:
    sewn = [one for one in now if one.shape.kind == "seam"]
    for number, one in enumerate(sewn if len(sewn) > 1 else (), start=1):
        # Seams sewn one after the other are numbered in their order.
        yield Callout(one.placing.point(one.shape.paths[0].runs[0].point_at(0.45)), str(number), accent=True)
    named: dict[str, list[Point]] = {}
    for one in () if ask.cut_now else now:
        if one.shape.kind in _NAMED or (one.shape.feature.label and one.shape.kind not in SHAPING):
            named.setdefault(_name(one), []).append(one.placing.point(_anchor(one)))
    for text, points in named.items():
        if len(points) > _MOST_ALIKE:
            # Many alike are named once, with their number, as on a drawing: `6 × groove`.
            points, text = points[len(points) // 2 :][:1], f"{len(points)} × {text}"
        yield from (Callout(point, text, accent=True) for point in points)
    for layer in layers:
        for name, feature in layer.shape.features.items():
            if (layer.shape.name, name) in ask.rings - ask.now:
                for anchor in feature.points[:1] or (_middle(feature),):
                    yield Callout(layer.placing.point(anchor), feature_words(feature.feature, name), accent=True)


def _anchor(one: SceneFeature) -> Point:
    if one.shape.kind == "tag":
        # At a side, so that its name doesn't stand on what it says; a loop is seen at its fold.
        side = one.shape.paths[:1] or one.shape.regions[0].edge("top")
        return (side[0].runs[0] if isinstance(side[0], Path) else side[0]).point_at(0.5)
    if one.shape.points:
        return one.shape.points[len(one.shape.points) // 2]
    if one.shape.regions:
        return one.shape.regions[0].centroid()
    run = one.shape.paths[0].runs[0]
    return run.point_at(0.3)


def _name(one: SceneFeature) -> str:
    return feature_words(one.shape.feature, one.shape.name)


def alt(part: Part, shown: Sequence[SceneFeature], ask: Ask) -> str:
    """The figure in words: part, side, what is worked now, what is already there, what to look at."""
    sentences = [
        say("{part}, wrong side.", part=named(part.title))
        if ask.wrong
        else say("{part}, right side.", part=named(part.title))
    ]
    now = [_name(one) for one in shown if one.when == "now"]
    earlier = [_name(one) for one in shown if one.when != "now"]
    if ask.cut_now:
        sentences.append(say("Cut out now, along its outline."))
    if now:
        sentences.append(say("Worked now: {features}.", features=listed(now)))
    if ask.rings:
        sentences.append(say("Look at: {features}.", features=listed([plain(name) for _, name in sorted(ask.rings)])))
    if earlier:
        sentences.append(say("Already there: {features}.", features=listed(earlier)))
    return " ".join(sentences)


def chopped(shape: PartShape) -> bool:
    return shape.part.outline is not None and shape.part.outline.strip is not None


def side(shape: PartShape, ask: Ask) -> str:
    """The side shown. Layers of an assembly or a folded part show different ones, and webbing has none worth a word."""
    folded = any((shape.name, name) in ask.before and fold_across(one) for name, one in shape.features.items())
    if not ask.words or shape.components or folded or chopped(shape):
        return ""
    return say("wrong side") if ask.wrong else say("right side")
