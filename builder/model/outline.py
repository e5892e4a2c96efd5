"""The outline of a cut piece as it is typed: rectangle, strip, polygon, mirrored half or drawing, and its allowance.

Shapes are worked out in geometry/outline_shape.py; here is only what the words are and which may stand together.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Annotated, Any, Literal

from pydantic import BeforeValidator, Field, model_validator
from pydantic_core import PydanticCustomError

from builder.model.base import Noun, Table, Text
from builder.model.element import fault_context
from builder.model.expression import Expression
from builder.model.feature import At, Dimension
from builder.model.quantity import Quantity
from builder.model.typed import Ident, LengthOrExpression, SignedLengthOrExpression


class Rectangle(Noun):
    """Edges are named bottom, right, top, left."""

    width: LengthOrExpression
    height: LengthOrExpression
    corner: LengthOrExpression | None = None


class StripOutline(Noun):
    """A piece cut to length from webbing or tape, lying along x. Its width is that of its material."""

    length: LengthOrExpression


class Corner(Noun):
    """A corner of a polygon. `edge` names the side that leads from it to the next; `corner` rounds it.

    The side to the next corner is an arc when it has one of:
    radius : of that arc, which is at most half a turn; above 0 it bows outward, below 0 inward
    bow    : how far the middle of the arc stands off the straight line between the two corners, signed alike
    """

    x: LengthOrExpression
    y: LengthOrExpression
    corner: LengthOrExpression | None = None
    edge: Ident | None = None
    radius: SignedLengthOrExpression | None = None
    bow: SignedLengthOrExpression | None = None

    @model_validator(mode="after")
    def _one_arc(self) -> Corner:
        if self.radius is not None and self.bow is not None:
            raise _object_fault(
                "radius", "`radius:` stands beside `bow:`; each says the whole arc", "Type one of the two."
            )
        return self


def _for_all(value: Any) -> Any:
    return value if isinstance(value, dict) else {"all": value}


ALL = "all"
"""The entry of a table of allowances that stands for every edge without an entry of its own."""

Allowances = Annotated[
    Table[Ident, LengthOrExpression],
    BeforeValidator(_for_all, json_schema_input_type=LengthOrExpression | dict[str, LengthOrExpression]),
]
"""One allowance for all edges, or a table by edge; edges it doesn't name have that of `all`, else none."""


class Outline(Noun):
    """The outline: one of rectangle, strip, polygon, half or drawing. It is the cut edge unless `typed` says otherwise.

    polygon   : corners in counter-clockwise order
    half      : the corners of one half, from the centre line to the centre line; the other half is its mirror image.
                The centre line is upright where the first and last corner have the same x, level where they have the
                same y. A side that crosses it square is one edge, and its `radius` or `bow` is that of the whole
                edge. Every other edge comes twice: where its name holds left or right (top or bottom on a level
                line), the mirrored one swaps the word, else it is `…-mirrored`.
    drawing   : a DXF file of the folder drawings; the closed contour on `layer` is the outline. Its lower left
                corner is the origin. `unit` is for a file that doesn't say its own.
    edges     : name → a place near the edge. Edges of a drawing run from corner to corner, and of the four sides of a
                drawing with four corners those nobody named are called bottom, right, top and left.
    allowance : how far the cut edge lies outside the seam line. A seam without `inset` follows the seam line.
                Corners of the new line are mitred, up to four times the allowance from the corner; sharper ones
                are rounded, or cut square to the corner where two different allowances meet.
    typed     : which of the two lines is typed above
    """

    rectangle: Rectangle | None = None
    strip: StripOutline | None = None
    polygon: tuple[Corner, ...] | None = None
    half: tuple[Corner, ...] | None = None
    drawing: Text | None = None
    layer: Text | None = None
    unit: Literal["mm", "cm", "m", "in", "ft"] | None = None
    edges: Table[Ident, At] = Field(default_factory=dict)
    allowance: Allowances = Field(default_factory=dict)
    typed: Literal["cut edge", "seam line"] = "cut edge"

    @property
    def forms(self) -> tuple[str, ...]:
        """The forms typed; there should be exactly one."""
        names = ("rectangle", "strip", "polygon", "half", "drawing")
        return tuple(name for name in names if getattr(self, name) is not None)

    @property
    def corners(self) -> tuple[Corner, ...]:
        """The corners typed, of a polygon or of a half."""
        return self.polygon or self.half or ()

    def allowance_of(self, edge: str) -> str | None:
        """Short name of the dimension that is the allowance of an edge, None when it has none."""
        if edge in self.allowance and edge != ALL:
            return f"allowance.{edge}"
        return "allowance" if ALL in self.allowance else None

    def dimensions(self) -> Iterator[tuple[str, Dimension]]:
        """Named lengths as typed: `width`, `corner-2.bow`, `allowance`, `allowance.bottom`, `mouth-edge.top`."""
        for owner in (self.rectangle, self.strip):
            if owner is not None:
                yield from lengths(owner)
        for number, corner in enumerate(self.corners, start=1):
            for name, value in lengths(corner):
                yield f"corner-{number}.{name}", value
        for edge, allowance in self.allowance.items():
            yield ("allowance" if edge == ALL else f"allowance.{edge}"), allowance
        for edge, at in self.edges.items():
            for name, value in lengths(at):
                yield f"{edge}-edge.{name}", value

    def dimension_path(self, owner: str, dimension: str) -> tuple[str | int, ...] | None:
        """Path inside the outline to a dimension's value, its short name cut at the last dot; None for others."""
        if owner.startswith("corner-") and owner.removeprefix("corner-").isdecimal():
            return (
                "polygon" if self.polygon is not None else "half",
                int(owner.removeprefix("corner-")) - 1,
                dimension,
            )
        if owner == "allowance":
            return "allowance", dimension
        if owner.endswith("-edge") and owner.removesuffix("-edge") in self.edges:
            return "edges", owner.removesuffix("-edge"), dimension
        if owner:
            return None
        if dimension == "allowance":
            return "allowance", ALL
        return "rectangle" if self.rectangle is not None else "strip", dimension

    @model_validator(mode="after")
    def _fits_together(self) -> Outline:
        for key, message, remedy in self._faults():
            raise _object_fault(key, message, remedy)
        return self

    def _faults(self) -> Iterator[tuple[str, str, str]]:
        """Key, message and remedy of each fault between the keys."""
        typed = {name for name in ("layer", "unit", "edges") if name in self.model_fields_set}
        for key in sorted(typed) if self.drawing is None else ():
            message = f"`{key}:` belongs to an outline with a `drawing:`"
            yield key, message, "Name the drawing, or take it out."
        if self.strip is not None and self.allowance:
            yield "allowance", "a strip has the width of its material, so it has no allowance", "Take it out."
        if self.typed == "seam line" and not self.allowance:
            yield "typed", "the seam line is typed, but no `allowance:` outside it", "Type the allowance."
        last = self.half[-1] if self.half else None
        if last is not None and (last.edge, last.radius, last.bow) != (None, None, None):
            message = "the last corner of a half lies on the centre line: no side leads from it"
            yield "half", message, "Take `edge:`, `radius:` and `bow:` out there; a half ends on its centre line."


def _object_fault(key: str, message: str, remedy: str) -> PydanticCustomError:
    return PydanticCustomError("object_fault", "{message}", {**fault_context("key-unknown", key, message, remedy)})


def lengths(owner: Noun) -> Iterator[tuple[str, Dimension]]:
    """The lengths among the fields of an object, by name."""
    for name in type(owner).model_fields:
        value = getattr(owner, name)
        if isinstance(value, Quantity | Expression):
            yield name, value
