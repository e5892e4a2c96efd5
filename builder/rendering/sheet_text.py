"""Text as a sheet's template takes it: runs, drawable symbols, and type sizes from capital heights.

Not here: what a sheet says (view) and where it stands (the theme's templates).
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass
from functools import cache, lru_cache
from typing import Any

from builder.model import BOLD, Family, FontTable, em_for_capitals, face_table, spoken_family, text_width
from builder.rendering.markdown import runs

LEAST_CAPITAL_MM = 2.5
"""No capital on a sheet is lower than this, page numbers included."""

_POINTS_A_MM = 72 / 25.4
_SPARE = 1.002  # PDF numbers are rounded; a hair above keeps the measured capital at or over the promised one.

# The font has no glyph for these. Those of the first table are drawn by the template, as inline pictures.
_DRAWN = "→←↑↓↔▶✓✗⌀"
_SAME_AS = {"✔": "✓", "✘": "✗", "∅": "⌀", "►": "▶", "⟶": "→"}
_SPELT = {
    "⅛": "1/8",
    "⅜": "3/8",
    "⅝": "5/8",
    "⅞": "7/8",
    "⅓": "1/3",
    "⅔": "2/3",
    "′": "'",
    "″": '"',
    "\u2011": "-",
    "\u2007": "\u00a0",
    "\u2009": "\u00a0",
    "\u202f": "\u00a0",
}
_FRACTION_AFTER_DIGIT = re.compile(r"(?<=\d)(?=[⅛⅜⅝⅞⅓⅔])")
_REPLACED = re.compile("|".join(map(re.escape, (*_SAME_AS, *_SPELT))))
_NO_WIDTH = {0x2066: None, 0x2069: None}  # what keeps a value in its order where lines run from right to left
_SYMBOL_EM = 0.68  # a drawn symbol is a square as high as a capital
_SYMBOL = re.compile(f"([{_DRAWN}])")

SheetText = dict[str, Any]
"""`runs`: a list of kind and content, the kind being text, strong, em, or symbol (a character the template draws);
`em`: width on one line, in em."""


def points(capital_mm: float) -> float:
    """The type size, in points, at which a capital stands `capital_mm` high. The only such conversion.

    In the family of the language spoken now.
    capital_mm : > 0
    >>> round(points(3.5), 1)
    14.9
    """
    return round(em_for_capitals(capital_mm, face_table(spoken_family())) * _POINTS_A_MM * _SPARE, 3)


def type_sizes(capital_mm: float) -> dict[str, float]:
    """Type sizes in points by use, for a sheet whose action line needs capitals of `capital_mm`.

    small : labels, footer; body : tables, reasons; setting : values of the settings; main : what must be read at
    the machine;
    number : in the drill hole; title : the sheet's title. None is under LEAST_CAPITAL_MM.
    """
    least = LEAST_CAPITAL_MM * 1.01
    main = max(capital_mm, least)
    return {
        "small": points(least),
        "body": points(max(least, min(0.78 * main, 3.2))),
        "main": points(main),
        "setting": points(max(least, min(0.88 * main, 3.8))),
        "number": points(1.08 * main),
        # A title at the head is read once, close by: it leads, but need not grow with a far reading distance.
        "title": points(max(main, min(1.45 * main, 5.6))),
    }


@dataclass(frozen=True, slots=True, eq=False)
class Letters:
    """The faces a sheet is set in, to know how wide a text comes out before it is set."""

    regular: FontTable
    bold: FontTable

    def em(self, kind: str, content: str, bold: bool) -> float:
        """Width of a run of text in em of its type size; kerning left out, so at most a little too wide."""
        if kind == "symbol":
            return _SYMBOL_EM
        content = content.translate(_NO_WIDTH)
        return text_width(content, 1.0, self.bold if bold or kind == "strong" else self.regular)


def spoken_letters() -> Letters:
    """The faces of the language spoken now: those figures are lettered in."""
    return _letters(spoken_family())


@cache
def _letters(family: Family) -> Letters:
    return Letters(face_table(family), face_table(family, BOLD))


@lru_cache(maxsize=32768)
def sheet_text(text: str, letters: Letters, *, bold: bool = False, marked: bool = False) -> SheetText:
    """A text as the template takes it; share it, don't change it.

    bold : is it set in bold throughout?    marked : is it Markdown (emphasis only), or are its asterisks its own?
    """
    source = runs(text) if marked else (("text", text),)
    found = [[kind, content] for kind, content in _with_symbols(source)]
    return {"runs": found, "em": round(sum(letters.em(kind, content, bold) for kind, content in found), 4)}


def _with_symbols(source: Iterable[tuple[str, str]]) -> Iterable[tuple[str, str]]:
    """Runs with what the font lacks spelt out, or cut out as a run of its own for the template to draw."""
    for kind, content in source:
        for piece in _SYMBOL.split(spelt(content)):
            if piece:
                yield ("symbol", piece) if piece in _DRAWN else (kind, piece)


def spelt(text: str) -> str:
    """The text with characters the font lacks written with others: `1⅛ in` as `1 1/8 in`."""
    spaced = _FRACTION_AFTER_DIGIT.sub(" ", text)
    return _REPLACED.sub(lambda match: _SAME_AS.get(match[0]) or _SPELT[match[0]], spaced)
