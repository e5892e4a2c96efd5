"""A part: a cut piece or a sub-assembly, with its outline and the features work produces on it."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Literal

from pydantic import Field

from builder.model.base import Noun, Table, Text
from builder.model.expression import Expression
from builder.model.feature import AnyFeature, At, Dimension
from builder.model.quantity import Quantity
from builder.model.typed import Angle, Count, Ident, LengthOrExpression


class Rectangle(Noun):
    """Edges are named bottom, right, top, left."""

    width: LengthOrExpression
    height: LengthOrExpression
    corner: LengthOrExpression | None = None


class StripOutline(Noun):
    """A piece cut to length from webbing or tape, lying along x. Its width is that of its material."""

    length: LengthOrExpression


class Corner(Noun):
    """A corner of a polygon. `edge` names the side that leads from it to the next; `corner` rounds it."""

    x: LengthOrExpression
    y: LengthOrExpression
    corner: LengthOrExpression | None = None
    edge: Ident | None = None


class Outline(Noun):
    """The cut edge: one of rectangle, strip or polygon (corners in counter-clockwise order)."""

    rectangle: Rectangle | None = None
    strip: StripOutline | None = None
    polygon: tuple[Corner, ...] | None = None


class Component(Noun):
    """A part inside a sub-assembly: where it lies, how it is turned, which side shows, in which layer (1 lowest)."""

    part: Ident
    at: At | None = None
    turn: Angle | None = None
    side: Literal["right", "wrong"] = "right"
    layer: Count = 1


class Part(Noun):
    """A cut piece (`material`, `outline`) or a sub-assembly (`from` its parts; its outline is that of the first).

    formed_from : the part this one is by folding or pleating: it has an outline of its own, and that part's material
    """

    title: Text
    material: Ident | None = None
    outline: Outline | None = None
    from_: tuple[Component, ...] = ()
    formed_from: Ident | None = None
    grain: Literal["up", "across", "none"] = "none"
    dimensions: Table[Ident, LengthOrExpression] = Field(default_factory=dict)
    features: Table[Ident, AnyFeature] = Field(default_factory=dict)
    note: Text | None = None

    def own_dimensions(self) -> Iterator[tuple[str, Dimension]]:
        """Named lengths as typed, by their short names: `width`, `margin`, `handle-box.left`."""
        yield from self.dimensions.items()
        yield from _outline_dimensions(self.outline)
        for name, feature in self.features.items():
            for dimension, value in feature.dimensions():
                yield f"{name}.{dimension}", value
        for component in self.from_:
            if component.at is not None:
                for edge, value in _lengths(component.at):
                    yield f"{component.part}.{edge}", value


def _lengths(owner: Noun) -> Iterator[tuple[str, Dimension]]:
    for name in type(owner).model_fields:
        value = getattr(owner, name)
        if isinstance(value, Quantity | Expression):
            yield name, value


def _outline_dimensions(outline: Outline | None) -> Iterator[tuple[str, Dimension]]:
    if outline is None:
        return
    if outline.rectangle is not None:
        yield from _lengths(outline.rectangle)
    if outline.strip is not None:
        yield from _lengths(outline.strip)
    for number, corner in enumerate(outline.polygon or (), start=1):
        for name, value in _lengths(corner):
            yield f"corner-{number}.{name}", value
