"""A part: a cut piece or a sub-assembly, with its outline and the features work produces on it."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Literal

from pydantic import Field

from builder.model.base import Noun, Table, Text
from builder.model.feature import AnyFeature, At, Dimension
from builder.model.outline import Outline, lengths
from builder.model.typed import Angle, Count, Ident, LengthOrExpression


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
        if self.outline is not None:
            yield from self.outline.dimensions()
        for name, feature in self.features.items():
            for dimension, value in feature.dimensions():
                yield f"{name}.{dimension}", value
        for component in self.from_:
            if component.at is not None:
                for edge, value in lengths(component.at):
                    yield f"{component.part}.{edge}", value
