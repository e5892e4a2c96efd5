"""What a nest names: parts its operation makes, and dimensions of the plant."""

from __future__ import annotations

from collections.abc import Collection, Iterator

from builder.model.expression import Expression
from builder.model.nest import Nest
from builder.model.plant_model import PlantModel
from builder.model.sizes import full_name
from builder.model.states import operation_bases

Named = tuple[tuple[str | int, ...], str, Collection[str], str, int]
"""Path in the operation, the name, the names it may be, what these are, and where in the text it begins."""


def nest_names(model: PlantModel, operation: str) -> Iterator[Named]:
    """Every name in an operation's nest."""
    one = model.operations[operation]
    if one.nest is None:
        return
    for number, piece in enumerate(one.nest.pieces):
        yield ("nest", "pieces", number, "part"), piece.part, one.makes, "part it makes", 0
    for number, name in enumerate(one.nest.cut_order):
        yield ("nest", "cut order", number), name, one.makes, "part it makes", 0
    yield from _dimensions(model, one.nest, operation_bases(one, model.states))


def _dimensions(model: PlantModel, nest: Nest, bases: tuple[str, ...]) -> Iterator[Named]:
    named = [(path, typed) for path, typed in nest.lengths() if isinstance(typed, Expression)]
    if not named:
        return
    known = {full_name(name, short) for name, part in model.parts.items() for short, _ in part.own_dimensions()}
    known |= {short for base in bases for short, _ in model.parts[base].own_dimensions()}
    for path, typed in named:
        for name in typed.names:
            yield ("nest", *path), name.text, known, "dimension", name.offset
