"""A part as it stands at a step: which features are already there, which are made now, its components in layers."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field, replace

from builder.geometry import FeatureShape, Outline, PartShape, Path, Placing, Point, Segment, trimmed
from builder.model import (
    RIGHT_SIDE_OUT,
    Fold,
    Homes,
    Notch,
    Operation,
    PlantModel,
    Step,
    cut_with,
    earlier_work,
    find_feature,
    operation_bases,
    turned_behind,
)
from builder.view.edge_folds import edge_folds, folded_along
from builder.view.folded import as_folded
from builder.view.turned import at_seams, closing_seams

_BESIDE_MM = 3.0
"""A notch this near to a layer above is drawn over by its edge."""

_ON_THE_FOLD_MM = 0.01
"""What lies this near to the edge of a folded part lies on its fold."""

Made = frozenset[tuple[str, str]]


@dataclass(frozen=True, slots=True)
class SceneFeature:
    """A feature on the scene: its shape, when it is made, and where its part lies."""

    part: str
    shape: FeatureShape
    when: str
    placing: Placing
    flipped: bool


@dataclass(frozen=True, slots=True)
class SceneLayer:
    """A part of the scene: its shape, its outline as it stands now (folded, placed), whether its wrong side shows.

    hidden : edges under it, placed
    """

    shape: PartShape
    outline: Outline
    placing: Placing
    wrong: bool
    when: str
    features: tuple[SceneFeature, ...]
    hidden: tuple[Segment, ...] = ()


@dataclass(slots=True)
class Work:
    """What an operation makes, step by step: the states behind it, and its own earlier steps."""

    model: PlantModel
    operation: Operation
    name: str
    _before: Made = field(default_factory=frozenset)

    def __post_init__(self) -> None:
        made: set[tuple[str, str]] = set()
        for part in self.operation.makes:
            made |= earlier_work(part, self.model.states)
        self._before = frozenset(made)

    @property
    def homes(self) -> Homes:
        """Where the feature names of the operation lead."""
        return self.model.homes[self.name]

    def before(self, step: Step) -> Made:
        """Features made before a step: behind the needed parts, and by earlier steps of this operation."""
        own: set[tuple[str, str]] = set()
        for one in self.operation.steps:
            if one is step:
                break
            own |= {key for key in self.now(one) if not self._bends_all(key)}
        return self._before | own

    def _bends_all(self, key: tuple[str, str]) -> bool:
        """Whether a fold bends a whole sub-assembly: one layer of it can't be drawn folded by itself."""
        part, feature = key
        return isinstance(self.model.parts[part].features[feature], Fold) and part not in operation_bases(
            self.operation, self.model.states
        )

    def all_before(self) -> Made:
        """Features made before the operation begins."""
        return self._before

    def now(self, step: Step) -> Made:
        """Features a step makes; cutting a part out makes its notches and holes."""
        found: set[tuple[str, str]] = set()
        for name in step.work[1]:
            ref = find_feature(name, self.homes)
            if ref is not None:
                found.add((ref.part, ref.feature))
            elif step.cut and name in self.model.parts:
                worked = self.model.states[name].worked
                found |= {(name, cut) for cut in cut_with(self.model.parts[name]) if (name, cut) in worked}
        return frozenset(found)

    def all_now(self) -> Made:
        """Features the whole operation makes."""
        return frozenset().union(*(self.now(step) for step in self.operation.steps))

    def turned(self, step: Step) -> frozenset[str]:
        """Base parts that lie right side out once a step is done."""
        found: dict[str, bool] = {}
        for part in self.operation.makes:
            found.update(turned_behind(part, self.model.states, self.model.operations))
        for one in self.operation.steps:
            if one.turn is not None:
                bases = (self.model.states[made].base for made in self.operation.makes if made in self.model.states)
                found.update(dict.fromkeys(bases, one.turn == RIGHT_SIDE_OUT))
            if one is step:
                break
        return frozenset(base for base, right in found.items() if right)

    def order(self, step: Step) -> tuple[tuple[str, str], ...]:
        """What a step works on, in the order it is typed."""
        found = (find_feature(name, self.homes) for name in step.work[1])
        return tuple((ref.part, ref.feature) for ref in found if ref is not None)

    def part_of(self, step: Step) -> str | None:
        """Base part a step works on: that of its first feature, or the part it cuts out."""
        for name in step.work[1]:
            ref = find_feature(name, self.homes)
            if ref is not None:
                return ref.part
            if step.cut and name in self.model.states:
                return self.model.states[name].base
        return None


def scene(
    shape: PartShape, before: Made, now: Made, wrong: bool, cut_now: bool, turned: frozenset[str] = frozenset()
) -> tuple[SceneLayer, ...]:
    """Layers of a part from the lowest to the highest, as seen from its right or its wrong side.

    turned : base parts that lie right side out, their closing seams inside
    """
    left, _, right, _ = shape.bounds
    view = Placing(left + right, 0.0, 0.0, True) if wrong else Placing()
    layers = list(_layers(shape, view, _Told(before, now, turned, "now" if cut_now else "part"), wrong, ()))
    return tuple(_uncovered(layer, layers[number + 1 :]) for number, layer in enumerate(layers))


@dataclass(frozen=True, slots=True)
class _Told:
    """What is the same for all layers of a scene."""

    before: Made
    now: Made
    turned: frozenset[str]
    when: str


def _uncovered(layer: SceneLayer, above: list[SceneLayer]) -> SceneLayer:
    """A layer without the notches that the layers above it hide."""
    outlines = [one.outline for one in above if one.when != "outline"]

    def hidden(feature: SceneFeature) -> bool:
        points = [feature.placing.point(point) for point in feature.shape.points]
        return feature.shape.kind == "notch" and any(o.contains(p, _BESIDE_MM) for o in outlines for p in points)

    return replace(layer, features=tuple(one for one in layer.features if not hidden(one)))


def _layers(
    shape: PartShape, placing: Placing, told: _Told, wrong: bool, closing: tuple[Path, ...]
) -> Iterator[SceneLayer]:
    """The layers of a part. closing : seams that now lie at its edge, in its coordinates"""
    if not shape.components:
        yield from _pieces(shape, placing, told, wrong, closing)
        return
    if shape.name in told.turned:
        closing = (*closing, *(one.paths[0] for one in closing_seams(shape, told.before)))
    below_first = not wrong
    if shape.name in told.turned:
        # Inside out every layer shows its other side, and the whole is its mirror image; what lay above still does.
        left, _, right, _ = shape.bounds
        placing, wrong = Placing(left + right, 0.0, 0.0, True).then(placing), not wrong
    own = tuple(_features(shape, placing, told, wrong, shape.outline, (), closing))
    # What is sewn through an assembly shows on both its faces, so it is drawn after all its layers.
    for component in sorted(shape.components, key=lambda one: one.layer, reverse=not below_first):
        turned = wrong != (component.side == "wrong")
        back = component.placing.inverse()
        inner = tuple(back.path(path) for path in closing)
        yield from _layers(component.shape, component.placing.then(placing), told, turned, inner)
    yield SceneLayer(shape, placing.outline(shape.outline), placing, wrong, "outline", own)


def _pieces(
    shape: PartShape, placing: Placing, told: _Told, wrong: bool, closing: tuple[Path, ...]
) -> Iterator[SceneLayer]:
    """A single part: one layer, or a layer for each piece it is folded into."""
    inside_out = shape.name in told.turned
    found = as_folded(shape, told.before, inside_out)
    covered: list[Segment] = []
    for number, piece in enumerate(reversed(found.pieces) if wrong else found.pieces, start=1):
        at, up = piece.placing.then(placing), wrong != piece.turned
        layer = _flat(piece.shape, at, told, up, (*closing, *(piece.closing if inside_out else ())))
        if number == len(found.pieces) and covered:
            layer = replace(layer, hidden=(*layer.hidden, *covered))
        covered += layer.outline.segments
        yield layer
    if found.through is not None:
        # What stayed lies where it lay, so its closing seams are those of the whole.
        sewn = next(one.closing for one in found.pieces if not one.turned) if inside_out else ()
        own = tuple(_features(found.through, placing, told, wrong, found.through.outline, (), sewn))
        yield SceneLayer(found.through, placing.outline(found.through.outline), placing, wrong, "outline", own)


def _flat(shape: PartShape, placing: Placing, told: _Told, wrong: bool, closing: tuple[Path, ...]) -> SceneLayer:
    folds = [one for one in edge_folds(shape) if (shape.name, one.name) in told.before]
    outline, inside = at_seams(shape.outline, closing)
    outline = folded_along(outline, folds)
    edged = replace(shape, features=_trimmed(shape, closing)) if closing else shape
    own = tuple(_features(edged, placing, told, wrong, outline, folds, closing))
    hidden = tuple(placing.segment(one) for one in inside)
    return SceneLayer(shape, placing.outline(outline), placing, wrong, told.when, own, hidden)


def _trimmed(shape: PartShape, closing: tuple[Path, ...]) -> dict[str, FeatureShape]:
    """Features as far as they lie within the closing seams; those seams whole."""
    outline, _ = at_seams(shape.outline, closing)
    found = (
        (name, one if one.paths and one.paths[0] in closing else trimmed(one, outline, closing))
        for name, one in shape.features.items()
    )
    return {name: one for name, one in found if one is not None}


def _features(
    shape: PartShape,
    placing: Placing,
    told: _Told,
    wrong: bool,
    outline: Outline,
    folds: Sequence[FeatureShape],
    closing: Sequence[Path],
) -> Iterator[SceneFeature]:
    """What is made on a part. outline : its edge as it lies now; `folds` along it, `closing` seams that are its edge"""
    changed = bool(folds) or outline is not shape.outline
    for name, feature in shape.features.items():
        key = (shape.name, name)
        when = "now" if key in told.now else "earlier" if key in told.before else ""
        if not when:
            continue
        hidden = feature.kind in ("strip", "tag", "zip", "elastic") and (feature.feature.side == "wrong") != wrong
        if changed and feature.kind in ("notch", "fold", "hole", "drill hole", "slot"):
            # What lies on or beyond a fold is under the part now.
            hidden = hidden or feature in folds or not all(_well_inside(outline, p) for p in _innermost(feature))
        if not hidden:
            # A notch is part of the cut edge once it is cut.
            shown = "part" if isinstance(feature.feature, Notch) and when == "earlier" else when
            yield SceneFeature(
                shape.name,
                feature,
                "hidden" if feature.paths and feature.paths[0] in closing else shown,
                placing,
                wrong,
            )


def _innermost(feature: FeatureShape) -> tuple[Point, ...]:
    """Points that tell whether a notch, hole or fold is in sight: a notch begins on the edge, but its tip is inside."""
    if feature.kind == "notch":
        return tuple(path.runs[0].end for path in feature.paths)
    return feature.points or tuple(path.runs[0].point_at(0.5) for path in feature.paths)


def _well_inside(outline: Outline, point: Point) -> bool:
    return outline.contains(point) and outline.distance_to_boundary(point) > _ON_THE_FOLD_MM
