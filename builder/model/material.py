"""A material: sheet goods, webbing, tape, thread, hardware, foam."""

from __future__ import annotations

import datetime
from fractions import Fraction
from typing import Literal

from builder.model.arrays import HardwareLook
from builder.model.base import Noun, Text
from builder.model.typed import ArealMass, Length, LinearDensity, LinearMass, Mass, NeedleRange


class Evidence(Noun):
    """What the declared composition rests on. A laser or a hot blade may only cut material that has it."""

    kind: Literal["safety data sheet", "supplier declaration", "laboratory test"]
    document: Text
    date: datetime.date


class Material(Noun):
    """A material as bought.

    mass : per area for sheets and foam, per length for webbing, tape and zips, each for hardware
    tex  : linear density of a thread; cone : its length on a cone as bought
    length      : of a roll or a sheet as bought
    structure   : how it is made; needle points and grain follow from it
    direction   : `lengthwise` goods are cut along the roll only (nap, print, stretch)
    ends        : `sealed` webbing frays unless a hot blade cuts it
    lots        : `matched` goods differ in shade between lots; one product is cut from one lot
    needles     : of a thread, the needle sizes it runs in, as its maker says (`Nm 90..110`)
    look        : of hardware, how it is drawn
    die         : of hardware, the die that sets it, as the press's setting names it
    composition : every polymer, fibre and coating; `unknown` is an honest answer, and is refused by heat
    """

    title: Text
    form: Literal["sheet", "foam", "webbing", "tape", "thread", "hardware", "zip"]
    width: Length | None = None
    length: Length | None = None
    thickness: Length | None = None
    structure: Literal["woven", "knit", "mesh", "nonwoven", "film", "foam", "leather"] | None = None
    direction: Literal["lengthwise", "any"] = "any"
    ends: Literal["sealed", "any"] = "any"
    lots: Literal["matched", "mixed"] = "mixed"
    needles: NeedleRange | None = None
    look: HardwareLook | None = None
    die: Text | None = None
    mass: ArealMass | None = None
    mass_per_length: LinearMass | None = None
    mass_each: Mass | None = None
    tex: LinearDensity | None = None
    cone: Length | None = None
    colour: Text | None = None
    composition: tuple[Text, ...] = ()
    evidence: Evidence | None = None
    cautions: tuple[Text, ...] = ()
    note: Text | None = None

    @property
    def soft(self) -> bool:
        """Foam and padded mesh: a foot or a hand presses them flatter."""
        return self.form == "foam" or self.structure in ("foam", "mesh")

    @property
    def under_foot(self) -> Fraction | None:
        """Thickness under a foot, mm: soft goods as pressed. None where nobody typed it."""
        if self.thickness is None:
            return None
        return self.thickness.value * (PRESSED if self.soft else 1)


PRESSED = Fraction(1, 2)
"""What is left of foam or padded mesh under a foot, or when a hand slips it under one. Common practice, no source."""


_CHLORINATED = (
    "pvc",
    "vinyl",
    "polyvinyl chloride",
    "vinylidene chloride",
    "pvdc",
    "cpvc",
    "chloroprene",
    "neoprene",
    "chlor",
)
_NOT_CHLORINATED = (
    "vinyl acetate",
    "vinyl alcohol",
    "vinyl butyral",
    "vinyl ester",
    "chlorine-free",
    "vinyl-free",
    "pvc-free",
)


def chlorinated(words: str) -> str | None:
    """The name of a chlorinated polymer found in `words`, or None.

    Vinyl acetate, alcohol, butyral and ester hold no chlorine and are passed.
    PVC, vinyl and "any chlorinated plastic" are named by university workshop rules for lasers (read); which trade names
    mean one is common practice, no source.
    """
    text = " ".join(words.lower().split())
    for harmless in _NOT_CHLORINATED:
        text = text.replace(harmless, " ")
    return next((name for name in _CHLORINATED if name in text), None)
