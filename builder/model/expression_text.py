"""The text of an expression, read into postfix items: tokens, operator precedence, brackets.

The grammar is in the head of expression.py. Nothing is calculated here but the typed numbers. Own tokenizer,
not `ast`: that reads `handle-box.width` as a subtraction. No recursion, so no depth can overflow.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from fractions import Fraction

from builder.errors import TextFault
from builder.model.near_names import near
from builder.model.plain_text import NUMBER, read_number
from builder.model.units import ALIASES, MEANT, UNITS

_WORD = r"[^\W\d]\w*(?:-\w+)*"
_PATH = rf"{_WORD}/{_WORD}(?:\.{_WORD})+|{_WORD}(?:\.{_WORD})*"
_SPELLINGS = sorted([name for name, unit in UNITS.items() if not unit.before] + list(ALIASES), key=len, reverse=True)
_UNIT = "|".join(re.escape(name) for name in _SPELLINGS)
_TOKEN = re.compile(
    rf"(?P<number>{NUMBER})(?: *(?P<unit>{_UNIT})(?![\w.]|-\w))?(?P<word> *[^\W\d][\w-]*(?![\w./(-]))?"
    rf"|(?P<call>{_WORD}) *\(|(?P<name>{_PATH})|(?P<sign>[-+*/×(),])|(?P<blank> +)|(?P<wrong>.)"
)
_SIDE = rf"{NUMBER}(?: *(?:{_UNIT}))?"
TAIL = re.compile(rf" *(?:±|\+/-|\+-).*$| +(?:\+{_SIDE} +-{_SIDE}|-{_SIDE} +\+{_SIDE}) *$")
_RANK = {"+": 1, "-": 1, "*": 2, "/": 2, "negative": 3}
_MISSING = "Write + - * or / between two values"


@dataclass(frozen=True, slots=True)
class Name:
    """A name in an expression; `offset` is where it stands in the text as typed."""

    text: str
    offset: int


@dataclass(frozen=True, slots=True)
class Literal:
    """A typed number, in base units of its kind."""

    value: Fraction
    dimension: str
    unit: str
    offset: int


@dataclass(frozen=True, slots=True)
class Operator:
    """`+ - * / negative max min`, and how many values it takes."""

    symbol: str
    values: int
    offset: int


Item = Name | Literal | Operator


def read_items(plain: str, start: int, end: int) -> list[Item]:
    """plain[start:end] as postfix items, offsets in `plain`. Raises TextFault where it doesn't fit."""
    return _postfix(_tokens(plain, start, end), plain, end)


@dataclass(frozen=True, slots=True)
class _Token:
    kind: str  # "value", "call" or the sign itself
    item: Item
    end: int


def _tokens(plain: str, start: int, end: int) -> list[_Token]:
    tokens = []
    for found in _TOKEN.finditer(plain, start, end):
        at = found.start()
        if found["number"]:
            _check_word(found)
            tokens.append(_Token("value", _literal(found), found.end()))
        elif found["call"]:
            if found["call"] not in ("max", "min"):
                raise TextFault(f"there is no function {found['call']}", at, "Use max(...) or min(...)")
            tokens.append(_Token("call", Operator(found["call"], 1, at), found.end()))
        elif found["name"]:
            tokens.append(_Token("value", Name(found["name"], at), found.end()))
        elif found["sign"]:
            sign = "*" if found[0] == "×" else found[0]
            tokens.append(_Token(sign, Operator(sign, 2, at), found.end()))
        elif found["wrong"]:
            remedy = "Use names, numbers with their unit, + - * / and brackets"
            raise TextFault(f"{found[0]} has no meaning here", at, remedy)
    return tokens


def _check_word(found: re.Match[str]) -> None:
    """A word right behind a number is a unit typed wrongly, or a name with no operator before it."""
    word = (found["word"] or "").strip()
    if not word:
        return
    at = found.end() - len(word)
    meant = MEANT.get(word) or next(iter(near(word, _SPELLINGS)), "") if len(word) > 1 else ""
    if meant and not found["unit"]:
        raise TextFault(f"unknown unit {word}", at, f"Write {meant}")
    raise TextFault("an operator is missing", at, "Write * to multiply" if word == "x" else _MISSING)


def _literal(found: re.Match[str]) -> Literal:
    number = read_number(found["number"], found.start())
    if not found["unit"]:
        return Literal(number, "number", "", found.start())
    unit = UNITS[ALIASES.get(found["unit"], found["unit"])]
    if unit.reciprocal and number == 0:
        raise TextFault(f"{unit.name} can't be 0", found.start(), "Write a number above 0")
    return Literal(unit.to_base(number), unit.dimension, unit.name, found.start())


def _postfix(tokens: list[_Token], plain: str, end: int) -> list[Item]:
    """Operator precedence by a stack (the shunting yard), so that no depth of brackets can overflow."""
    output: list[Item] = []
    stack: list[Operator] = []
    value_next = True
    for token in tokens:
        take = _take_value if value_next else _take_operator
        value_next = take(token, plain, output, stack)
    if value_next:
        last = max(len(plain[:end].rstrip()) - 1, 0)
        raise TextFault("the expression ends too early", last, "Write the missing value")
    _unwind(output, stack, 0)
    if stack:
        raise TextFault("the bracket isn't closed", stack[-1].offset, "Write the missing )")
    return output


def _take_value(token: _Token, _: str, output: list[Item], stack: list[Operator]) -> bool:
    """Take a token where a value may begin. Returns whether a value is still awaited."""
    if token.kind == "value":
        output.append(token.item)
        return False
    if isinstance(token.item, Operator) and token.kind in ("call", "(", "-"):
        symbol = {"-": "negative"}.get(token.kind, token.item.symbol)
        stack.append(Operator(symbol, 1, token.item.offset))
        return True
    raise TextFault(
        f"a value is missing before {token.kind}",
        token.item.offset,
        "Write a name, or a number with its unit",
    )


def _take_operator(token: _Token, plain: str, output: list[Item], stack: list[Operator]) -> bool:
    """Take a token behind a value. Returns whether a value is awaited next."""
    operator = token.item
    if token.kind in ("value", "call", "(") or not isinstance(operator, Operator):
        raise TextFault("an operator is missing", operator.offset, _MISSING)
    if token.kind == ")":
        _close(operator, output, stack)
        return False
    if token.kind == ",":
        _unwind(output, stack, 0)
        if not stack or stack[-1].symbol == "(":
            raise TextFault("a comma outside max( ) and min( )", operator.offset, "For decimals write a point: 3.2")
        stack[-1] = replace(stack[-1], values=stack[-1].values + 1)
        return True
    _check_blanks(operator, token.end, plain)
    _unwind(output, stack, _RANK[operator.symbol])
    stack.append(operator)
    return True


def _close(bracket: Operator, output: list[Item], stack: list[Operator]) -> None:
    _unwind(output, stack, 0)
    if not stack:
        raise TextFault("a bracket closes that none opened", bracket.offset, "Leave it out, or write the missing (")
    opening = stack.pop()
    if opening.symbol != "(":
        output.append(opening)


def _unwind(output: list[Item], stack: list[Operator], rank: int) -> None:
    """Move operators of at least that rank from the stack to the output, down to an open bracket."""
    while stack and _RANK.get(stack[-1].symbol, -1) >= rank:
        output.append(stack.pop())


def _check_blanks(operator: Operator, end: int, plain: str) -> None:
    """`a -b` could be a name, a difference or half a tolerance, so it is none of them."""
    if not plain[end:].strip():
        return  # the end is reported, not the blanks
    before, after = plain[operator.offset - 1] == " ", plain[end] == " "
    if operator.symbol == "-" and not (before and after):
        raise TextFault("a minus without blanks", operator.offset, "Write a blank on both sides of the minus")
    if operator.symbol == "+" and before and not after:
        remedy = "To add, write a blank behind the plus; a tolerance has both sides: +1/16 -0 in"
        raise TextFault("is this added, or a tolerance?", operator.offset, remedy)
