"""Text made plain before it is read: blanks, signs, fractions, superscripts in one spelling; exact numbers.

All small grammars read such text and report offsets in it; `read_tidy` moves them back to the text as typed.
"""

from __future__ import annotations

import unicodedata
from collections.abc import Callable, Sequence
from fractions import Fraction
from typing import TypeVar

from builder.errors import TextFault

T = TypeVar("T")

# No dimension needs more; Python itself refuses to read some thousand digits.
_LONGEST = 40

NUMBER = r"(?:[0-9]+[ ]+[0-9]+/[0-9]+|[0-9]+/[0-9]+|[0-9]*\.?[0-9]+)"
"""Pattern of one number without a sign: mixed, fraction, decimal or whole, in text made plain by `tidy`."""

_PLAIN = {"−": "-", "–": "-", "‐": "-", "‑": "-", "″": '"', "”": '"', "“": '"', "…": "..", "⁄": "/", "∕": "/"}


def joined(text: str) -> str:
    """The text with runs of blanks joined and none at the ends."""
    return " ".join(text.split())


def read_tidy(text: str, read: Callable[[str], T]) -> T:
    """Call `read` with the text made plain; a TextFault's offset is moved back to the text as typed."""
    plain, origins = tidy(text)
    if not plain.strip():
        raise TextFault("nothing is written here", 0, "Write a value, or leave the line out")
    if origins is None:
        return read(plain)
    try:
        return read(plain)
    except TextFault as fault:
        offset = origins[min(fault.offset, len(origins) - 1)]
        raise TextFault(fault.message, offset, fault.remedy) from None


def tidy(text: str) -> tuple[str, Sequence[int] | None]:
    """The text in plain characters (blanks, minus, `1/2` for ½, `2` for ²), and where each came from.

    The second is None if no character moved.
    """
    if text.isascii():
        return (text.translate(_BLANKS) if not text.isprintable() else text), None
    letters: list[str] = []
    origins: list[int] = []
    for offset, letter in enumerate(text):
        plain = _plain_letter(letter)
        if len(plain) > 1 and "/" in plain and letters and letters[-1].isdigit():
            plain = " " + plain  # 1½ is one and a half, not 11/2
        letters.extend(plain)
        origins.extend([offset] * len(plain))
    return "".join(letters), origins


_BLANKS = {ord(letter): " " for letter in "\t\n\r\v\f"}


def _plain_letter(letter: str) -> str:
    if letter.isascii():
        return " " if letter.isspace() else letter
    if letter in _PLAIN:
        return _PLAIN[letter]
    plain = unicodedata.normalize("NFKC", letter).replace("⁄", "/")
    return " " if plain.isspace() else plain


def read_number(typed: str, at: int) -> Fraction:
    """The exact value of a number that matches NUMBER. Raises TextFault: zero denominator, endless digits."""
    if len(typed) > _LONGEST:
        raise TextFault("a number with too many digits", at, f"Write at most {_LONGEST} characters")
    if "/" not in typed:
        if "." not in typed:
            return Fraction(int(typed))
        whole, _, decimals = typed.partition(".")
        return Fraction(int(whole + decimals), 10 ** len(decimals))
    whole, _, fraction = typed.rpartition(" ")
    above, below = fraction.split("/")
    if int(below) == 0:
        raise TextFault("a fraction over 0", at + len(typed) - len(below), "Write a number above 0 under the line")
    return Fraction(int(whole or 0) * int(below) + int(above), int(below))


def plain_number(number: Fraction) -> str:
    """An exact number as an engineer would type it: decimals where they end, else a mixed fraction."""
    sign, number = ("-" if number < 0 else ""), abs(number)
    for digits in range(13):
        scaled = number * 10**digits
        if scaled.denominator == 1:
            figures = str(scaled.numerator).zfill(digits + 1)
            return sign + (f"{figures[:-digits]}.{figures[-digits:]}" if digits else figures)
    whole, part = divmod(number, 1)
    return sign + (f"{whole} {part}" if whole else str(part))
