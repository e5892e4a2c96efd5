"""The `every:` of a tolerance: when it is checked. This page is the reference.

Parts are separated by commas or `then`; each stands once.

| text | means |
|---|---|
| `first piece`, `first 5 pieces` | at the start of a batch |
| `last piece`, `last 2 pieces` | at its end |
| `every 20th`, `20th`, `every 20 pieces` | the 20th, 40th, 60th ... piece of the batch |
| `each piece` | all of them |
| `bundle`, `batch` | once a bundle, once a batch |
| `hourly`, `2 h`, `every 30 min` | by the clock |
| `shift start` | when a shift begins |
| `after needle change` | after what the words say |

Refused, each with its remedy:
- `every 0th`, `first 0 pieces`, `0 h` : never; leave the part out.
- `20` : the 20th, the first 20, or every 20 min?
- `5 %` : a share isn't a plan, because nobody on the floor can tell which piece is due; write `20th`.
- `each piece, 20th` : each piece says it all.
- `sometimes`, `often`, `regularly` : no plan.
- the same part twice.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache
from typing import Literal, NoReturn

from builder.errors import TextFault
from builder.model.near_names import near
from builder.model.plain_text import joined, plain_number, read_tidy
from builder.model.quantity import parse_quantity

Kind = Literal["first", "last", "nth", "each", "bundle", "batch", "clock", "shift start", "after"]


@dataclass(frozen=True, slots=True)
class CheckPart:
    """One part of a plan.

    number : pieces for first and last, the n of nth, seconds of the clock; 1 otherwise
    words  : how a sheet says it
    """

    kind: Kind
    number: Fraction
    words: str


@dataclass(frozen=True, slots=True)
class CheckPlan:
    """When a tolerance is checked: its parts in the order typed."""

    parts: tuple[CheckPart, ...]
    text: str

    def words(self) -> str:
        """The plan as sheets print it: `first piece, then every 20th`."""
        return ", then ".join(part.words for part in self.parts)

    def checks(self, batch: int, bundle: int | None = None) -> int | None:
        """Checks in a batch of that many pieces (>= 1), or None if a part goes by the clock or an event.

        A piece that two parts name is checked once. `bundle` is the pieces of one, needed if the plan names
        bundles.
        """
        kinds = {part.kind for part in self.parts}
        if kinds & {"clock", "shift start", "after"} or ("bundle" in kinds and bundle is None):
            return None
        if "each" in kinds:
            return batch
        lots = -(-batch // bundle) if bundle and "bundle" in kinds else 0
        return self._pieces(batch) + lots + ("batch" in kinds)

    def per_piece(self, batch: int, bundle: int | None = None) -> Fraction | None:
        """Checks per piece of that batch, or None as in `checks`."""
        checks = self.checks(batch, bundle)
        return None if checks is None else Fraction(checks, batch)

    def _pieces(self, batch: int) -> int:
        named: set[int] = set()
        for part in self.parts:
            number = int(part.number)
            if part.kind == "first":
                named.update(range(1, min(number, batch) + 1))
            elif part.kind == "last":
                named.update(range(max(1, batch - number + 1), batch + 1))
            elif part.kind == "nth":
                named.update(range(number, batch + 1, number))
        return len(named)


@lru_cache(maxsize=1024)
def parse_check_plan(text: str) -> CheckPlan:
    """Read a check plan. Raises TextFault for all that the head of this file refuses."""
    return read_tidy(text, lambda plain: _read(plain, joined(text)))


def _read(plain: str, text: str) -> CheckPlan:
    parts: list[CheckPart] = []
    for at, typed in _split(plain):
        part = _read_part(typed, at)
        if any((part.kind, part.number, part.words) == (seen.kind, seen.number, seen.words) for seen in parts):
            raise TextFault(f"{part.words} stands here twice", at, "Leave one out")
        parts.append(part)
        pieces = [part.kind for part in parts if part.kind in ("first", "last", "nth", "each")]
        if len(pieces) > 1 and "each" in pieces:
            raise TextFault("each piece says it all", at, "Write each piece, and no other piece")
    return CheckPlan(tuple(parts), text)


def _split(plain: str) -> list[tuple[int, str]]:
    """The parts with where each begins."""
    parts, start = [], 0
    for mark in [*re.finditer(r" *, *(?:then +)?|(?:^| )+then +", plain), None]:
        end = mark.start() if mark else len(plain)
        typed = plain[start:end]
        if typed.strip():
            parts.append((start + len(typed) - len(typed.lstrip()), typed.strip()))
        elif mark is None or "," in mark[0] or start:
            raise TextFault("nothing stands beside a separator", min(start, len(plain) - 1), "Leave it out")
        start = mark.end() if mark else end
    return parts


def _read_part(typed: str, at: int) -> CheckPart:
    for pattern, make in _GRAMMAR:
        if found := pattern.fullmatch(typed):
            part = make(found)
            if part.number == 0:
                raise TextFault("a check that never comes", at, "Write 1 or more, or leave it out")
            return part
    return _refuse(typed, at)


def _ends(found: re.Match[str]) -> CheckPart:
    number = int(found["n"] or 1)
    kind: Kind = "first" if found["end"] == "first" else "last"
    return CheckPart(kind, Fraction(number), f"{kind} piece" if number == 1 else f"{kind} {number} pieces")


def _nth(found: re.Match[str]) -> CheckPart:
    number = int(found["n"])
    if number == 1:
        return _each(found)
    return CheckPart("nth", Fraction(number), f"every {ordinal(number)}")


def _each(_: re.Match[str]) -> CheckPart:
    return CheckPart("each", Fraction(1), "each piece")


def _lot(found: re.Match[str]) -> CheckPart:
    kind: Kind = "bundle" if found["lot"] == "bundle" else "batch"
    return CheckPart(kind, Fraction(1), f"each {kind}")


def _clock(found: re.Match[str]) -> CheckPart:
    typed = found["time"] or "1 h"
    seconds = parse_quantity(typed, "time").value
    hours = seconds / 3600
    words = f"every {plain_number(hours)} h" if hours.denominator == 1 else f"every {plain_number(seconds / 60)} min"
    return CheckPart("clock", seconds, "every hour" if hours == 1 else words)


def _shift(_: re.Match[str]) -> CheckPart:
    return CheckPart("shift start", Fraction(1), "at shift start")


def _after(found: re.Match[str]) -> CheckPart:
    return CheckPart("after", Fraction(1), f"after {joined(found['event'])}")


_GRAMMAR: tuple[tuple[re.Pattern[str], Callable[[re.Match[str]], CheckPart]], ...] = (
    (re.compile(r"(?P<end>first|last)(?: piece|(?: (?P<n>[0-9]{1,9}) pieces?))?"), _ends),
    (re.compile(r"(?:every )?(?P<n>[0-9]{1,9})(?:st|nd|rd|th)(?: piece)?"), _nth),
    (re.compile(r"every (?P<n>[0-9]{1,9}) pieces"), _nth),
    (re.compile(r"(?:each|every) piece"), _each),
    (re.compile(r"(?:(?:each|every) )?(?P<lot>bundle|batch)"), _lot),
    (re.compile(r"hourly|every hour|(?:every )?(?P<time>[0-9]{1,9}(?:\.[0-9]+)? *(?:h|min))"), _clock),
    (re.compile(r"(?:at )?shift start"), _shift),
    (re.compile(r"after (?P<event>[^\W\d][\w -]*)"), _after),
)
_VAGUE = frozenset({"sometimes", "often", "regularly", "always", "rarely", "random"})
_WORDS = (
    "first",
    "last",
    "piece",
    "each",
    "every",
    "bundle",
    "batch",
    "hourly",
    "shift",
    "start",
    "after",
    "then",
)


def _refuse(typed: str, at: int) -> NoReturn:
    if typed.endswith("%"):
        raise TextFault("a share doesn't say which piece is due", at, "Write which one, such as 20th")
    bare = re.fullmatch(r"(?:every )?([0-9]{1,9})", typed)
    if bare:
        number = int(bare[1])
        raise TextFault(f"{typed} of what?", at, f"Write {ordinal(number)}, first {number} pieces or {number} min")
    for found in re.finditer(r"[a-z]+", typed):
        if found[0] in _VAGUE:
            break
        close = near(found[0], _WORDS)
        if close and found[0] not in _WORDS:
            remedy = f"Write {typed[: found.start()]}{close[0]}{typed[found.end() :]}"
            raise TextFault(f"unknown word {found[0]}", at + found.start(), remedy)
    raise TextFault("this says no time for a check", at, "Write such as first piece, then 20th, or hourly")


def ordinal(number: int) -> str:
    """1st, 2nd, 3rd, 4th, 11th ..."""
    if number % 100 in (11, 12, 13):
        return f"{number}th"
    return f"{number}{ {1: 'st', 2: 'nd', 3: 'rd'}.get(number % 10, 'th') }"
