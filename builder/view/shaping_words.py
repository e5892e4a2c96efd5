"""What a drawing says of pleats, darts, zips and elastic, beside their dimensions."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction

from builder.geometry import FeatureShape, Point, finished_edge, stretch, taken_at
from builder.model import (
    Elastic,
    Pleat,
    Quantity,
    Values,
    named,
    say,
    show_number,
    show_quantity,
)
from builder.view.figure import Callout
from builder.view.scene import Made, SceneFeature, SceneLayer
from builder.view.strokes_shaping import SHAPING
from builder.view.words import feature_words


def shaping_callouts(now: Sequence[SceneFeature], values: Values, first: str, size: str = "") -> Iterator[Callout]:
    """A word for each of them worked now, with how long it is; pleats that are alike have one with their number.

    size : goes before a length that differs between sizes
    """
    pleats: dict[str, list[SceneFeature]] = {}
    for one in now:
        spec = one.shape.feature
        if isinstance(spec, Pleat):
            pleats.setdefault(named(spec.label) if spec.label else say("{kind} pleat", kind=say(spec.kind)), []).append(
                one
            )
        elif one.shape.kind in SHAPING:
            yield Callout(one.placing.point(_anchor(one.shape)), _words(one, values, first, size), accent=True)
    for words, alike in pleats.items():
        count = sum(one.shape.feature.count for one in alike if isinstance(one.shape.feature, Pleat))
        at = alike[0].placing.point(_anchor(alike[0].shape))
        yield Callout(at, f"{count} × {words}" if count > 1 else words, accent=True)


def finished_callouts(
    layers: Sequence[SceneLayer], now: Made, before: Made, first: str, size: str = ""
) -> Iterator[Callout]:
    """How long an edge is once pleats and darts are made: of each part, the first edge those worked now take of.

    `bottom 300 − 72 = 228 mm`; size : goes before it where the part differs between sizes
    """
    for layer in layers:
        shape = layer.shape
        mine = {name for part, name in now if part == shape.name}
        done = mine | {name for part, name in before if part == shape.name}
        edge = next((edge for edge in shape.outline.edges if mine and taken_at(shape, edge, mine) > 0), None)
        if edge is None:
            continue
        sides, left = shape.outline.edge(edge), finished_edge(shape, edge, done)
        whole, take = sum(side.length for side in sides), taken_at(shape, edge, done)
        sum_ = f"{_number(whole, first)} − {_number(take, first)} = {_mm(left, first)}"
        yield Callout(layer.placing.point(sides[-1].point_at(0.96)), f"{size} {say(edge)} {sum_}".strip(), accent=True)


def _words(one: SceneFeature, values: Values, first: str, size: str) -> str:
    shape, spec = one.shape, one.shape.feature
    name = feature_words(spec, shape.name)
    before = f"{size} " if size else ""
    if isinstance(spec, Elastic):
        relaxed = values.get(f"{one.part}/{shape.name}.relaxed")
        if relaxed is None:
            return name
        ratio = show_number(stretch(shape), 2, trim=False)
        words = show_quantity(relaxed, first, both=False)  # type: ignore[arg-type]
        long = _mm(shape.paths[0].length, first, both=False)
        stretched = say("{relaxed} stretched to {length}", relaxed=words, length=long)
        return f"{name}, {before}{stretched}: × {ratio}"
    if shape.kind == "zip" and f"{one.part}/{shape.name}.length" not in values:
        return f"{name}, {before}{_mm(shape.paths[0].length, first)}"
    return name


def _number(length: float, first: str) -> str:
    """A length without its unit, which stands behind the sum."""
    return _mm(length, first, both=False).rpartition(" ")[0]


def _mm(length: float, first: str, both: bool = True) -> str:
    return show_quantity(Quantity.of(Fraction(length).limit_denominator(1000), "length", "mm"), first, both)  # type: ignore[arg-type]


def _anchor(shape: FeatureShape) -> Point:
    if shape.kind == "pleat":
        run = shape.paths[len(shape.paths) // 2].runs[0]
        return run.point_at(0.5)
    if shape.kind == "dart":
        return shape.marks[1][1].runs[0].point_at(0.45)
    run = shape.paths[0].runs[len(shape.paths[0].runs) // 2]
    return run.point_at(0.3)
