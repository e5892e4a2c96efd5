"""Tolerances: a nominal with what it may deviate by, two limits, a band alone, or one limit, in one text.

| text | means |
|---|---|
| `2 in ± 1/16` (also `+-`, `+/-`) | both sides; the second unit may be left out |
| `1/8 in +1/16 -0` | each side, in either order |
| `25..27 mm` | two limits, no nominal |
| `max 3 mm`, `min 2 mm` | one limit |
| `+1/16 -0 in`, `± 1 mm` | a band, for a nominal that stands elsewhere |

Refused: no tolerance at all, a band of nothing, only one side of two, two pluses or two minuses, a limit
below zero (unless the nominal is 0), a band alone in a reciprocal unit (`± 1 st/in` of what?), and all that
quantity.py refuses.

For a reciprocal unit the limits are taken in the unit typed, then converted: `8 st/in ± 1` is 7 to 9 st/in.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from fractions import Fraction
from functools import lru_cache
from typing import Literal

from builder.errors import TextFault
from builder.model.plain_text import NUMBER, joined, read_tidy
from builder.model.quantity import (
    Piece,
    Quantity,
    Range,
    find_unit,
    make_quantity,
    parse_quantity,
    parse_range,
    read_piece,
)
from builder.model.units import ALIASES, DIMENSIONS, UNITS, UNITS_OF, ZERO, Unit

Form = Literal["around", "limits", "band", "maximum", "minimum"]

_BOTH = re.compile(r"(?P<nominal>.*?) *(?P<sign>±|\+/-|\+-|-/\+) *")
_SIDE = rf"{NUMBER} *[^+\-]*?"
_UNEVEN = re.compile(rf"(?P<nominal>.*?) *(?P<first>[+-] *{_SIDE}) *(?P<second>[+-] *{_SIDE}) *")
_ONE_SIDE = re.compile(rf"(?P<nominal>.*[^ ]) *(?P<side>[+-] *{_SIDE}) *")
_UNIT_WORD = re.compile(r"(?<=[0-9]) *(?:[^\W\d]|[°%\"])[^ +\-±.,]*")
_LIMIT = re.compile(r" *(?P<word>max|min) +")
_LIMIT_WRONG = re.compile(r" *(?P<word>maximum|minimum|max|min|<=|>=|≤|≥|<|>)\.? *|.* (?P<after>max|min)\.? *$")


@dataclass(frozen=True, slots=True)
class Tolerance:
    """What a dimension may be.

    nominal   : the value aimed at, or None
    low, high : limits in base units, None where there is no limit; deviations if `form` is "band"
    dimension : what it measures
    unit      : the unit typed
    text      : as typed, runs of blanks joined
    form      : around (a nominal), limits (two), band (deviations only), maximum or minimum (one limit, named
                for how it was typed: `max 3 st/in` is a lowest stitch length)
    """

    nominal: Quantity | None
    low: Fraction | None
    high: Fraction | None
    dimension: str
    unit: str
    text: str
    form: Form

    @property
    def band(self) -> Fraction | None:
        """Width from low to high in base units, None with one limit only."""
        return None if self.low is None or self.high is None else self.high - self.low

    def contains(self, value: Fraction | Quantity) -> bool:
        """Whether a value in base units (a deviation, for a band) is allowed; the limits are."""
        number = value.value if isinstance(value, Quantity) else value
        return (self.low is None or self.low <= number) and (self.high is None or number <= self.high)

    def around(self, nominal: Quantity) -> Tolerance:
        """A band put around its nominal; any other form unchanged."""
        if self.form != "band" or self.low is None or self.high is None:
            return self
        low, high = nominal.value + self.low, nominal.value + self.high
        return Tolerance(nominal, low, high, self.dimension, self.unit, self.text, "around")


@lru_cache(maxsize=8192)
def parse_tolerance(text: str, dimension: str) -> Tolerance:
    """Read a tolerance in any of the forms above. Raises TextFault; KeyError for an unknown dimension."""
    return read_tidy(text, lambda plain: _read(plain, text, dimension))


@lru_cache(maxsize=8192)
def parse_toleranced(text: str, dimension: str) -> Quantity | Tolerance:
    """Read a quantity that may carry a tolerance: `1.4 N` or `1.4 N ± 0.2`. Raises TextFault."""
    return read_tidy(text, lambda plain: _read_either(plain, text, dimension))


def _read_either(plain: str, text: str, dimension: str) -> Quantity | Tolerance:
    if _has_tolerance(plain):
        return _read(plain, text, dimension)
    return replace(parse_quantity(plain, dimension), text=joined(text))


def _has_tolerance(plain: str) -> bool:
    if ".." in plain or _LIMIT_WRONG.match(plain) or _BOTH.match(plain):
        return True
    return bool(_UNEVEN.fullmatch(plain) or _ONE_SIDE.fullmatch(plain))


def _read(plain: str, text: str, dimension: str) -> Tolerance:
    if found := _BOTH.match(plain):
        return _read_both(plain, found, text, dimension)
    if ".." in plain:
        return _from_range(parse_range(plain, dimension), text)
    if found := _LIMIT.match(plain):
        return _read_limit(plain, found, text, dimension)
    if found := _UNEVEN.fullmatch(plain):
        return _read_uneven(plain, found, text, dimension)
    return _refuse(plain, dimension)


def _refuse(plain: str, dimension: str) -> Tolerance:
    if found := _LIMIT_WRONG.match(plain):
        word = found["word"] or found["after"]
        right = "min" if word.startswith(("min", ">", "≥")) else "max"
        at = found.start("word" if found["word"] else "after")
        limit = (plain[:at] if found["after"] else plain[found.end() :]).strip()
        raise TextFault("one limit begins with max or min", at, f"Write {right} {limit}")
    if found := _ONE_SIDE.fullmatch(plain):
        missing = "-0" if found["side"].startswith("+") else "+0"
        raise TextFault("only one side is given", found.start("side"), f"Write both sides, such as {missing} behind it")
    piece = read_piece(plain, 0, len(plain), dimension)
    find_unit(piece, dimension)
    typed = plain.strip()
    raise TextFault("no tolerance is given", len(plain.rstrip()), f"Write {typed} ± and what it may differ by")


def _from_range(limits: Range, text: str) -> Tolerance:
    if limits.low.value == limits.high.value and limits.dimension != "count":
        raise TextFault("the limits leave no room", 0, "Write two different limits")
    unit = limits.high.unit
    return Tolerance(None, limits.low.value, limits.high.value, limits.dimension, unit, joined(text), "limits")


def _read_limit(plain: str, found: re.Match[str], text: str, dimension: str) -> Tolerance:
    piece = read_piece(plain, found.end(), len(plain), dimension)
    unit = find_unit(piece, dimension)
    limit = make_quantity(piece, unit, dimension, text).value
    form: Form = "maximum" if found["word"] == "max" else "minimum"
    upper = (form == "maximum") != unit.reciprocal
    low, high = (None, limit) if upper else (limit, None)
    return Tolerance(None, low, high, dimension, unit.name, joined(text), form)


def _read_both(plain: str, found: re.Match[str], text: str, dimension: str) -> Tolerance:
    side = read_piece(plain, found.end(), len(plain), dimension)
    if side.number < 0:
        raise TextFault("two signs", side.number_at, "Write ± and then the number alone")
    if side.number == 0 and dimension != "count":
        raise TextFault("nothing can be made to a tolerance of 0", side.number_at, "Write what it may differ by")
    return _assemble(plain, found.end("nominal"), side, side, text, dimension)


def _read_uneven(plain: str, found: re.Match[str], text: str, dimension: str) -> Tolerance:
    sides = {}
    for name in ("first", "second"):
        sign = found[name][0]
        start = found.start(name) + 1
        side = read_piece(plain, start, found.end(name), dimension)
        if sign in sides:
            word = "pluses" if sign == "+" else "minuses"
            raise TextFault(f"two {word}", start - 1, "Write +1/16 -0, or the two limits such as 25..27 mm")
        sides[sign] = side
    plus, minus = sides["+"], sides["-"]
    if plus.number == minus.number == 0 and dimension != "count":
        raise TextFault("nothing can be made to a tolerance of 0", found.start("first"), "Write what it may differ by")
    return _assemble(plain, found.end("nominal"), minus, plus, text, dimension)


def _assemble(plain: str, nominal_end: int, minus: Piece, plus: Piece, text: str, dimension: str) -> Tolerance:
    if not plain[:nominal_end].strip():
        return _band(minus, plus, text, dimension)
    typed = read_piece(plain, 0, nominal_end, dimension)
    unit = _shared_unit((typed, plus, minus), dimension)
    nominal = make_quantity(typed, unit, dimension, _nominal_text(plain, nominal_end, typed, unit))
    ends = [
        typed.number - _deviation(minus, unit, dimension),
        typed.number + _deviation(plus, unit, dimension),
    ]
    below = ends[0] < 0 < typed.number and not DIMENSIONS[dimension].signed
    if below or (unit.reciprocal and ends[0] <= 0):
        raise TextFault("the lower limit is below zero", minus.number_at, "Make the minus side smaller")
    low, high = sorted(unit.to_base(end) for end in ends)
    return Tolerance(nominal, low, high, dimension, unit.name, joined(text), "around")


def _nominal_text(plain: str, end: int, typed: Piece, unit: Unit) -> str:
    text = joined(plain[:end])
    return text if typed.unit or not unit.name else f"{text} {unit.name}"


def _shared_unit(pieces: tuple[Piece, ...], dimension: str) -> Unit:
    """The unit of the first piece that has one: `3.2 ± 0.2 mm` and `3.2 mm ± 0.2` are the same."""
    return find_unit(next((piece for piece in pieces if piece.unit), pieces[0]), dimension)


def _deviation(side: Piece, unit: Unit, dimension: str) -> Fraction:
    """A side in the nominal's unit. An offset (°F) doesn't count in a difference."""
    if not side.unit:
        return side.number
    own = find_unit(side, dimension)
    if own.name == unit.name:
        return side.number
    if own.reciprocal or unit.reciprocal:
        raise TextFault("the two units don't add up", side.unit_at, f"Write both in {unit.name}")
    return side.number * own.factor / unit.factor


def _band(minus: Piece, plus: Piece, text: str, dimension: str) -> Tolerance:
    unit = _shared_unit((plus, minus), dimension)
    if unit.reciprocal:
        raise TextFault(
            "a band alone in this unit has no width",
            plus.unit_at,
            f"Write the nominal too, such as 8 {unit.name} ± 1",
        )
    low, high = (
        -_deviation(minus, unit, dimension) * unit.factor,
        _deviation(plus, unit, dimension) * unit.factor,
    )
    return Tolerance(None, low or ZERO, high, dimension, unit.name, joined(text), "band")


@lru_cache(maxsize=4096)
def parse_any_tolerance(text: str) -> Tolerance:
    """Read a tolerance whose first unit says what it measures (plain mm a length, pieces or st a count).

    Raises TextFault as parse_tolerance, and where no unit is typed.
    """
    return read_tidy(text, lambda plain: _read(plain, text, _dimension_in(plain)))


def _dimension_in(plain: str) -> str:
    first = ""
    for found in _UNIT_WORD.finditer(plain):
        word = found[0].strip()
        first = first or word
        if word in UNITS or word in ALIASES:
            return UNITS[ALIASES.get(word, word)].dimension
        if word in UNITS_OF["count"]:
            return "count"
    if not first and not _LIMIT_WRONG.match(plain):
        raise TextFault("which unit?", len(plain.rstrip()), "Write the unit, such as 2 in ± 1/16 or 28 st ± 2")
    return "length"
