"""A run that cuts pieces for several products: what of its time each of them pays."""

from __future__ import annotations

import math
from collections.abc import Collection

from builder.computing.cut_path import cut_length
from builder.geometry import ShapeBook
from builder.model import PlantModel, Values, cut_with


def run_share(operation: str, used: Collection[str], model: PlantModel, book: ShapeBook, values: Values) -> float:
    """Share of a run's time that the pieces in `used` pay, by the length cut for them; 1 where all made are used.

    Only of what is cut: a run that sews or sets several things makes them for one product. 1 too where a shape is
    unknown or none of its pieces is used. Source: ours.
    """
    makes, kind = model.operations[operation].makes, model.kind_of(operation)
    mine = [name for name in makes if name in used]
    if kind is None or kind.model not in ("contour", "chop") or not mine or len(mine) == len(makes):
        return 1.0
    lengths: dict[str, float] = {}
    for name, count in makes.items():
        shape = book.shape(name, values)
        if shape is None:
            return 1.0
        cut = [shape.features[one] for one in cut_with(shape.part) if one in shape.features]
        lengths[name] = count * cut_length(shape, cut)
    total = math.fsum(lengths.values())
    return math.fsum(lengths[name] for name in mine) / total if total > 0 else 1.0
