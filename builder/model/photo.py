"""Pictures of a step as typed: one, a good and a bad one, or a list; with callouts, cropped, with blurred areas.

All places are shares of the whole picture as it is seen upright, from its left and from its top: `[42 %, 30 %]`.
A crop moves no callout. What is drawn of it is decided in view; which pixels change, in reading.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from typing import Annotated, Any, Literal

from pydantic import BeforeValidator, Discriminator, Tag
from pydantic_core import PydanticCustomError

from builder.model.base import Noun, Text
from builder.model.quantity import parse_quantity
from builder.model.typed import Count, TextType

MarkKind = Literal["ring", "arrow", "box", "number", "text", "blur"]
Verdict = Literal["", "right", "wrong"]
Spot = tuple[Fraction, Fraction]
Area = tuple[Fraction, Fraction, Fraction, Fraction]
"""Left, top, right, bottom."""

WHOLE: Area = (Fraction(0), Fraction(0), Fraction(1), Fraction(1))
RING_SIZE = Fraction(12, 100)
"""Width of a ring whose size nobody typed, as a share of the picture's width."""

PathTo = tuple[str | int, ...]


def _share(text: str) -> Fraction:
    return parse_quantity(text, "share", True).value


_SHARE = r"^\s*[-+−]?[0-9./ ]+ ?%?\s*$"
Coordinate = Annotated[
    Fraction, TextType(_share, (Fraction,), "a share of the picture", ("string", "number"), _SHARE, ("42 %", 0.42))
]
"""How far from the left or from the top, as a share of the picture."""


def _two(message: str, remedy: str) -> BeforeValidator:
    """Refuses all but a list of two, with words that say which two."""

    def check(value: Any) -> Any:
        if isinstance(value, list | tuple) and len(value) == 2:
            return value
        raise PydanticCustomError("text_fault", "{message}", {"message": message, "offset": 0, "remedy": remedy})

    return BeforeValidator(check)


Point = Annotated[
    tuple[Coordinate, Coordinate],
    _two("a place has two shares, from the left and from the top", "Write it as [42 %, 30 %]"),
]
Corners = Annotated[tuple[Point, Point], _two("this asks for two places", "Write them as [[10 %, 20 %], [40 %, 35 %]]")]


class Mark(Noun):
    """What all marks share: a kind, which is the one kind-key it has, and places."""

    @property
    def kind(self) -> MarkKind:
        """Its kind-key."""
        return next(key for key in CALLOUT_KEYS if key in type(self).model_fields)

    def points(self) -> Iterator[tuple[PathTo, Spot]]:
        """Its places, each with the path to it."""
        typed = getattr(self, self.kind)
        if isinstance(typed[0], Fraction):
            yield (self.kind,), typed
            return
        yield from (((self.kind, number), one) for number, one in enumerate(typed))


class Callout(Mark):
    """A mark with words, beside it or, for a number, in the legend below the picture."""

    says: Text | None = None


class Ring(Callout):
    """A ring about a place. `size` is its width as a share of the picture's."""

    ring: Point
    size: Coordinate = RING_SIZE


class Arrow(Callout):
    """An arrow from a place to another, where its head is."""

    arrow: Corners


class Frame(Callout):
    """A box from a corner to the opposite one."""

    box: Corners


class Number(Callout):
    """A numbered disc, with a leader `to:` what it is about. Numbers count up as typed, or are typed `as: 3`."""

    number: Point
    as_: Count | None = None
    says: Text
    to: Point | None = None

    def points(self) -> Iterator[tuple[PathTo, Spot]]:
        """Where the disc stands, and where the leader ends."""
        yield ("number",), self.number
        if self.to is not None:
            yield ("to",), self.to


class Words(Callout):
    """Words in the picture, with a leader `to:` what they are about."""

    text: Point
    says: Text
    to: Point | None = None

    def points(self) -> Iterator[tuple[PathTo, Spot]]:
        """Where the words stand, and where the leader ends."""
        yield ("text",), self.text
        if self.to is not None:
            yield ("to",), self.to


class Blur(Mark):
    """An area made unreadable in the pixels before anything is written."""

    blur: Corners


CALLOUT_KEYS: tuple[MarkKind, ...] = ("ring", "arrow", "box", "number", "text", "blur")


def _callout_tag(value: Any) -> str | None:
    if isinstance(value, Mark):
        return f"«{value.kind}»"
    kinds = callout_kinds(value)
    return f"«{kinds[0]}»" if len(kinds) == 1 else None


def callout_kinds(value: Any) -> list[str]:
    """The kind-keys a plain callout has; there should be exactly one."""
    return [key for key in CALLOUT_KEYS if key in value] if isinstance(value, dict) else []


AnyCallout = Annotated[
    Annotated[Ring, Tag("«ring»")]
    | Annotated[Arrow, Tag("«arrow»")]
    | Annotated[Frame, Tag("«box»")]
    | Annotated[Number, Tag("«number»")]
    | Annotated[Words, Tag("«text»")]
    | Annotated[Blur, Tag("«blur»")],
    Discriminator(_callout_tag),
]


class Picture(Noun):
    """One picture.

    file  : a photo or an SVG drawing of the folder photos
    alt   : what it shows, in words, for who can't see it
    crop  : the part of it that is shown, by two corners
    shows : `right` or `wrong` work, marked with a tick or a cross
    """

    file: Text
    alt: Text | None = None
    caption: Text | None = None
    crop: Corners | None = None
    callouts: tuple[AnyCallout, ...] = ()
    shows: Literal["right", "wrong"] | None = None


def _picture_tag(value: Any) -> str:
    return "«text»" if isinstance(value, str) else "«picture»"


TextOrPicture = Annotated[
    Annotated[Text, Tag("«text»")] | Annotated[Picture, Tag("«picture»")], Discriminator(_picture_tag)
]


class Pair(Noun):
    """Good and bad work side by side."""

    good: TextOrPicture | None = None
    bad: TextOrPicture | None = None


def _photo_tag(value: Any) -> str:
    if isinstance(value, str):
        return "«text»"
    if isinstance(value, list | tuple):
        return "«list»"
    if isinstance(value, Pair) or (isinstance(value, dict) and ("good" in value or "bad" in value)):
        return "«pair»"
    return "«picture»"


Pictures = Annotated[
    Annotated[Text, Tag("«text»")]
    | Annotated[Picture, Tag("«picture»")]
    | Annotated[Pair, Tag("«pair»")]
    | Annotated[tuple[TextOrPicture, ...], Tag("«list»")],
    Discriminator(_photo_tag),
]
"""What `photo:` may be."""


@dataclass(frozen=True, slots=True)
class Shot:
    """A picture of a step, in whatever form it was typed.

    path   : from the step to it; `file_path` to the name of its file
    picture: with the step's own alt and caption where it has none
    verdict: right or wrong, '' for a picture that judges nothing
    """

    path: PathTo
    file_path: PathTo
    picture: Picture
    verdict: Verdict

    @property
    def area(self) -> Area:
        """What is shown of the picture."""
        return area_of(self.picture.crop) if self.picture.crop is not None else WHOLE

    @property
    def blurred(self) -> tuple[Area, ...]:
        """The areas made unreadable."""
        return tuple(area_of(one.blur) for one in self.picture.callouts if isinstance(one, Blur))

    def numbered(self) -> Iterator[tuple[int, int]]:
        """(place among the callouts, number) of each numbered disc; typed numbers are passed over in counting."""
        discs = [(place, one) for place, one in enumerate(self.picture.callouts) if isinstance(one, Number)]
        taken = {one.as_ for _, one in discs if one.as_ is not None}
        free = (number for number in range(1, len(discs) + len(taken) + 1) if number not in taken)
        for place, one in discs:
            yield place, one.as_ if one.as_ is not None else next(free)


def area_of(corners: Corners) -> Area:
    """The area between two corners, whichever is typed first."""
    (ax, ay), (bx, by) = corners
    return min(ax, bx), min(ay, by), max(ax, bx), max(ay, by)


def shots_of(photo: Any, alt: str | None, caption: str | None) -> tuple[Shot, ...]:
    """The pictures of a step. `alt` and `caption` are the step's own, for a picture alone without them."""
    if photo is None:
        return ()
    if isinstance(photo, Pair):
        sides = (("good", photo.good, "right"), ("bad", photo.bad, "wrong"))
        return tuple(_shot(("photo", key), one, verdict) for key, one, verdict in sides if one is not None)
    if isinstance(photo, tuple):
        return tuple(_shot(("photo", number), one) for number, one in enumerate(photo))
    one = _shot(("photo",), photo)
    words = {"alt": one.picture.alt or alt, "caption": one.picture.caption or caption}
    return (Shot(one.path, one.file_path, one.picture.model_copy(update=words), one.verdict),)


def _shot(path: PathTo, typed: str | Picture, verdict: str = "") -> Shot:
    picture = Picture(file=typed) if isinstance(typed, str) else typed
    file_path = path if isinstance(typed, str) else (*path, "file")
    return Shot(path, file_path, picture, verdict or picture.shows or "")  # type: ignore[arg-type]
