"""What a drawing says of pleats, darts, zips and elastic, beside their dimensions."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction

from builder.geometry import FeatureShape, Point, finished_edge, stretch, taken_at
from builder.model import Elastic, Pleat, Quantity, Values, show_number, show_quantity
from builder.view.figure import Callout
from builder.view.scene import Made, SceneFeature, SceneLayer
from builder.view.strokes_shaping import SHAPING
from builder.view.words import plain


def shaping_callouts(now: Sequence[SceneFeature], values: Values, first: str) -> Iterator[Callout]:
    """A word for each of them worked now, with what it takes or how long it is."""
    for one in now:
        if one.shape.kind in SHAPING:
            yield Callout(one.placing.point(_anchor(one.shape)), _words(one, values, first), accent=True)


def finished_callouts(layers: Sequence[SceneLayer], now: Made, before: Made, first: str) -> Iterator[Callout]:
    """How long an edge is once the pleats and darts worked now are made: the first edge they take something of."""
    for layer in layers:
        shape = layer.shape
        mine = {name for part, name in now if part == shape.name}
        done = mine | {name for part, name in before if part == shape.name}
        edge = next((edge for edge in shape.outline.edges if mine and taken_at(shape, edge, mine) > 0), None)
        if edge is not None:
            sides = shape.outline.edge(edge)
            at = layer.placing.point(sides[-1].point_at(0.96))
            whole = _mm(sum(side.length for side in sides), first, both=False)
            text = f"{edge} {whole}, finished {_mm(finished_edge(shape, edge, done), first)}"
            yield Callout(at, text, accent=True)


def _words(one: SceneFeature, values: Values, first: str) -> str:
    shape, spec = one.shape, one.shape.feature
    name = spec.label or plain(shape.name)
    take = values.get(f"{one.part}/{shape.name}.take")
    if isinstance(spec, Pleat) and take is not None:
        row = f"{spec.count} × " if spec.count > 1 else ""
        return f"{row}{spec.label or f'{spec.kind} pleat'}: takes {show_quantity(take, first)}"  # type: ignore[arg-type]
    if isinstance(spec, Elastic):
        relaxed = values.get(f"{one.part}/{shape.name}.relaxed")
        if relaxed is None:
            return name
        ratio = show_number(stretch(shape), 2, trim=False)
        words = show_quantity(relaxed, first, both=False)  # type: ignore[arg-type]
        return f"{name}, {words} stretched to {_mm(shape.paths[0].length, first, both=False)}: × {ratio}"
    if shape.kind == "zip" and f"{one.part}/{shape.name}.length" not in values:
        return f"{name}, {_mm(shape.paths[0].length, first)}"
    return name


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
