"""Features: what work produces on a part. The kind is the one kind-key a feature has.

Every length may be an expression over named dimensions. A feature's own lengths are dimensions too:
`handle-box.width`, `handle-box.left`.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Annotated, Any, Literal

from pydantic import Discriminator, Tag

from builder.model.base import Names, Noun, Text
from builder.model.expression import Expression
from builder.model.quantity import Quantity
from builder.model.seam_words import SeamWord
from builder.model.typed import Angle, Count, Flag, LengthOrExpression, SignedLengthOrExpression, StitchLength

Dimension = Quantity | Expression


class At(Noun):
    """A place by its distance from the edges, or from the centre lines, of what the feature lies on.

    One of left, right, centre; one of bottom, top, middle. Positive is inward, or right and up from a centre line.
    """

    left: SignedLengthOrExpression | None = None
    right: SignedLengthOrExpression | None = None
    centre: SignedLengthOrExpression | None = None
    bottom: SignedLengthOrExpression | None = None
    top: SignedLengthOrExpression | None = None
    middle: SignedLengthOrExpression | None = None


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
                if value is not None:
                    yield f"point-{number}.{name}", value


def _not_a_length(value: Dimension) -> bool:
    return isinstance(value, Quantity) and value.dimension != "length"


class Notch(Feature):
    """A V cut in an edge: `notch: top`, `at: {left: 4 in}`.

    meets : the part whose notch it is laid on when both are joined
    """

    notch: Text
    depth: LengthOrExpression | None = None
    meets: Text | None = None


class Hole(Feature):
    """A round hole, or a drill hole as a mark: `hole: 3 mm` is its diameter. A row or grid by count and pitch."""

    hole: LengthOrExpression
    count: Count = 1
    pitch: LengthOrExpression | None = None
    direction: Literal["across", "up"] = "across"


class Strip(Feature):
    """A strip, a patch or a smaller part laid on: `strip: handle-webbing` names its part.

    `at` is its lower left corner before it is turned. Its outline is that of the part it names.
    free_end : it is meant to hang over the part's edge, as a tie or a pull does
    """

    strip: Text
    turn: Angle | None = None
    folded_under: LengthOrExpression | None = None
    free_end: Flag = False


class Seam(Feature):
    """A seam along edges (`seam: [bottom, right]`, `seam: all`) at `inset`, or along `points` (`seam: line`).

    start : for a seam all round, the edge in whose middle it starts, the first edge when left out
    tack : where the seam is secured by sewing back; `binding` a tape that covers the edge
    held : how it is kept on its line
    joins, ease : the two seam lines it closes, as `part/feature`, and how much longer one may be
    class : what kind of seam it is meant to be, by ISO 4916: superimposed, lapped, bound …
    """

    seam: Names
    inset: LengthOrExpression | None = None
    start_gap: LengthOrExpression | None = None
    end_gap: LengthOrExpression | None = None
    points: tuple[At, ...] = ()
    start: Text | None = None
    tack: Literal["start and end", "start", "end", "none"] = "start and end"
    tack_stitches: Count = 3
    binding: Text | None = None
    held: Literal["edge stop", "folder", "drawn line", "free hand"] | None = None
    joins: Names = ()
    ease: LengthOrExpression | None = None
    class_: SeamWord | None = None

    @property
    def tack_ends(self) -> int:
        """How many of its ends are tacked."""
        return {"start and end": 2, "start": 1, "end": 1, "none": 0}[self.tack]


class Box(Feature):
    """A box of stitching, with or without a cross: `box: cross`. `at` is its lower left corner."""

    box: Literal["cross", "plain"]
    width: LengthOrExpression
    height: LengthOrExpression


class Bartack(Feature):
    """A bartack, or a row of them: `bartack: 28` is its count of stitches. `at` is the centre of the first."""

    bartack: Count
    length: LengthOrExpression
    width: LengthOrExpression
    count: Count = 1
    pitch: LengthOrExpression | None = None
    direction: Literal["across", "up"] = "across"
    stands: Literal["across", "up"] = "up"


class Fold(Feature):
    """A fold line along an edge (`fold: top`) at `inset`, or between two `points` (`fold: line`)."""

    fold: Text
    inset: LengthOrExpression | None = None
    points: tuple[At, ...] = ()


class Hardware(Feature):
    """Snaps, eyelets, buckles: `hardware: snap-15` names the material. A row by count and pitch."""

    hardware: Text
    diameter: LengthOrExpression
    count: Count = 1
    pitch: LengthOrExpression | None = None
    direction: Literal["across", "up"] = "across"


KIND_KEYS: tuple[str, ...] = ("notch", "hole", "strip", "seam", "box", "bartack", "fold", "hardware")


def kinds_in(value: Any) -> list[str]:
    """The kind-keys a plain feature has; there should be exactly one."""
    if isinstance(value, Feature):
        return [type(value).__name__.lower()]
    return [key for key in KIND_KEYS if key in value] if isinstance(value, dict) else []


def _tag(value: Any) -> str | None:
    kinds = kinds_in(value)
    return f"«{kinds[0]}»" if len(kinds) == 1 else None


# Tags stand in pydantic's path to a fault; the marks keep them apart from any key an engineer can type.
AnyFeature = Annotated[
    Annotated[Notch, Tag("«notch»")]
    | Annotated[Hole, Tag("«hole»")]
    | Annotated[Strip, Tag("«strip»")]
    | Annotated[Seam, Tag("«seam»")]
    | Annotated[Box, Tag("«box»")]
    | Annotated[Bartack, Tag("«bartack»")]
    | Annotated[Fold, Tag("«fold»")]
    | Annotated[Hardware, Tag("«hardware»")],
    Discriminator(_tag),
]

__all__ = [
    "KIND_KEYS",
    "AnyFeature",
    "At",
    "Bartack",
    "Box",
    "Dimension",
    "Feature",
    "Flag",
    "Fold",
    "Hardware",
    "Hole",
    "Notch",
    "Seam",
    "StitchLength",
    "Strip",
    "kinds_in",
]
