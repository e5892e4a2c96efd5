"""How an operation's pieces lie on the sheet they are cut from.

Grammar only: where each piece comes to lie is geometry's, whether that is right the rules'.

| key | meaning |
|---|---|
| `sheet` | width across the roll and length along it; the length alone, or neither: the goods' width, the length used |
| `margin` | left free along all four edges; `gap` between two pieces |
| `pieces` | rows of pieces of one part, each row from the left; a row begins above what stands before it in the list |
| `cut order` | the parts in the order they are cut |
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Annotated, Literal

from pydantic import Field

from builder.model.base import Names, Noun, OneOrMany
from builder.model.expression import Expression
from builder.model.quantity import Quantity
from builder.model.sizes import Values, find_dimension
from builder.model.typed import Angle, Count, Ident, LengthOrExpression

Length = Quantity | Expression


class NestAt(Noun):
    """Lower left corner of the first piece, from the left and the lower edge of the sheet."""

    left: LengthOrExpression | None = None
    bottom: LengthOrExpression | None = None


class NestPiece(Noun):
    """Rows of pieces of one part, all turned alike.

    turn    : counter-clockwise, after it is turned over if its `side` is wrong
    columns : pieces in a row, as many as fit when left out
    rows, count : how many rows, or how many pieces; the last row may be shorter
    pitch, row pitch : from piece to piece and row to row; the box round a piece and the gap when left out
    """

    part: Ident
    at: NestAt | None = None
    turn: Angle | None = None
    side: Literal["right", "wrong"] = "right"
    columns: Count | None = None
    rows: Count | None = None
    count: Count | None = None
    pitch: LengthOrExpression | None = None
    row_pitch: LengthOrExpression | None = None


class Nest(Noun):
    """Pieces on a sheet: x across the roll from its left edge, y along it. See the head of this module."""

    sheet: Annotated[tuple[LengthOrExpression, ...], OneOrMany, Field(max_length=2)] = ()
    margin: LengthOrExpression | None = None
    gap: LengthOrExpression | None = None
    cut_order: Names = ()
    pieces: Annotated[tuple[NestPiece, ...], Field(min_length=1)]

    def lengths(self) -> Iterator[tuple[tuple[str | int, ...], Length]]:
        """(path in the nest, length) of every length typed."""
        yield from ((("sheet", number), one) for number, one in enumerate(self.sheet))
        yield from (((key,), one) for key, one in (("margin", self.margin), ("gap", self.gap)) if one is not None)
        for number, piece in enumerate(self.pieces):
            path = ("pieces", number)
            at = piece.at or NestAt()
            found = (
                ((*path, "at", "left"), at.left),
                ((*path, "at", "bottom"), at.bottom),
                ((*path, "pitch"), piece.pitch),
                ((*path, "row pitch"), piece.row_pitch),
            )
            yield from ((where, one) for where, one in found if one is not None)


def nest_length(typed: Length, bases: tuple[str, ...], values: Values) -> Quantity:
    """A length of a nest in one size; short names mean a dimension of the operation's parts, the made ones first.

    Raises KeyError for a dimension without a value, TextFault where the kinds don't fit.
    """
    if isinstance(typed, Quantity):
        return typed
    return typed.evaluate(lambda text: values[_full(text, bases, values)], "length")


def _full(text: str, bases: tuple[str, ...], values: Mapping[str, object]) -> str:
    found = (find_dimension(text, base, values) for base in bases)
    return next((full for full in found if full is not None), text)
