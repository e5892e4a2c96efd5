"""Text as the search compares it: folded letters and the words in them.

A page folds what is typed by the table made here, not by the browser's own, so both sides always agree
(`themes/*/site/assets/search.js` is the other half, word for word).
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterable, Iterator, Mapping
from functools import cache, lru_cache
from itertools import pairwise

# Letters that are no letter with a mark, but are typed as one by who hasn't got them.
_OTHER = {"đ": "d", "ð": "d", "ħ": "h", "ı": "i", "ĸ": "k", "ł": "l", "ŋ": "n", "ø": "o", "ŧ": "t", "ß": "ss"}
_OTHER |= {"æ": "ae", "œ": "oe", "þ": "th", "ς": "σ", "ى": "ي", "ة": "ه", "ـ": "", "٫": ".", "⁄": "/", "∕": "/"}

_PAIRED = ((0x0E00, 0x0EFF), (0x1000, 0x109F), (0x1780, 0x17FF), (0x3040, 0x30FF), (0x3400, 0x4DBF), (0x4E00, 0x9FFF))
"""Thai and Lao, Burmese, Khmer, kana, Chinese characters: written without blanks between words."""
_HANGUL, _SURROGATE, _PRIVATE = range(0xAC00, 0xD7A4), range(0xD800, 0xE000), range(0xE000, 0xF900)
_CODE_POINTS = 0x10000
"""Beyond lie historic scripts and pictures, which nobody folds: they are letters as they are."""

_pair = "".join(f"{chr(low)}-{chr(high)}" for low, high in _PAIRED)
_WORD = re.compile(rf"[0-9]+(?:[.,/][0-9]+)+|[{_pair}]+|[^\x00-/:-@\[-`{{-\x7f {_pair}]+")
_PAIR = re.compile(f"[{_pair}]")
_LETTERS_FIGURES = re.compile(r"([^0-9]{1,4})([0-9][0-9.]*)$|([0-9][0-9.]*)([^0-9.]{1,4})$")
_UNIT = 4
"""Letters a unit or a code has at most: a number beside so few is found written together as well, `Tex 70`, `tex70`."""


@cache
def fold_table() -> Mapping[str, str]:
    """What a letter is folded to, where that is not the letter itself: '' for marks, ' ' for what parts words."""
    table = {}
    for code in range(_CODE_POINTS):
        if code in _HANGUL or code in _SURROGATE or code in _PRIVATE:
            continue  # syllables stay whole: a word's first ones are what people type
        letter = chr(code)
        folded = letter.lower() if letter.isascii() else _folded(letter)
        if folded != letter:
            table[letter] = folded
    return table


def _folded(letter: str) -> str:
    if letter in _OTHER:
        return _OTHER[letter]
    if unicodedata.category(letter) == "Cn":
        return letter  # unknown to us; a browser may know it, and must not
    plain = unicodedata.normalize("NFKD", unicodedata.normalize("NFKD", letter).lower())
    return "".join(_piece(piece) for piece in plain)


def _piece(piece: str) -> str:
    category = unicodedata.category(piece)
    if piece in _OTHER:
        return _OTHER[piece]
    if piece.isascii():
        return piece
    if category[0] == "M" or category == "Cf":
        return ""
    if category == "Nd":
        return str(unicodedata.digit(piece))
    return piece if category[0] in "LN" else " "


@cache
def _translation() -> dict[int, str]:
    return str.maketrans(dict(fold_table()))


def fold(text: str) -> str:
    """Lower case, without marks, figures as 0 to 9.

    >>> fold("Đường MAY ½ é")
    'duong may 1/2 e'
    """
    return text.translate(_translation())


def typed_words(query: str) -> list[str]:
    """The words of what is typed: `LBL-10` has two. A script without blanks gives each two neighbours.

    >>> typed_words("Sew 3,2 mm, TEX70!")
    ['sew', '3.2', 'mm', 'tex70']
    """
    return [word for word, _, _ in _spans(fold(query))]


@lru_cache(maxsize=1 << 16)
def found_words(text: str) -> frozenset[str]:
    """Every word a text is found by: its own, and numbers both with and without the few letters beside them.

    >>> sorted(found_words("Tex 70"))
    ['70', 'tex', 'tex70']
    """
    folded = fold(text)
    spans = list(_spans(folded))
    words = {word for word, _, _ in spans}
    for word in tuple(words):
        parts = _LETTERS_FIGURES.match(word)
        if parts is not None:
            words.update(part for part in parts.groups() if part)
    for (one, _, end), (other, start, _) in pairwise(spans):
        if folded[end:start] in ("", " ", "-") and _belong(one, other):
            words.add(one + other)
    return frozenset(words)


def _belong(one: str, other: str) -> bool:
    """Whether one is a number and the other a unit or the letters of a code."""
    figures = _is_figure(one[-1]), _is_figure(other[0])
    return (figures == (True, False) and len(other) <= _UNIT) or (figures == (False, True) and len(one) <= _UNIT)


def _is_figure(letter: str) -> bool:
    return "0" <= letter <= "9"


def _spans(folded: str) -> Iterator[tuple[str, int, int]]:
    """Words of folded text, each with where it begins and ends."""
    for match in _WORD.finditer(folded):
        word, start = match[0], match.start()
        if _PAIR.match(word):
            yield from ((word[at : at + 2], start + at, start + at + 2) for at in range(max(len(word) - 1, 1)))
        else:
            yield word.replace(",", ".") if _is_figure(word[0]) else word, start, match.end()


def fold_data() -> dict[str, object]:
    """The table as a page takes it: letters by what they are folded to, and the ranges without blanks."""
    sources: dict[str, list[str]] = {}
    for letter, folded in fold_table().items():
        sources.setdefault(folded, []).append(letter)
    ranges = {folded: _ranges(map(ord, sources.pop(folded))) for folded in ("", " ")}
    return {
        "letters": {folded: "".join(letters) for folded, letters in sorted(sources.items())},
        "dropped": ranges[""],
        "gaps": ranges[" "],
        "paired": _pair,
    }


def _ranges(codes: Iterable[int]) -> str:
    """Code points as runs in base 36, each by how far it is from the last one's end, and its length: `lc.34,…`."""
    runs: list[list[int]] = []
    for code in sorted(codes):
        if runs and runs[-1][1] == code:
            runs[-1][1] += 1
        else:
            runs.append([code, code + 1])
    ends = [0, *(end for _, end in runs)]
    return ",".join(
        f"{base36(first - end)}.{base36(last - first)}" for end, (first, last) in zip(ends, runs, strict=False)
    )


def base36(number: int) -> str:
    """A whole number from 0 up in base 36.

    >>> base36(71)
    '1z'
    """
    digits = "0123456789abcdefghijklmnopqrstuvwxyz"
    text = ""
    while True:
        number, digit = divmod(number, 36)
        text = digits[digit] + text
        if not number:
            return text
