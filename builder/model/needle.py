"""A machine needle as the trade writes it: `Nm 110 R`, a blade of 1.10 mm with a round point. This is its reference.

| text | means |
|---|---|
| `Nm 110 R` | size 110, that is 100 times the blade's diameter in mm, and the code of its point |
| `Nm 90 SES` | the same with a light ball point |
| `Nm 100` | a size without a point: whatever point lies in the drawer |
| `Nm 90..110` | of a thread: the sizes it runs in |

Refused, each with its remedy:
- `110 R` : which count? Sizes are written with `Nm`.
- `18`, `size 18` : the old count, written as the Nm beside it on the packet.
- `Nm 11` : a blade of 0.11 mm is a hair.

Point codes are those of the needle trade. A code not in the table is read and nothing is said about it.
Common practice, no source.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache
from typing import NoReturn

from builder.errors import TextFault
from builder.model.plain_text import read_tidy

_NEEDLE = re.compile(r" *nm *(?P<size>[0-9]+)(?: *(?P<point>[a-z][a-z0-9-]*))? *", re.IGNORECASE)
_SIZES = re.compile(r" *nm *(?P<low>[0-9]+) *\.\. *(?:nm *)?(?P<high>[0-9]+) *", re.IGNORECASE)
_BARE = re.compile(r" *(?:size +)?(?P<number>[0-9]+)(?P<rest>(?: +[a-z][a-z0-9-]*)?) *", re.IGNORECASE)

SMALLEST, LARGEST = 40, 400
"""Sizes of machine needles lie between; outside somebody mistyped. Common practice, no source."""

OLD_COUNT: dict[int, int] = {
    8: 60, 9: 65, 10: 70, 11: 75, 12: 80, 14: 90, 16: 100, 18: 110, 19: 120, 20: 125, 21: 130, 22: 140, 23: 160,
    24: 180, 25: 200, 26: 230,
}  # fmt: skip
"""The old count of needle sizes and the Nm printed beside it. Common practice, no source."""


@dataclass(frozen=True, slots=True)
class NeedlePoint:
    """A point. `family`: sharp | round | light ball | ball | cutting, from the thinnest to the one with edges."""

    title: str
    family: str


NEEDLE_POINTS: dict[str, NeedlePoint] = {
    "SPI": NeedlePoint("slim set point", "sharp"),
    "R": NeedlePoint("round point", "round"),
    "RG": NeedlePoint("round point, end slightly rounded", "light ball"),
    "SES": NeedlePoint("light ball point", "light ball"),
    "FFG": NeedlePoint("light ball point", "light ball"),
    "SUK": NeedlePoint("medium ball point", "ball"),
    "FG": NeedlePoint("medium ball point", "ball"),
    "SKF": NeedlePoint("heavy ball point", "ball"),
    "SKL": NeedlePoint("special ball point", "ball"),
    "LR": NeedlePoint("narrow cutting point, twisted right", "cutting"),
    "LL": NeedlePoint("narrow cutting point, twisted left", "cutting"),
    "S": NeedlePoint("narrow spear point", "cutting"),
    "P": NeedlePoint("narrow wedge point", "cutting"),
    "D": NeedlePoint("three-edged point", "cutting"),
    "DIA": NeedlePoint("four-edged point", "cutting"),
}
"""Points by their code. Common practice, no source."""


@dataclass(frozen=True, slots=True)
class Needle:
    """A needle. `size` in Nm; `point` its code in capitals, '' when none was typed."""

    size: int
    point: str

    @property
    def diameter(self) -> Fraction:
        """Of the blade, mm."""
        return Fraction(self.size, 100)

    @property
    def text(self) -> str:
        """As the trade writes it."""
        return f"Nm {self.size} {self.point}".rstrip()


@dataclass(frozen=True, slots=True)
class NeedleSizes:
    """Sizes from `low` to `high` in Nm, both included."""

    low: int
    high: int

    @property
    def text(self) -> str:
        """As the trade writes it."""
        return f"Nm {self.low}..{self.high}"


@lru_cache(maxsize=256)
def parse_needle(text: str) -> Needle:
    """Read `Nm 110 R`. Raises TextFault: no `Nm`, no number, a size no machine needle has."""
    return read_tidy(text, _read_needle)


@lru_cache(maxsize=256)
def parse_needle_sizes(text: str) -> NeedleSizes:
    """Read `Nm 90..110`. Raises TextFault, also for swapped ends."""
    return read_tidy(text, _read_sizes)


def _read_needle(plain: str) -> Needle:
    found = _NEEDLE.fullmatch(plain)
    if found is None:
        _refuse(plain)
    return Needle(_size(found, "size"), (found["point"] or "").upper())


def _read_sizes(plain: str) -> NeedleSizes:
    found = _SIZES.fullmatch(plain)
    if found is None:
        raise TextFault("this asks for needle sizes", _start(plain), "Write two sizes such as Nm 90..110")
    low, high = _size(found, "low"), _size(found, "high")
    if low > high:
        raise TextFault("the larger size stands first", found.start("low"), f"Write Nm {high}..{low}")
    return NeedleSizes(low, high)


def _size(found: re.Match[str], name: str) -> int:
    size = int(found[name])
    if not SMALLEST <= size <= LARGEST:
        blade = f"{size // 100}.{size % 100:02d} mm"
        raise TextFault(
            f"Nm {size} would be a blade of {blade}", found.start(name), f"Sizes go from Nm {SMALLEST} to Nm {LARGEST}"
        )
    return size


def _refuse(plain: str) -> NoReturn:
    found = _BARE.fullmatch(plain)
    number, rest = (int(found["number"]), found["rest"].upper()) if found is not None else (0, "")
    size = OLD_COUNT.get(number, number)
    if found is not None and SMALLEST <= size <= LARGEST:
        raise TextFault("a needle size is written with Nm", _start(plain), f"Did you mean Nm {size}{rest}?")
    raise TextFault("this asks for a needle", _start(plain), "Write its size and its point such as Nm 100 R")


def _start(plain: str) -> int:
    return len(plain) - len(plain.lstrip())
