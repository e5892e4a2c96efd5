"""What all features share: where they lie, and their own named lengths. The kinds are in feature.py and arrays.py."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Literal

from builder.model.base import Noun, Text
from builder.model.expression import Expression
from builder.model.quantity import Quantity
from builder.model.typed import SignedLengthOrExpression

Dimension = Quantity | Expression


class At(Noun):
    """A place by its distance from the edges, or from the centre lines, of what the feature lies on.

    One of left, right, centre; one of bottom, top, middle. Positive is inward, or right and up from a centre line.

    from_ : a feature above it in the file, whose box takes the place of the part's: `{from: zip, bottom: 0 mm}` has its
            lower edge level with that of the zip. The box of round pieces is round their centres,
            and what is placed by its centre has the distance to its centre
    right_of, left_of, above, below : the gap beside that feature: `{from: zip, right of: 12 mm, middle: 0 mm}`
    """

    from_: Text | None = None
    left: SignedLengthOrExpression | None = None
    right: SignedLengthOrExpression | None = None
    centre: SignedLengthOrExpression | None = None
    bottom: SignedLengthOrExpression | None = None
    top: SignedLengthOrExpression | None = None
    middle: SignedLengthOrExpression | None = None
    right_of: SignedLengthOrExpression | None = None
    left_of: SignedLengthOrExpression | None = None
    above: SignedLengthOrExpression | None = None
    below: SignedLengthOrExpression | None = None


class Feature(Noun):
    """What all features share. `side` is the side of the part it is worked on."""

    at: At | None = None
    on: Text | None = None
    side: Literal["right", "wrong"] = "right"
    label: Text | None = None

    def dimensions(self) -> Iterator[tuple[str, Dimension]]:
        """Own named lengths, as typed: field names with hyphens, the places of `at` by their edge."""
        for owner in (self, self.at):
            if owner is None:
                continue
            for name in type(owner).model_fields:
                value = getattr(owner, name)
                if isinstance(value, Quantity | Expression) and not _not_a_length(value):
                    yield name.rstrip("_").replace("_", "-"), value
        for number, point in enumerate(getattr(self, "points", ()), start=1):
            for name in type(point).model_fields:
                value = getattr(point, name)
                if isinstance(value, Quantity | Expression):
                    yield f"point-{number}.{name.replace('_', '-')}", value


def _not_a_length(value: Dimension) -> bool:
    return isinstance(value, Quantity) and value.dimension != "length"
