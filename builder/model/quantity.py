"""Quantities: a number with its unit, read exactly from text (`1 1/2 in`, `3.2mm`, `8 st/in`, `tkt 40`).

Not here: tolerances (tolerance.py), arithmetic on names (expression.py), rounding for show (shown.py).
Arithmetic is exact; nothing here makes a float.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache
from typing import NoReturn, Self

from builder.errors import TextFault
from builder.model.near_names import near
from builder.model.plain_text import NUMBER, joined, plain_number, read_number, read_tidy
from builder.model.units import DIMENSIONS, MEANT, UNITS, UNITS_OF, Unit

_SIGNED = re.compile(rf" *([+-]?) *({NUMBER}) *")
_BEFORE = re.compile(rf" *((?:cotton )?[A-Za-z]+) *({NUMBER}) *")
_GROUP = re.compile(r"[0-9]{3}(?![0-9/.])")
_TWO_ENDS = re.compile(rf" *({NUMBER})([^0-9]*?) *(?:-|to|until|and) *({NUMBER} *.*)")
_THOUSANDS = re.compile(r"[0-9]{1,3}(?:,[0-9]{3})+(?![0-9])")


@dataclass(frozen=True, slots=True)
class Quantity:
    """A number with its unit.

    value     : in the base unit of its dimension (see units.py), exact
    dimension : what it measures
    unit      : the unit typed, in its usual spelling; empty for plain numbers
    text      : as typed, runs of blanks joined
    """

    value: Fraction
    dimension: str
    unit: str
    text: str

    @classmethod
    def of(cls, value: Fraction | int, dimension: str, unit: str = "") -> Self:
        """A quantity that nobody typed, `value` in base units; `unit` is the one to show it in."""
        unit = unit or DIMENSIONS[dimension].base
        return cls(Fraction(value), dimension, unit, "")

    @property
    def number(self) -> Fraction:
        """The value in its own unit."""
        return UNITS_OF[self.dimension][self.unit].from_base(self.value)

    def in_unit(self, unit: str) -> Fraction:
        """The value in another unit of the same dimension. Raises KeyError for a unit of another one."""
        return UNITS_OF[self.dimension][unit].from_base(self.value)


@dataclass(frozen=True, slots=True)
class Range:
    """Two quantities and all between them, both ends included. `low` is the lower one in base units."""

    low: Quantity
    high: Quantity
    text: str

    @property
    def dimension(self) -> str:
        """What both ends measure."""
        return self.low.dimension

    def contains(self, value: Fraction | Quantity) -> bool:
        """Whether a value (base units, or a quantity) lies in the range."""
        return self.low.value <= (value.value if isinstance(value, Quantity) else value) <= self.high.value


@dataclass(frozen=True, slots=True)
class Piece:
    """A number and the unit text behind it, not yet checked. Offsets in the tidy text."""

    number: Fraction
    number_at: int
    unit: str
    unit_at: int


@lru_cache(maxsize=16384)
def parse_quantity(text: str, dimension: str, allow_negative: bool = False) -> Quantity:
    """Read one quantity of the dimension asked for.

    Raises TextFault: no number, no unit, unknown unit, unit of another dimension, decimal comma, zero
    denominator, more than one quantity, negative where that makes no sense. Raises KeyError for an unknown
    dimension.
    """
    if dimension == "count":
        parse_count(text)
    return read_tidy(text, lambda plain: _read_quantity(plain, text, dimension, allow_negative))


@lru_cache(maxsize=1024)
def parse_range(text: str, dimension: str, allow_negative: bool = False) -> Range:
    """Read `1.5..5 mm` (or `1.5 mm..5 mm`), ends included. Raises TextFault, also for swapped ends."""
    return read_tidy(text, lambda plain: _read_range(plain, text, dimension, allow_negative))


@lru_cache(maxsize=1024)
def parse_count(text: str) -> int:
    """Read a whole number >= 0, alone or followed by `pieces`. Raises TextFault."""
    return read_tidy(text, _read_count)


def _read_quantity(plain: str, text: str, dimension: str, allow_negative: bool) -> Quantity:
    piece = read_piece(plain, 0, len(plain), dimension)
    unit = find_unit(piece, dimension)
    return make_quantity(piece, unit, dimension, text, allow_negative)


def make_quantity(piece: Piece, unit: Unit, dimension: str, text: str, allow_negative: bool = False) -> Quantity:
    """A quantity from its number and unit. Raises TextFault if the number makes no sense for it."""
    if piece.number < 0 and not (allow_negative or DIMENSIONS[dimension].signed):
        raise TextFault(f"{DIMENSIONS[dimension].words} can't be negative", piece.number_at, "Leave the minus out")
    if unit.reciprocal and piece.number <= 0:
        raise TextFault(f"{unit.name} can't be 0", piece.number_at, "Write a number above 0")
    if dimension == "share" and not unit.name and piece.number > 1:
        shown = plain_number(piece.number)
        raise TextFault(
            f"{shown} without a unit is {plain_number(piece.number * 100)} %",
            piece.number_at,
            f"Write {shown} %",
        )
    return Quantity(unit.to_base(piece.number), dimension, unit.name, joined(text))


def read_piece(plain: str, start: int, end: int, dimension: str) -> Piece:
    """The number and the unit text in plain[start:end]. Raises TextFault if it isn't just that."""
    found = _SIGNED.match(plain, start, end)
    if found is None:
        return _read_unit_before(plain, start, end, dimension)
    number = read_number(found[2], found.start(2))
    rest = plain[found.end() : end].rstrip()
    if rest and rest not in UNITS and (rest[0] in ",./" or any(letter.isdigit() for letter in rest)):
        _refuse_rest(plain, found.end(), rest, dimension)
    at = found.start(1) if found[1] else found.start(2)
    return Piece(-number if found[1] == "-" else number, at, rest, found.end())


def _read_unit_before(plain: str, start: int, end: int, dimension: str) -> Piece:
    found = _BEFORE.fullmatch(plain, start, end)
    unit = UNITS.get(found[1]) if found else None
    if found is None or unit is None or not unit.before or dimension != unit.dimension:
        first = start + len(plain[start:end]) - len(plain[start:end].lstrip())
        raise TextFault(f"this asks for {DIMENSIONS[dimension].words}", min(first, end), such_as(dimension))
    return Piece(read_number(found[2], found.start(2)), found.start(2), unit.name, found.start(1))


def _refuse_rest(plain: str, at: int, rest: str, dimension: str) -> NoReturn:
    number_at = len(plain[:at].rstrip())
    if rest[0] == ",":
        start = at
        while start and plain[start - 1] in "0123456789 ":
            start -= 1
        typed = plain[start : at + len(rest)].strip()
        digits = re.match(r"[0-9]*,[0-9]*", typed)
        number = digits[0] if digits else typed
        if _THOUSANDS.match(typed):
            raise TextFault("a comma inside a number", at, f"Write {typed.replace(',', '')}, or a point for decimals")
        raise TextFault("decimal comma", at, f"Write {number.replace(',', '.')}, not {number}")
    digit = next((i for i, letter in enumerate(rest) if letter.isdigit()), 0)
    if _GROUP.match(rest) and plain[number_at - 1].isdigit():
        raise TextFault("a blank inside a number", number_at, "Write the digits without a blank")
    if rest[0] in "./":
        raise TextFault("the number can't be read", number_at, such_as(dimension))
    word = rest[:digit].rstrip(" -+")
    if "2" in rest and _near_unit(rest, dimension):
        refuse_unit(rest, at, dimension)
    if word and word not in UNITS_OF[dimension] and " " not in rest:
        refuse_unit(rest, at, dimension)
    raise TextFault("more than one quantity", at + digit, f"Write one, such as {DIMENSIONS[dimension].examples[0]}")


def find_unit(piece: Piece, dimension: str) -> Unit:
    """The unit that a piece's text names. Raises TextFault: none, unknown, or of another dimension."""
    unit = UNITS_OF[dimension].get(piece.unit) or UNITS_OF[dimension].get(piece.unit.replace(" / ", "/"))
    if unit is not None:
        return unit
    if piece.unit:
        refuse_unit(piece.unit, piece.unit_at, dimension)
    number = plain_number(piece.number)
    options = [f"{number} {name}" for name in _usual_units(dimension)]
    raise TextFault("which unit?", piece.unit_at, f"Write {' or '.join(options)}")


def refuse_unit(name: str, at: int, dimension: str) -> NoReturn:
    """Raise the TextFault for a unit that doesn't fit the dimension."""
    asked = DIMENSIONS[dimension].words
    other = UNITS.get(name)
    if other is not None:
        remedy = f"Write {other.name}f for a force" if dimension == "force" and other.name == "lb" else ""
        message = f"this asks for {asked}; {name} is {DIMENSIONS[other.dimension].words}"
        raise TextFault(message, at, remedy or such_as(dimension))
    meant = _near_unit(name, dimension)
    raise TextFault(f"unknown unit {name}", at, f"Write {meant}" if meant else such_as(dimension))


def _near_unit(name: str, dimension: str) -> str:
    allowed = UNITS_OF[dimension]
    if MEANT.get(name) in allowed:
        return MEANT[name]
    close = near(name, (unit for unit in allowed if unit and (len(name) > 1 or unit.casefold() == name.casefold())))
    return close[0] if close else ""


def such_as(dimension: str) -> str:
    """A remedy with good examples of the dimension."""
    return "Write it such as {} or {}".format(*DIMENSIONS[dimension].examples)


def _usual_units(dimension: str) -> list[str]:
    return [example.lstrip("0123456789/. ") for example in DIMENSIONS[dimension].examples]


def _read_range(plain: str, text: str, dimension: str, allow_negative: bool) -> Range:
    at = plain.find("..")
    if at < 0:
        ends = _TWO_ENDS.fullmatch(plain)
        remedy = f"Write two ends with two points between, such as 2..{DIMENSIONS[dimension].examples[0]}"
        if ends:
            remedy = f"Write {ends[1]}{ends[2]}..{ends[3].rstrip()}"
        raise TextFault("this asks for a range", len(plain) - len(plain.lstrip()), remedy)
    after = at + len(plain[at:]) - len(plain[at:].lstrip("."))
    for start, end in ((0, at), (after, len(plain))):
        if not plain[start:end].strip():
            raise TextFault("a range has two ends", at, "Write the missing end")
    low, high = read_piece(plain, 0, at, dimension), read_piece(plain, after, len(plain), dimension)
    unit = find_unit(high, dimension)
    low_unit = find_unit(low, dimension) if low.unit else unit
    first = make_quantity(low, low_unit, dimension, _end_text(low, low_unit), allow_negative)
    last = make_quantity(high, unit, dimension, _end_text(high, unit), allow_negative)
    backwards = first.value < last.value if unit.reciprocal and low_unit.reciprocal else first.value > last.value
    if backwards:
        raise TextFault("the range runs backwards", low.number_at, "Write the smaller number first")
    first, last = sorted((first, last), key=lambda end: end.value)
    return Range(first, last, joined(text))


def _end_text(piece: Piece, unit: Unit) -> str:
    return f"{plain_number(piece.number)} {unit.name}".strip()


def _read_count(plain: str) -> int:
    piece = read_piece(plain, 0, len(plain), "count")
    find_unit(piece, "count")
    if piece.number < 0 or piece.number.denominator != 1:
        raise TextFault("this asks for a whole number", piece.number_at, such_as("count"))
    return int(piece.number)
