"""Expressions: arithmetic on named dimensions, `=row.pitch * 4 + 2 * margin`, with units and exact fractions.

Grammar. The text begins with `=`. A name is `margin`, `handle-box.width` or `part/feature.dimension`; it
begins with a letter, and a hyphen between two letters or digits belongs to it, so a minus has blanks on both
sides (or stands before a value). `1 1/2 in` is one number. `+ - * /` (also `×`), brackets, `max(a, b)`,
`min(a, b)`. A tolerance may follow: `± 1 mm`, or `+1/16 -0 in` with the signs right before their numbers.

Types. Equal kinds add; a plain number times a kind, or a kind by a number, is that kind; a kind by itself is
a plain number; length times length only where an area is asked; an area by a length is a length. A length
plus a plain number is refused, and so is arithmetic on temperatures.

The text is read in expression_text.py, many expressions that name each other are resolved in sizes.py.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from fractions import Fraction
from functools import lru_cache

from builder.errors import TextFault
from builder.model.expression_text import TAIL, Item, Literal, Name, Operator, read_items
from builder.model.plain_text import joined, read_tidy, tidy
from builder.model.quantity import Quantity
from builder.model.tolerance import Tolerance, parse_tolerance
from builder.model.units import DIMENSIONS, UNITS_OF

_PLAIN_KINDS = frozenset({"number", "share", "count"})
_AREA_UNIT = {"mm": "mm2", "cm": "cm2", "m": "m2", "in": "in2", "ft": "ft2", "yd": "yd2"}


@dataclass(frozen=True, slots=True)
class Expression:
    """An expression whose grammar is right; its types are known once its names are.

    text      : as typed, with the `=`, runs of blanks joined
    items     : in postfix order, values before their operator
    names     : the names in it, in the order typed, repeats included
    tolerance : the text of the tolerance that follows, empty without one, and where it begins
    """

    text: str
    items: tuple[Item, ...]
    names: tuple[Name, ...]
    tolerance: str = ""
    tolerance_offset: int = 0

    def evaluate(self, lookup: Callable[[str], Quantity], dimension: str) -> Quantity:
        """The value, in the unit that occurs first; its text is the expression's.

        lookup : the quantity of a name; raises KeyError if there is none
        Raises TextFault: unknown name, kinds that don't fit, division by zero, result of another dimension.
        """
        return _evaluate(self, lookup, dimension)

    def band(self, dimension: str) -> Tolerance | None:
        """The tolerance that follows, as a band around the value; None without one. Raises TextFault."""
        if not self.tolerance:
            return None
        try:
            return parse_tolerance(self.tolerance, dimension)
        except TextFault as fault:
            raise TextFault(fault.message, self.tolerance_offset + fault.offset, fault.remedy) from None


@lru_cache(maxsize=8192)
def parse_expression(text: str) -> Expression:
    """Read an expression. Raises TextFault at the first character that doesn't fit the grammar above."""
    return read_tidy(text, lambda plain: _read(plain, text))


def _read(plain: str, text: str) -> Expression:
    start = len(plain) - len(plain.lstrip())
    if not plain.startswith("=", start):
        raise TextFault("an expression begins with =", start, f"Write ={plain.strip()}")
    tail = TAIL.search(plain, start + 1)
    end = tail.start() if tail else len(plain)
    items = read_items(plain, start + 1, end)
    at = end + len(plain[end:]) - len(plain[end:].lstrip()) if tail else 0
    origins = tidy(text)[1]
    if origins is not None:
        items = [replace(item, offset=origins[item.offset]) for item in items]
        at = origins[at]
    names = sorted((item for item in items if isinstance(item, Name)), key=lambda name: name.offset)
    return Expression(joined(text), tuple(items), tuple(names), plain[end:].strip(), at)


@dataclass(frozen=True, slots=True)
class _Value:
    number: Fraction
    dimension: str
    unit: str


def _evaluate(expression: Expression, lookup: Callable[[str], Quantity], asked: str) -> Quantity:
    stack: list[_Value] = []
    for item in expression.items:
        if isinstance(item, Literal):
            stack.append(_Value(item.value, _kind(item.dimension), item.unit))
        elif isinstance(item, Name):
            stack.append(_named(item, lookup))
        else:
            values = stack[-item.values :]
            del stack[-item.values :]
            stack.append(_apply(item, values, asked))
    return _result(stack.pop(), expression, asked)


def _kind(dimension: str) -> str:
    return "number" if dimension in _PLAIN_KINDS else dimension


def _named(name: Name, lookup: Callable[[str], Quantity]) -> _Value:
    try:
        found = lookup(name.text)
    except KeyError:
        raise TextFault(f"unknown name {name.text}", name.offset, name_remedy(name.text)) from None
    return _Value(found.value, _kind(found.dimension), found.unit)


def _apply(operator: Operator, values: list[_Value], asked: str) -> _Value:
    if operator.symbol in ("max", "min"):
        return _choose(operator, values)
    if operator.symbol == "negative":
        return replace(values[0], number=-values[0].number)
    left, right = values
    if "temperature" in (left.dimension, right.dimension):
        raise TextFault("temperatures can't be calculated with", operator.offset, "Write the temperature itself")
    if operator.symbol in "+-":
        _same_kind(operator, left, right)
        number = left.number + right.number if operator.symbol == "+" else left.number - right.number
        return _Value(number, left.dimension, left.unit or right.unit)
    return _times(operator, left, right, asked) if operator.symbol == "*" else _by(operator, left, right)


def _choose(operator: Operator, values: list[_Value]) -> _Value:
    for value in values[1:]:
        _same_kind(operator, values[0], value)
    pick = max if operator.symbol == "max" else min
    return replace(values[0], number=pick(value.number for value in values))


def _same_kind(operator: Operator, left: _Value, right: _Value) -> None:
    if left.dimension != right.dimension:
        words = {"+": "and", "-": "less"}.get(operator.symbol, "beside")
        message = f"{_words(left)} {words} {_words(right)} don't go together"
        plain = "number" in (left.dimension, right.dimension)
        raise TextFault(message, operator.offset, "Give the number a unit" if plain else "Use values of one kind")


def _words(value: _Value) -> str:
    return DIMENSIONS[value.dimension].words


def _times(operator: Operator, left: _Value, right: _Value, asked: str) -> _Value:
    number = left.number * right.number
    if left.dimension == "number":
        return _Value(number, right.dimension, right.unit)
    if right.dimension == "number":
        return _Value(number, left.dimension, left.unit)
    if left.dimension == right.dimension == "length" and asked == "area":
        return _Value(number, "area", _AREA_UNIT.get(left.unit, "mm2"))
    raise TextFault(
        f"{_words(left)} times {_words(right)} is not {DIMENSIONS[asked].words}",
        operator.offset,
        "One of them is a number",
    )


def _by(operator: Operator, left: _Value, right: _Value) -> _Value:
    if right.number == 0:
        raise TextFault("a division by zero", operator.offset, "Divide by something above zero")
    number = left.number / right.number
    if right.dimension == "number":
        return _Value(number, left.dimension, left.unit)
    if left.dimension == right.dimension:
        return _Value(number, "number", "")
    if (left.dimension, right.dimension) == ("area", "length"):
        return _Value(number, "length", right.unit)
    message = f"{_words(left)} by {_words(right)} has no meaning here"
    raise TextFault(message, operator.offset, "Divide by a number, or by a value of the same kind")


def _result(value: _Value, expression: Expression, asked: str) -> Quantity:
    start = expression.items[0].offset
    if value.dimension != _kind(asked):
        message = f"this asks for {DIMENSIONS[asked].words}; the result is {_words(value)}"
        raise TextFault(message, start, f"Make it {DIMENSIONS[asked].words}")
    if asked == "count" and value.number.denominator != 1:
        raise TextFault("the result is not a whole number", start, "Choose values that divide without a rest")
    unit = value.unit if value.unit in UNITS_OF[asked] else DIMENSIONS[asked].base
    if value.number == 0 and unit and UNITS_OF[asked][unit].reciprocal:
        unit = DIMENSIONS[asked].base
    return Quantity(value.number, asked, unit, expression.text)


def name_remedy(name: str) -> str:
    """What to do about an unknown name without a near one: `width-2` may have been meant as a subtraction."""
    left, _, right = name.rpartition("-")
    if left and right:
        return f"Write a name that exists; to subtract, write blanks: {left} - {right}"
    return "Write a name that exists"
