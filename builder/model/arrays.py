"""Features that come one by one, in rows or in grids: holes, drill holes, slots, hardware, bartacks.

Each has a key of its own and the keys of a row. `at` is the centre of the first one. Where they lie is geometry.
"""

from __future__ import annotations

from typing import Literal

from builder.model.base import Text
from builder.model.feature_base import Feature
from builder.model.typed import Angle, Count, LengthOrExpression, SignedLengthOrExpression

HardwareLook = Literal["eyelet", "snap", "rivet", "buckle", "round"]
"""What a piece of hardware looks like from above."""


class Row(Feature):
    """A row of `count` by `pitch`, or a grid of `rows` such rows.

    direction : where the row goes; further rows of a grid go up, or to the right of a row that goes up
    angle     : the row, or the whole grid, turned counter-clockwise about its first one
    row_pitch : from row to row; below zero they go down, or to the left
    stagger   : every second row moved along by so much
    order     : how the rows follow each other in work
    """

    count: Count = 1
    pitch: LengthOrExpression | None = None
    direction: Literal["across", "up"] = "across"
    angle: Angle | None = None
    rows: Count = 1
    row_pitch: SignedLengthOrExpression | None = None
    stagger: SignedLengthOrExpression | None = None
    order: Literal["row by row", "back and forth"] = "row by row"

    @property
    def pieces(self) -> int:
        """How many there are of it in all."""
        return self.count * self.rows


class Hole(Row):
    """A round hole: `hole: 3 mm` is its diameter. Up to a few millimetres it counts as a mark, as a drill hole does."""

    hole: LengthOrExpression


class DrillHole(Row):
    """A small hole made at cutting to mark where something goes: `drill hole: 1 mm` is its diameter."""

    drill_hole: LengthOrExpression


class Slot(Row):
    """A long hole: `slot: 20 mm` is its length from end to end. It lies across before it is turned.

    turn : counter-clockwise, each about its own centre
    ends : round ones are half circles of the slot's width
    """

    slot: LengthOrExpression
    width: LengthOrExpression
    turn: Angle | None = None
    ends: Literal["round", "square"] = "round"


class Hardware(Row):
    """Snaps, eyelets, buckles: `hardware: snap-15` names the material. Round by `diameter`, else `width` by `height`.

    inner : diameter of an eyelet's opening
    look  : left out it is that of the material
    turn  : of what isn't round, counter-clockwise, each about its own centre
    """

    hardware: Text
    diameter: LengthOrExpression | None = None
    inner: LengthOrExpression | None = None
    width: LengthOrExpression | None = None
    height: LengthOrExpression | None = None
    turn: Angle | None = None
    look: HardwareLook | None = None


class Bartack(Row):
    """A bartack: `bartack: 28` is its count of stitches.

    turn : from how it stands, counter-clockwise, each about its own centre
    """

    bartack: Count
    length: LengthOrExpression
    width: LengthOrExpression
    stands: Literal["across", "up"] = "up"
    turn: Angle | None = None
