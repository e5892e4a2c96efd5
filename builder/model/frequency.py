"""The `per:` of a step: how often it is done. This page is the reference.

| text | means |
|---|---|
| `piece` | once a piece (a step without `per:`) |
| `20 pieces` | once every 20 pieces |
| `bundle`, `batch` | once a bundle, once a batch |
| `3 times a piece` | three times a piece; also `a bundle`, `a batch` |
| `2 times per 20 pieces` | twice every 20 pieces |

Refused, each with its remedy:
- `0 pieces`, `-5 pieces`, `0 times a piece` : a step that is never done is left out.
- `2.5 pieces`, `1/2 piece` : whole numbers; half as often is `2 pieces`, twice as often is `2 times a piece`.
- `20` : 20 of what? Write `20 pieces`.
- `pieces`, `20 piece`, `20 bundles` : `piece`, `20 pieces`, `bundle`.
- `hour`, `shift` : a time of day is not a share of a piece; put it in the plant's off-standard time.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache
from typing import Literal, NoReturn

from builder.errors import TextFault
from builder.model.near_names import near
from builder.model.plain_text import joined, read_tidy

Per = Literal["piece", "pieces", "bundle", "batch"]

_TEXT = re.compile(
    r" *(?:(?P<times>[0-9]{1,9}) +times? +(?:a|per) +)?"
    r"(?:(?P<word>piece|bundle|batch)|(?P<n>[0-9]{1,9}) +pieces) *"
)
_NUMBER = re.compile(r"[+-]?[0-9]*[.,/]?[0-9]+")
_TIMED = {"hour", "hourly", "shift", "day", "minute", "week"}


@dataclass(frozen=True, slots=True)
class Frequency:
    """How often a step is done: `count` times per piece, per `n` pieces, per bundle or per batch."""

    count: Fraction
    per: Per
    n: int
    text: str

    def share(self, batch: int, bundle: int) -> Fraction:
        """Times per piece, in the long run: 1/20 for `20 pieces`, 1/bundle for `bundle`. Both counts >= 1.

        A short last bundle is not counted here, so that a standard doesn't hang on the batch; see `times`.
        Raises ZeroDivisionError for a batch or bundle of 0.
        """
        every = {"piece": 1, "pieces": self.n, "bundle": bundle, "batch": batch}
        return self.count / every[self.per]

    def times(self, batch: int, bundle: int) -> Fraction:
        """Times in a batch, a started bundle (or lot of n) counted whole. Both counts >= 1."""
        every = {"piece": 1, "pieces": self.n, "bundle": bundle, "batch": batch}
        return self.count * -(-batch // every[self.per])


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
    per: Per = "pieces" if found["n"] else "piece"
    if found["word"] in ("bundle", "batch"):
        per = "bundle" if found["word"] == "bundle" else "batch"
    if per == "pieces" and every == 1:
        per = "piece"
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
    close = near(words[-1], ("piece", "pieces", "bundle", "bundles", "batch", "batches")) if words else ()
    if not close:
        return "Write piece, 20 pieces, bundle, batch or 3 times a piece"
    if close[0].startswith("piece"):
        if len(words) > 1:
            return "Write it such as 3 times a piece"
        return f"Write {number} pieces" if number else "Write piece"
    return "Write bundle" if close[0].startswith("bundle") else "Write batch"
