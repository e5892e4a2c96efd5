"""View objects of a step's pictures: what is shown of each, what is pointed out, and how large it is printed.

Places are shares of what is shown, so a crop is worked out here and nowhere after.
"""

from __future__ import annotations

import hashlib
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from builder.model import (
    Area,
    Arrow,
    Blur,
    Frame,
    Number,
    PlantModel,
    Ring,
    Shot,
    Step,
    Words,
    photo_sizes_mm,
    say,
)
from builder.view.marking import controlled, shown

Spot = tuple[Fraction, Fraction]


@dataclass(frozen=True, slots=True)
class PhotoMark:
    """A callout.

    kind   : ring (middle) | arrow (tail, head) | box (two corners) | number, text (where they stand, and where
             their leader ends)
    points : its places, as shares of what is shown, from the left and from the top
    size   : width of a ring, as a share of the width shown
    number : of a numbered disc, explained in the legend by `says`; else `says` stands in the picture
    """

    kind: str = controlled()
    points: tuple[Spot, ...] = controlled()
    size: Fraction | None = controlled(default=None)
    number: int = controlled(default=0)
    says: str = controlled(default="")


@dataclass(frozen=True, slots=True)
class Photo:
    """A photo or a drawing from elsewhere. `digest` is that of its file; `path` is relative to the plant folder.

    verdict : right or wrong work, '' for neither
    hidden  : areas of the whole picture made unreadable; crop : what is shown of it, None for all
    width_mm, height_mm, text_mm : as printed, with the capitals of the words in it
    """

    digest: str = controlled()
    alt: str = controlled()
    path: str = shown()
    caption: str = shown(default="")
    verdict: str = controlled(default="")
    marks: tuple[PhotoMark, ...] = controlled(default=())
    hidden: tuple[Area, ...] = controlled(default=())
    crop: Area | None = controlled(default=None)
    width_mm: float = shown(default=58.0)
    height_mm: float = shown(default=44.0)
    text_mm: float = shown(default=2.8)

    @property
    def drawn(self) -> bool:
        """Is it a drawing, not a photo?"""
        return self.path.lower().endswith(".svg")

    @property
    def name(self) -> str:
        """What its file is called in the output: another one for other pixels."""
        if not self.hidden and self.crop is None:
            return self.digest
        return hashlib.sha256(f"{self.digest} {self.hidden} {self.crop}".encode()).hexdigest()

    @property
    def legend(self) -> tuple[tuple[int, str], ...]:
        """What the numbers stand for, in their order."""
        return tuple(sorted((mark.number, mark.says) for mark in self.marks if mark.number))

    @property
    def described(self) -> str:
        """Its text alternative with the words written into the picture."""
        said = "; ".join(mark.says for mark in self.marks if mark.says and not mark.number)
        alt = self.alt or self.caption
        return say("{picture}. Marked: {words}.", picture=alt.rstrip("."), words=said) if said else alt

    @property
    def taught(self) -> bool:
        """Does it point out or judge something, so that it needs more room than a mere look?"""
        return bool(self.marks or self.verdict)


def photos_of(
    step: Step,
    model: PlantModel,
    sizes: Mapping[str, tuple[int, int]],
    beside_figure: bool,
    text_mm: float,
    column: float,
) -> tuple[Photo, ...]:
    """The pictures of a step whose files are there.

    sizes         : width and height of each file as it is seen [px]; only their ratio counts
    beside_figure : a figure stands above them
    text_mm       : capital height of the words in them
    column        : width of the column of steps [mm]
    """
    shots = [shot for shot in step.shots if shot.picture.file in model.photos]
    aspects = [_aspect(shot, sizes.get(shot.picture.file, (4, 3))) for shot in shots]
    printed = photo_sizes_mm(aspects, beside_figure, column)
    return tuple(
        replace(_photo(shot, model), width_mm=width, height_mm=height, text_mm=text_mm)
        for shot, (width, height) in zip(shots, printed, strict=True)
    )


def _aspect(shot: Shot, size: tuple[int, int]) -> float:
    left, top, right, bottom = shot.area
    return float((right - left) * size[0] / ((bottom - top) * size[1]))


def _photo(shot: Shot, model: PlantModel) -> Photo:
    picture = shot.picture
    return Photo(
        digest=model.photos[picture.file].digest,
        alt=picture.alt or "",
        path=picture.file,
        caption=picture.caption or "",
        verdict=shot.verdict,
        marks=tuple(_marks(shot)),
        hidden=shot.blurred,
        crop=shot.area if picture.crop is not None else None,
    )


def _marks(shot: Shot) -> Iterator[PhotoMark]:
    """The callouts moved into what is shown."""
    left, top, right, bottom = shot.area
    wide, high = right - left, bottom - top
    numbers = dict(shot.numbered())
    for place, one in enumerate(shot.picture.callouts):
        spots = tuple(((x - left) / wide, (y - top) / high) for _, (x, y) in one.points())
        match one:
            case Blur():
                continue
            case Number():
                yield PhotoMark("number", spots, None, numbers[place], one.says)
            case Ring():
                yield PhotoMark("ring", spots, one.size / wide, 0, one.says or "")
            case Arrow() | Frame() | Words():
                yield PhotoMark(one.kind, spots, None, 0, one.says or "")


def sized(photos: Sequence[Photo], sizes: Sequence[tuple[float, float]], text_mm: float) -> tuple[Photo, ...]:
    """The pictures at other sizes [mm], for a screen."""
    return tuple(
        replace(photo, width_mm=width, height_mm=height, text_mm=text_mm)
        for photo, (width, height) in zip(photos, sizes, strict=True)
    )
