"""Hems of a folded or pleated part: sewn on the flat part before, they show on what it becomes.

A part that says what it is formed from has an outline of its own; only a hem along one edge that is an edge of both
can be carried over without asking the engineer again. Everything else of the flat part lies somewhere else by now.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from builder.geometry import FeatureShape, Line, PartShape, Path, Segment
from builder.model import Fold, Part, PlantModel, Seam, Values
from builder.view.scene import Made


def with_hems(shape: PartShape, model: PlantModel, values: Values, made: Made) -> tuple[PartShape, Made]:
    """The shape with the hems of what it and its layers are formed from, and what is made with them."""
    components = []
    for one in shape.components:
        inner, made = with_hems(one.shape, model, values, made)
        components.append(replace(one, shape=inner))
    hems = {name: one for name, one in _hems(shape, model, values, made) if name not in shape.features}
    made |= {(shape.name, name) for name in hems}
    return replace(shape, features={**shape.features, **hems}, components=tuple(components)), made


def _hems(shape: PartShape, model: PlantModel, values: Values, made: Made) -> Iterator[tuple[str, FeatureShape]]:
    flat = shape.part.formed_from
    if flat is None or flat not in model.parts:
        return
    for name, seam in model.parts[flat].features.items():
        if not isinstance(seam, Seam) or (flat, name) not in made or len(seam.seam) != 1:
            continue
        edge = seam.seam[0]
        fold = _fold_of(edge, flat, model.parts[flat], made)
        inset = f"{flat}/{name}.inset"
        if not fold or edge not in shape.outline.edges or inset not in values:
            continue
        off = float(values[inset].value - values[fold].value)
        if off > 0:
            runs = tuple(_beside(segment, off) for segment in shape.outline.edge(edge))
            yield name, FeatureShape(name, "seam", seam, (Path(runs),))


def _fold_of(edge: str, flat: str, part: Part, made: Made) -> str:
    """Full name of how much is folded under along an edge, '' when nothing is."""
    for name, one in part.features.items():
        if isinstance(one, Fold) and one.fold == edge and one.inset is not None and (flat, name) in made:
            return f"{flat}/{name}.inset"
    return ""


def _beside(edge: Segment, off: float) -> Line:
    """The line inside an edge of a counter-clockwise outline."""
    (x0, y0), (x1, y1) = edge.start, edge.end
    tx, ty = edge.tangent_at(0.5)
    return Line((x0 - ty * off, y0 + tx * off), (x1 - ty * off, y1 + tx * off))
