"""What shapes a part: pleats and darts take cloth away, zips and elastic are laid along a line.

Only what is typed; where the lines lie is geometry.
"""

from __future__ import annotations

from typing import Literal

from builder.model.base import Text
from builder.model.expression import Expression, parse_expression
from builder.model.feature_base import At, Feature
from builder.model.typed import Count, Flag, LengthOrExpression, SignedLengthOrExpression

TakeKind = Literal["knife", "box", "inverted"]
DEPTHS_TAKEN: dict[TakeKind, int] = {"knife": 2, "box": 4, "inverted": 4}
"""How many times its depth a pleat takes: a knife pleat lies back and forth once, the others twice."""


class Pleat(Feature):
    """A pleat, or a row of them: `pleat: 12 mm` is its depth, from the outer crease to the inner one.

    along   : which way its creases run; its width lies across them. `at` is the lower left corner of the cloth it is
              folded from, as of a box
    length  : of its creases; from edge to edge when left out
    kind    : `knife` one fold, `box` two away from each other that meet behind, `inverted` two that meet in front
    towards : where the outer crease of a knife pleat points: left or right, of creases across down or up
    count, pitch : a row, from each to the next on the flat part
    """

    pleat: LengthOrExpression
    along: Literal["up", "across"] = "up"
    length: LengthOrExpression | None = None
    kind: TakeKind = "knife"
    towards: Literal["left", "right", "up", "down"] | None = None
    count: Count = 1
    pitch: LengthOrExpression | None = None

    @property
    def depths_taken(self) -> int:
        """How many times its depth the whole row takes."""
        return DEPTHS_TAKEN[self.kind] * self.count

    @property
    def first_way(self) -> bool:
        """Whether the outer crease of a knife pleat points left or down, which it does when nobody says."""
        return self.towards in (None, "left", "down")


class Dart(Feature):
    """A dart: `dart: 20 mm` is its width at `edge`, `depth` the distance from that edge to its point.

    at    : where the middle of its mouth lies along the edge
    drill : the mark lies so far before the point, on the fold
    tack  : where its line is secured by sewing back; at the point it runs off the fold
    """

    dart: LengthOrExpression
    depth: LengthOrExpression
    edge: Text
    drill: LengthOrExpression | None = None
    tack: Literal["start and end", "start", "end", "none"] = "start"
    tack_stitches: Count = 3

    @property
    def tack_ends(self) -> int:
        """How many of its ends are tacked."""
        return {"start and end": 2, "start": 1, "end": 1, "none": 0}[self.tack]


class Laid(Feature):
    """What zips and elastic share: a line along an edge, or through `points`, and a length on it.

    along     : the edge, at `inset` from it to the middle of what is laid; below 0 it lies beyond the edge
    start_gap : where it begins, from the start of the line; with a length and no gap it lies in the middle
    length    : of the line, of a zip from stop to stop; what is left of it when left out
    ends      : what is added at either end: tape beyond the stops, elastic to be caught or folded
    """

    along: Text | None = None
    inset: SignedLengthOrExpression | None = None
    points: tuple[At, ...] = ()
    start_gap: LengthOrExpression | None = None
    length: LengthOrExpression | None = None
    ends: LengthOrExpression | None = None

    @property
    def material(self) -> str:
        """The material or part that is laid."""
        raise NotImplementedError


class Zip(Laid):
    """A zip: `zip: zip-5-black` names its material or part. Its line is the middle of the chain.

    slider : where it stands
    open   : whether the zip lies open, from the slider on to its end
    """

    zip: Text
    slider: Literal["start", "end", "middle"] = "end"
    open: Flag = False

    @property
    def material(self) -> str:
        """The material or part that is laid."""
        return self.zip


class Elastic(Laid):
    """Elastic: `elastic: elastic-20` names its material or part, stretched to the length of its line.

    relaxed : its length before it is stretched, between its ends
    """

    elastic: Text
    relaxed: LengthOrExpression

    @property
    def material(self) -> str:
        """The material or part that is laid."""
        return self.elastic


def shaping_definitions(feature: str, one: Feature) -> dict[str, Expression]:
    """Lengths that follow from a shaping feature, by their short names: `pleats.take`, all that a row takes."""
    if isinstance(one, Pleat):
        return {"take": parse_expression(f"={one.depths_taken} * {feature}.pleat")}
    if isinstance(one, Dart):
        return {"take": parse_expression(f"={feature}.dart")}
    return {}
