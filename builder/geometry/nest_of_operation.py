"""The nest of an operation in one size, laid out once for each different sheet."""

from __future__ import annotations

from builder.errors import TextFault
from builder.geometry.nest import NestFault, NestLayout, lay_out_nest
from builder.geometry.shapes import ShapeBook
from builder.model import Nest, PlantModel, Values, nest_length, operation_bases


def operation_nest(model: PlantModel, book: ShapeBook, operation: str, values: Values) -> NestLayout | NestFault | None:
    """The sheet of an operation with its pieces; None without a `nest:`, or where a part can't be built.

    Equal sheets in several sizes are one object.
    """
    one = model.operations[operation]
    if one.nest is None:
        return None
    bases = operation_bases(one, model.states)
    key = ("nest", operation, *_rests_on(one.nest, bases, book, values))
    if key not in book.kept:
        goods = model.materials.get(model.material_of(one.nest.pieces[0].part) or "")
        width = goods.width if goods is not None else None
        book.kept[key] = lay_out_nest(one.nest, bases, values, lambda name: book.shape(name, values), width)
    found: NestLayout | NestFault | None = book.kept[key]
    return found


def _rests_on(nest: Nest, bases: tuple[str, ...], book: ShapeBook, values: Values) -> tuple[object, ...]:
    """What a sheet rests on: the shapes of its parts, kept by the book, and the lengths typed."""
    lengths: list[object] = []
    for _, typed in nest.lengths():
        try:
            lengths.append(nest_length(typed, bases, values).value)
        except (KeyError, TextFault):
            lengths.append("")
    return (*(id(book.shape(piece.part, values)) for piece in nest.pieces), *lengths)
