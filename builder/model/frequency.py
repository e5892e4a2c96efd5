"""The `per:` of a step: how often it is done. This page is the reference.

| text | means |
|---|---|
| `piece` | once a piece (a step without `per:`) |
| `20 pieces` | once every 20 pieces |
| `bundle`, `batch` | once a bundle, once a batch |
| `bobbin` | at each new bobbin: what it holds, over the thread a piece takes from it |
| `cone` | at each new cone of needle or looper thread; several cones count each on its own |
| `needle` | whenever the machine's needles are changed, after the hours of sewing they last |
| `sheet` | once a sheet or lay, which holds the operation's `pieces a sheet` |
| `3 times a piece` | three times a piece; also `a bundle`, `a batch`, `a bobbin` and so on |
| `2 times per 20 pieces` | twice every 20 pieces |

What a bobbin, a cone or a needle comes to is worked out in computing/occurrence.py.

Refused, each with its remedy:
- `0 pieces`, `-5 pieces`, `0 times a piece` : a step that is never done is left out.
- `2.5 pieces`, `1/2 piece` : whole numbers; half as often is `2 pieces`, twice as often is `2 times a piece`.
- `20` : 20 of what? Write `20 pieces`.
- `pieces`, `20 piece`, `20 bundles`, `2 bobbins` : `piece`, `20 pieces`, `bundle`, `bobbin`.
- `hour`, `shift` : a time of day is not a share of a piece; put it in the plant's off-standard time.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache
from typing import Literal, NoReturn

from builder.errors import TextFault
from builder.model.near_names import near
from builder.model.plain_text import joined, read_tidy

Per = Literal["piece", "pieces", "bundle", "batch", "bobbin", "cone", "needle", "sheet"]

LOTS: tuple[Per, ...] = ("bundle", "batch", "bobbin", "cone", "needle", "sheet")
"""What a step may be done once for, beside a piece and a number of pieces."""

FROM_FACTS: tuple[Per, ...] = ("bobbin", "cone", "needle", "sheet")
"""Those of them that follow from facts typed elsewhere."""

_WORDS = "|".join(("piece", *LOTS))
_TEXT = re.compile(
    r" *(?:(?P<times>[0-9]{1,9}) +times? +(?:a|per) +)?"
    rf"(?:(?P<word>{_WORDS})|(?P<n>[0-9]{{1,9}}) +pieces) *"
)
_NUMBER = re.compile(r"[+-]?[0-9]*[.,/]?[0-9]+")
_TIMED = {"hour", "hourly", "shift", "day", "minute", "week"}


@dataclass(frozen=True, slots=True)
class Frequency:
    """How often a step is done: `count` times per piece, per `n` pieces, or per lot (a bundle, a bobbin, a sheet)."""

    count: Fraction
    per: Per
    n: int
    text: str

    def share(self, lots: Mapping[Per, Fraction]) -> Fraction:
        """Times per piece, in the long run: 1/20 for `20 pieces`, 1/25 for `bundle` with lots = {bundle: 25}.

        lots : how many pieces each lot has; of one that is missing nothing is known, and the share is 0
        A short last lot is not counted here, so that a standard doesn't hang on the batch.
        Raises ZeroDivisionError for a lot of 0.
        """
        every = {"piece": Fraction(1), "pieces": Fraction(self.n), **lots}.get(self.per)
        return Fraction(0) if every is None else self.count / every


EACH_PIECE = Frequency(Fraction(1), "piece", 1, "piece")
"""What a step without `per:` has."""


@lru_cache(maxsize=1024)
def parse_frequency(text: str) -> Frequency:
    """Read how often a step is done. Raises TextFault for all that the head of this file refuses."""
    return read_tidy(text, lambda plain: _read(plain, joined(text)))


def _read(plain: str, text: str) -> Frequency:
    found = _TEXT.fullmatch(plain)
    if found is None:
        _refuse(plain)
    times, every = int(found["times"] or 1), int(found["n"] or 1)
    for name, number in (("times", times), ("n", every)):
        if number == 0:
            raise TextFault("a step that is never done", found.start(name), "Write 1 or more, or leave the step out")
    per: Per = "pieces" if every > 1 else "piece"
    per = next((lot for lot in LOTS if lot == found["word"]), per)
    return Frequency(Fraction(times), per, every, text)


def _refuse(plain: str) -> NoReturn:
    at = len(plain) - len(plain.lstrip())
    typed = plain.strip()
    words = [word for word in re.split(r"[^A-Za-z]+", typed) if word]
    if timed := _TIMED.intersection(words):
        word = next(iter(timed))
        raise TextFault("a time of day is not a share of a piece", plain.index(word), "Write piece, bundle or batch")
    number = _NUMBER.search(plain)
    if number and number[0].startswith("-"):
        raise TextFault("a step can't be done a negative number of times", number.start(), "Leave the minus out")
    if number and not number[0].isdigit():
        remedy = "Half as often is 2 pieces, twice as often is 2 times a piece"
        raise TextFault("whole numbers only", number.start(), remedy)
    if number and not words:
        raise TextFault(f"{typed} of what?", at, f"Write {typed} pieces, or {typed} times a piece")
    raise TextFault("this asks how often the step is done", at, _remedy(words, number[0] if number else ""))


def _remedy(words: list[str], number: str) -> str:
    names = ("piece", *LOTS)
    close = near(words[-1], (*names, "batches", *(f"{name}s" for name in names))) if words else ()
    if not close:
        return "Write piece, 20 pieces, bundle, batch, bobbin, cone, needle, sheet or 3 times a piece"
    if close[0].startswith("piece"):
        if len(words) > 1:
            return "Write it such as 3 times a piece"
        return f"Write {number} pieces" if number else "Write piece"
    return f"Write {next(name for name in names if close[0].startswith(name))}"
