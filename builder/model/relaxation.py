"""What makes work at a station tiring: the words an engineer may type, and the published percent of each.

One figure of the published table has one name, such as `noise, intermittent loud`; a plant may put its own percent in
its place by that name. Not here: adding the figures up (computing), personal needs and basic fatigue (plant.yaml).
No figure depends on who does the work.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction
from types import MappingProxyType
from typing import Annotated, Literal

from builder.errors import TextFault
from builder.model.base import Noun
from builder.model.near_names import near
from builder.model.quantity import Quantity, parse_quantity
from builder.model.typed import Flag, TextType
from builder.model.units import POUND, POUND_FORCE, UNITS_OF

PUBLISHED_SOURCE = (
    "variable-allowance table after the ILO, as printed in W. J. Stevenson, Operations Management, 14th ed. (2021),"
    " table 7.4"
)
"""Where the percents come from; read. Its source there: B. Niebel, Motion and Time Study, 8th ed. (1988)."""

FORCE_ROWS_LB: Mapping[int, int] = MappingProxyType(
    {5: 0, 10: 1, 15: 2, 20: 3, 25: 4, 30: 5, 35: 7, 40: 9, 45: 11, 50: 13, 60: 17, 70: 22}
)
"""Use of force: percent by the weight lifted, pulled or pushed [lb]."""

PUBLISHED_PERCENT: Mapping[str, int] = MappingProxyType(
    {
        "standing": 2,
        "position, slightly awkward": 0,
        "position, awkward bending": 2,
        "position, very awkward": 7,
        **{f"force, {pounds} lb": percent for pounds, percent in FORCE_ROWS_LB.items()},
        "light, slightly below": 0,
        "light, well below": 2,
        "light, very inadequate": 5,
        "attention, fairly fine": 0,
        "attention, fine": 2,
        "attention, very fine": 5,
        "noise, continuous": 0,
        "noise, intermittent loud": 2,
        "noise, intermittent very loud": 5,
        "noise, high-pitched loud": 5,
        "mental, fairly complex": 1,
        "mental, complex": 4,
        "mental, very complex": 8,
        "monotony, low": 0,
        "monotony, medium": 1,
        "monotony, high": 4,
        "tedium, rather tedious": 0,
        "tedium, tedious": 2,
        "tedium, very tedious": 5,
    }
)
"""Percent of basic time by the name of the figure, in the order of the published table."""

WORST_AIR = Fraction(10, 100)
"""The table gives air (heat, damp) no rows, only a range from 0 to this."""


def force_row_lb(weight: Quantity) -> int | None:
    """The row of the force table that holds a weight or a force, in lb; None above the last one.

    The next higher row counts, nothing is interpolated: the table is coarse, and the operator gets the doubt. A force
    is read as the weight it would lift: 1 lb is 4.448 N.
    """
    pounds = weight.value / (POUND if weight.dimension == "mass" else POUND_FORCE)
    return next((row for row in FORCE_ROWS_LB if pounds <= row), None)


def force_of_row(row_lb: int) -> Quantity:
    """The force that a row of the force table goes up to."""
    return Quantity.of(row_lb * POUND_FORCE, "force", "lbf")


def _read_weight(text: str) -> Quantity:
    unit = text.strip().lstrip("0123456789./½¼¾⅛⅜⅝⅞⅓⅔ ")
    if text.strip() and not unit:
        number = text.strip()
        raise TextFault("which unit?", len(text.rstrip()), f"Write {number} kg, {number} lb or {number} N")
    weight = parse_quantity(text, "force" if unit in UNITS_OF["force"] else "mass")
    if force_row_lb(weight) is None:
        raise TextFault(
            "the table of relaxation ends at 70 lb, which is 31.8 kg or 311 N",
            0,
            "Let a hoist, a trolley or a second person take the load",
        )
    return weight


def _read_air(text: str) -> Fraction:
    share = parse_quantity(text, "share").value
    if share > WORST_AIR:
        raise TextFault("the table of relaxation gives air 10 % at most", 0, "Write 0 % to 10 %, or better the air")
    return share


def _read_figure(text: str) -> str:
    if text in PUBLISHED_PERCENT:
        return text
    if text == "air":
        raise TextFault(
            "air has no figure to replace: each station types its own", 0, "Write `air: 3 %` at the station"
        )
    factor = text.partition(",")[0]
    close = near(text, PUBLISHED_PERCENT)
    rows = [one for one in PUBLISHED_PERCENT if one.partition(",")[0] == factor]
    if not close and not rows:
        rows = list(dict.fromkeys(one.partition(",")[0] for one in PUBLISHED_PERCENT))
    remedy = f"Did you mean `{close[0]}`?" if close else f"Write one of: {'; '.join(rows)}"
    raise TextFault(f"`{text}` is no figure of the relaxation table", 0, remedy)


Weight = Annotated[
    Quantity,
    TextType(_read_weight, (Quantity,), "a weight or a force", examples=("10 lb", "4.5 kg", "40 N")),
]
"""What hands lift, or press and pull with."""

Air = Annotated[Fraction, TextType(_read_air, (Fraction,), "a share", ("string", "number"), examples=("3 %", 0.03))]

FigureName = Annotated[
    str,
    TextType(_read_figure, (), "a figure of the relaxation table", examples=("standing", "noise, intermittent loud")),
]
"""Name of one figure of the published table."""


class Relaxation(Noun):
    """What makes work at a station tiring, beyond basic fatigue. A fact left out is none.

    standing  : the work is done standing
    position  : how the body is held
    force     : heaviest weight lifted, or force pressed or pulled with, in every cycle
    light     : against what is recommended for the work
    air       : heat, damp and draught, from 0 to 10 % as the plant judges
    attention : how closely the eyes must follow
    """

    standing: Flag = False
    position: Literal["slightly awkward", "awkward bending", "very awkward"] | None = None
    force: Weight | None = None
    light: Literal["slightly below", "well below", "very inadequate"] | None = None
    air: Air | None = None
    attention: Literal["fairly fine", "fine", "very fine"] | None = None
    noise: Literal["continuous", "intermittent loud", "intermittent very loud", "high-pitched loud"] | None = None
    mental: Literal["fairly complex", "complex", "very complex"] | None = None
    monotony: Literal["low", "medium", "high"] | None = None
    tedium: Literal["rather tedious", "tedious", "very tedious"] | None = None

    def figures(self) -> Iterator[str]:
        """Names of the table's figures that hold here, in the table's order. Air is not among them: it has none."""
        if self.standing:
            yield "standing"
        if self.position is not None:
            yield f"position, {self.position}"
        if self.force is not None:
            yield f"force, {force_row_lb(self.force)} lb"
        for factor in ("light", "attention", "noise", "mental", "monotony", "tedium"):
            word = getattr(self, factor)
            if word is not None:
                yield f"{factor}, {word}"
