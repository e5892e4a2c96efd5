"""View objects of a station's cards: what hangs at the machine beside the sheets, each derived from the same facts.

A card is read alone, so each carries its own head; a fact nobody typed leaves no line.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from builder.view.marking import controlled, shown
from builder.view.sheet import Caution, Protection, Setting


@dataclass(frozen=True, slots=True)
class CardSource:
    """A sheet a card is made from: its code and title, and which issue of it."""

    code: str = controlled()
    title: str = controlled()
    revision: str = shown(default="")
    date: str = shown(default="")
    tag: str = shown(default="")


@dataclass(frozen=True, slots=True)
class CardHead:
    """What every card says at its head and foot.

    kind    : settings | start | close-down | needle | hazards | faults: part of its address in the file
    title   : as printed; `lead` : one sentence under it, '' for none
    sources : the sheets it is made from, () where it is made from the station alone
    tag     : code of what the card itself says; date : the latest of its sheets
    """

    kind: str = controlled()
    title: str = controlled()
    station: str = controlled()
    station_title: str = controlled()
    lead: str = shown(default="")
    sources: tuple[CardSource, ...] = shown(default=())
    tag: str = shown(default="")
    date: str = shown(default="")


@dataclass(frozen=True, slots=True)
class SettingsGroup:
    """Operations that set the machine alike."""

    operations: tuple[CardSource, ...] = controlled()
    settings: tuple[Setting, ...] = controlled()


@dataclass(frozen=True, slots=True)
class LimitLine:
    """What a setting may be at this station, a line each, where it is set and how it is proved."""

    name: str = controlled()
    limits: tuple[str, ...] = controlled()
    set_at: str = controlled()
    proof: str = controlled()


@dataclass(frozen=True, slots=True)
class SettingsCard:
    """How the machine is set for each operation, and what it can be set to.

    programs : stored patterns by name, with what each sews; facts : what else limits the machine, name and value
    """

    head: CardHead = controlled()
    groups: tuple[SettingsGroup, ...] = controlled()
    limits: tuple[LimitLine, ...] = controlled()
    programs: tuple[tuple[str, str], ...] = controlled(default=())
    facts: tuple[tuple[str, str], ...] = controlled(default=())


@dataclass(frozen=True, slots=True)
class ShiftCard:
    """The checks at one end of a shift, what is checked and how; `refused`: what happens when one fails."""

    head: CardHead = controlled()
    checks: tuple[tuple[str, str], ...] = controlled()
    refused: str = controlled(default="")
    days: int = shown(default=6)


@dataclass(frozen=True, slots=True)
class NeedleUse:
    """A needle used at the station.

    text : as the trade writes it; size : in Nm, a hundredth of a mm of the blade
    length, shank : of the whole needle and of its shank's diameter [mm], None where nobody typed them
    codes : operations it is used for;   measures : its size in words
    """

    text: str = controlled()
    size: int = controlled()
    length: Fraction | None = controlled(default=None)
    shank: Fraction | None = controlled(default=None)
    codes: tuple[str, ...] = shown(default=())
    measures: str = shown(default="")

    @property
    def true_size(self) -> bool:
        """Whether enough is known to draw it as large as it is."""
        return self.length is not None and self.shank is not None


@dataclass(frozen=True, slots=True)
class CardStep:
    """One thing to do, with a sign where there is a registered one; `more` in smaller type."""

    do: str = controlled()
    more: str = controlled(default="")
    sign: str = controlled(default="")
    sign_name: str = controlled(default="")


@dataclass(frozen=True, slots=True)
class NeedleCard:
    """What is done when a needle breaks, the outline its pieces are laid on, and the record of it."""

    head: CardHead = controlled()
    steps: tuple[CardStep, ...] = controlled()
    needles: tuple[NeedleUse, ...] = controlled()
    parts: tuple[str, ...] = controlled()
    """words of shank, blade, groove, eye and point, in this order"""
    record: tuple[str, ...] = controlled()


@dataclass(frozen=True, slots=True)
class OwnCaution:
    """A caution of operations, with their codes; () where it is one of all the station's."""

    caution: Caution = controlled()
    codes: tuple[str, ...] = controlled()


@dataclass(frozen=True, slots=True)
class HazardCard:
    """All that can hurt at the station, what answers it, and how the power is locked off."""

    head: CardHead = controlled()
    cautions: tuple[Caution, ...] = controlled()
    protection: tuple[Protection, ...] = controlled()
    lock_out: Caution | None = controlled()
    own: tuple[OwnCaution, ...] = controlled()
    notices: tuple[str, ...] = controlled()


@dataclass(frozen=True, slots=True)
class FaultCause:
    """A cause, with the operations whose sheets name it; `codes` () where all of the station's do."""

    cause: str = controlled()
    codes: tuple[str, ...] = controlled(default=())


@dataclass(frozen=True, slots=True)
class FaultCase:
    """What is done and when to stop and call, with the causes it answers; `grade` where it is not the row's."""

    causes: tuple[FaultCause, ...] = controlled()
    remedy: str = controlled()
    stop: str = controlled(default="")
    power: str = controlled(default="")
    grade: str = controlled(default="")


@dataclass(frozen=True, slots=True)
class FaultRow:
    """A sign somebody sees, its worst class, and all that may cause it here."""

    sign: str = controlled()
    grade: str = controlled()
    cases: tuple[FaultCase, ...] = controlled()


@dataclass(frozen=True, slots=True)
class FaultCard:
    """The fault finder of a station: all faults of its operations by their sign."""

    head: CardHead = controlled()
    rows: tuple[FaultRow, ...] = controlled()
    notices: tuple[str, ...] = controlled(default=())


AnyCard = SettingsCard | ShiftCard | NeedleCard | HazardCard | FaultCard


@dataclass(frozen=True, slots=True)
class StationCards:
    """All cards of a station, in the order of the file; never empty."""

    station: str = shown()
    title: str = shown()
    cards: tuple[AnyCard, ...] = shown()
    plant: str = shown()
    paper: str = shown()
    language: str = shown()
    capital_mm: float = shown()
