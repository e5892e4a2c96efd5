"""The `time:` of a step: how its time is known. This page is the reference.

| text | means |
|---|---|
| `3.5 s`, `0.06 min` | an estimate; sheet and report say so |
| `3..4 s` | an estimate with its range; the middle counts |
| `3.5 s ± 0.5` | the same, typed from its middle |
| `pick-up-small` | one line of the plant's own table of element times |
| `2 x pick-up-small` (or `×`) | that line, twice for each time the step is done |

Refused, each with its remedy:
- `3.5` : which unit? A time has no usual one.
- `0 s`, `-2 s` : a step takes time; a step without time has no `time:` line.
- `0 x name`, `1.5 x name`, `1/2 x name` : whole times only; every second piece is said with `per: 2 pieces`.
- `reach + grasp`, `reach, grasp` : one element a step; make two steps, or an element of both in the table.
- `Pick up` : names are lower-case letters, digits and hyphens.
- `max 4 s`, `4 s +1 -0` : an estimate has a value or a range, not a one-sided limit.

A step timed by a study or by its machine has no `time:` line.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache
from typing import NoReturn

from builder.errors import TextFault
from builder.model.plain_text import read_tidy
from builder.model.quantity import parse_quantity
from builder.model.tolerance import parse_tolerance

_NAME = re.compile(r" *([a-z][a-z0-9]*(?:-[a-z0-9]+)*) *")
_TIMES = re.compile(r" *(?P<count>[0-9./ ]*[0-9]) *(?:x +|[×*] *)(?P<name>[^ ].*)")
_TWO = re.compile(r" *[A-Za-z][\w-]* *(?P<mark>[+,;&]|\band\b)")


@dataclass(frozen=True, slots=True)
class Estimate:
    """A typed time. `seconds` counts; low and high [s] are the range it was given, None without one."""

    seconds: Fraction
    low: Fraction | None
    high: Fraction | None
    text: str


@dataclass(frozen=True, slots=True)
class Element:
    """A line of the plant's table of element times, done `count` times. `offset` is where its name stands."""

    name: str
    count: int
    text: str
    offset: int = 0


@lru_cache(maxsize=4096)
def parse_time(text: str) -> Estimate | Element:
    """Read a step's time. Raises TextFault for all that the head of this file refuses."""
    return read_tidy(text, lambda plain: _read(plain, text))


def _read(plain: str, text: str) -> Estimate | Element:
    typed = " ".join(text.split())
    if found := _NAME.fullmatch(plain):
        return Element(found[1], 1, typed, found.start(1))
    if found := _TIMES.fullmatch(plain):
        return _element(plain, found, typed)
    if found := _TWO.match(plain):
        raise TextFault("one element a step", found.start("mark"), "Make two steps, or one element in the table")
    first = len(plain) - len(plain.lstrip())
    if plain[first].isalpha():
        if plain[first:].startswith(("max ", "min ")):
            raise TextFault("an estimate is a value or a range", first, "Write 3.5 s, or 3..4 s")
        _refuse_name(plain.strip(), first)
    return _estimate(plain, typed)


def _element(plain: str, found: re.Match[str], typed: str) -> Element:
    count, name_at = found["count"].strip(), found.start("name")
    if not count.isdigit() or len(count) > 9 or int(count) == 0:
        remedy = "Write a whole number; for every second piece write per: 2 pieces"
        raise TextFault("an element is done a whole number of times", found.start("count"), remedy)
    if mark := _TWO.match(plain, name_at):
        raise TextFault("one element a step", mark.start("mark"), "Make two steps, or one element in the table")
    name = _NAME.fullmatch(plain, name_at)
    if name is None:
        _refuse_name(found["name"].strip(), name_at)
    return Element(name[1], int(count), typed, name_at)


def _refuse_name(name: str, at: int) -> NoReturn:
    slug = re.sub(r"[^a-z0-9]+", "-", name.lower()).strip("-")
    raise TextFault("names are lower-case letters, digits and hyphens", at, f"Write {slug}" if slug else "Write a name")


def _estimate(plain: str, typed: str) -> Estimate:
    if ".." in plain or "±" in plain or "+-" in plain or "+/-" in plain:
        spread = parse_tolerance(plain, "time")
        if spread.low is None or spread.high is None or spread.form == "band":
            raise TextFault("an estimate is a value or a range", 0, "Write 3.5 s ± 0.5, or 3..4 s")
        middle = spread.nominal.value if spread.nominal else (spread.low + spread.high) / 2
        return Estimate(_above_zero(middle, plain), spread.low, spread.high, typed)
    if "+" in plain:
        raise TextFault("an estimate is a value or a range", plain.index("+"), "Write 3.5 s, or 3..4 s")
    return Estimate(_above_zero(parse_quantity(plain, "time").value, plain), None, None, typed)


def _above_zero(seconds: Fraction, plain: str) -> Fraction:
    if seconds == 0:
        first = len(plain) - len(plain.lstrip())
        raise TextFault("a step takes time", first, "Write its time, or leave the line out")
    return seconds
