"""Features: what work produces on a part. The kind is the one kind-key a feature has.

Every length may be an expression over named dimensions. A feature's own lengths are dimensions too:
`handle-box.width`, `handle-box.left`.
"""

from __future__ import annotations

from typing import Annotated, Any, Literal

from pydantic import Discriminator, Tag

from builder.model.arrays import Bartack, DrillHole, Hardware, Hole, Slot
from builder.model.base import Names, Text
from builder.model.feature_base import At, Dimension, Feature
from builder.model.seam_words import SeamWord
from builder.model.sewn_tag import SewnTag
from builder.model.shaping import Dart, Elastic, Pleat, Zip
from builder.model.typed import Angle, Count, Flag, LengthOrExpression, SignedLengthOrExpression, StitchLength


class Notch(Feature):
    """A mark cut in an edge: `notch: top`, `at: {left: 4 in}`.

    meets : the part whose notch it is laid on when both are joined
    cut   : a V, a slit, or a castle: square, as wide as it is deep
    """

    notch: Text
    cut: Literal["v", "slit", "castle"] = "v"
    depth: LengthOrExpression | None = None
    meets: Text | None = None


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
    of, off, sides : `seam: along` follows the feature `of` at `off`, inside it or, below 0, outside; along `sides` of
                     its area in that order, all round when left out. Of a line, inside is to the left of its direction
    """

    seam: Names
    of: Text | None = None
    off: SignedLengthOrExpression | None = None
    sides: Names = ()
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


class Fold(Feature):
    """A fold line along an edge (`fold: top`) at `inset`, or between two `points` (`fold: line`).

    `side` is the side it is folded to.
    moves : of a line across the part, an edge of what moves over; once made, the part is drawn folded. Without it the
            line is a crease, and the part stays flat
    """

    fold: Text
    inset: LengthOrExpression | None = None
    moves: Text | None = None
    points: tuple[At, ...] = ()


KIND_KEYS: tuple[str, ...] = (
    "notch",
    "hole",
    "strip",
    "seam",
    "box",
    "bartack",
    "fold",
    "hardware",
    "drill hole",
    "slot",
    "tag",
    "pleat",
    "dart",
    "zip",
    "elastic",
)


_KEY_OF_CLASS = {"drillhole": "drill hole", "sewntag": "tag"}


def kinds_in(value: Any) -> list[str]:
    """The kind-keys a plain feature has; there should be exactly one."""
    if isinstance(value, Feature):
        name = type(value).__name__.lower()
        return [_KEY_OF_CLASS.get(name, name)]
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
    | Annotated[Hardware, Tag("«hardware»")]
    | Annotated[DrillHole, Tag("«drill hole»")]
    | Annotated[Slot, Tag("«slot»")]
    | Annotated[SewnTag, Tag("«tag»")]
    | Annotated[Pleat, Tag("«pleat»")]
    | Annotated[Dart, Tag("«dart»")]
    | Annotated[Zip, Tag("«zip»")]
    | Annotated[Elastic, Tag("«elastic»")],
    Discriminator(_tag),
]

__all__ = [
    "KIND_KEYS",
    "AnyFeature",
    "At",
    "Bartack",
    "Box",
    "Dart",
    "Dimension",
    "DrillHole",
    "Elastic",
    "Feature",
    "Flag",
    "Fold",
    "Hardware",
    "Hole",
    "Notch",
    "Pleat",
    "Seam",
    "SewnTag",
    "Slot",
    "StitchLength",
    "Strip",
    "Zip",
    "kinds_in",
]
