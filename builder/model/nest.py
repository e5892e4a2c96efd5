"""A nest: where the pieces of one run of a cutting operation lie on the sheet, as typed."""

from __future__ import annotations

from typing import Literal

from pydantic import Field

from builder.model.base import Noun
from builder.model.typed import Angle, Count, Ident, Length


class NestSheet(Noun):
    """The sheet: `length` along the roll, `width` across it; the material's own width when left out."""

    length: Length
    width: Length | None = None


class NestPieces(Noun):
    """A piece, or rows and columns of it.

    left, bottom : of the box round the first piece after it is turned, from the sheet's lower left corner
    turn         : counter-clockwise; at 0 the part lies as it is drawn, its x along the roll
    pitch, row_pitch : from a piece to the next along and across the roll
    side         : the side that faces up
    """

    part: Ident
    left: Length
    bottom: Length
    turn: Angle | None = None
    side: Literal["right", "wrong"] = "right"
    columns: Count = 1
    rows: Count = 1
    pitch: Length | None = None
    row_pitch: Length | None = None


class Nest(Noun):
    """The lay of one sheet, in the reference size. `gap` is the least distance between two pieces and to the edge."""

    sheet: NestSheet
    gap: Length | None = None
    pieces: tuple[NestPieces, ...] = Field(min_length=1)
