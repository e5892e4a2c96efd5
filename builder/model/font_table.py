"""How wide a text is: a pure function of a table of advance widths, handed in.

Rules, view and drawing share it, so that what `check` foresees and what is drawn agree. No kerning and no
shaping: with the faces used here the printed text comes out at most a little narrower, never wider, and a
layout that fits by this measure fits on paper. Scripts that join or stack letters need a shaper, not this.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache
from io import BytesIO
from pathlib import Path
from types import MappingProxyType

# A letter the face lacks is drawn by some other face, of unknown width: count it as wide as a capital M.
_MISSING_EM = 0.9

ARC_MINUTES = 20.0
"""Least visual angle of capitals on a sheet (NUREG-0700 1.3.1-4: 16 to 24, 20 to 22 preferred; read)."""
LEAST_CAPITAL_MM = 2.5


@dataclass(frozen=True, slots=True)
class FontTable:
    """The measures of one static face, in its own units.

    advances     : code point → advance width
    units_per_em : units in one em
    cap_height   : height of a flat capital such as H
    ascent       : recommended height of a line above the baseline
    descent      : recommended depth of a line below the baseline, positive
    """

    advances: Mapping[int, int]
    units_per_em: int
    cap_height: int
    ascent: int
    descent: int

    def has(self, text: str) -> bool:
        """Can the face draw every letter of the text? Blanks between words included."""
        return all(ord(letter) in self.advances for letter in text)


def text_width(text: str, size: float, table: FontTable) -> float:
    """Width of one line of text, in the unit of `size`.

    w = size × Σ advance / units per em

    size : size of the em (what CSS and SVG call font-size), any unit, >= 0
    Raises ValueError for a size below 0. A letter missing from the table counts 0.9 em.

    >>> text_width("aa", 10, FontTable({97: 500}, 1000, 668, 950, 290))
    10.0
    """
    if not size >= 0:
        raise ValueError(f"A text size can't be {size}.")
    missing = _MISSING_EM * table.units_per_em
    units = sum(table.advances.get(ord(letter), missing) for letter in text)
    return size * units / table.units_per_em


def em_for_capitals(cap_mm: float, table: FontTable) -> float:
    """Size of the em at which capitals stand `cap_mm` high, in the unit of `cap_mm`.

    em = cap × units per em / cap height

    >>> em_for_capitals(3.34, FontTable({}, 1000, 668, 950, 290))
    5.0
    """
    return cap_mm * table.units_per_em / table.cap_height


def capital_mm(distance_mm: float) -> float:
    """Capital height that stands at 20 minutes of arc at a reading distance: 2·D·tan(angle/2), never under 2.5 mm.

    >>> round(capital_mm(600), 2)
    3.49
    """
    return max(2 * distance_mm * math.tan(math.radians(ARC_MINUTES / 60) / 2), LEAST_CAPITAL_MM)


@lru_cache(maxsize=32)
def load_font_table(path: Path | str) -> FontTable:
    """The measures of a static TrueType or OpenType file.

    Raises OSError when it can't be read, ValueError when it holds no capital height to measure by.
    """
    from fontTools.ttLib import TTFont, TTLibError

    data = BytesIO(Path(path).read_bytes())
    try:
        font = TTFont(data, lazy=True)
    except TTLibError as fault:
        raise ValueError(f"{Path(path).name} is not a font file.") from fault
    with font:
        metrics, head, hhea = font["hmtx"].metrics, font["head"], font["hhea"]
        cap_height = int(getattr(font["OS/2"], "sCapHeight", 0))
        if cap_height <= 0:
            raise ValueError(f"{Path(path).name} doesn't say how high its capitals are.")
        advances = {code: int(metrics[name][0]) for code, name in font.getBestCmap().items()}
        return FontTable(
            MappingProxyType(advances), int(head.unitsPerEm), cap_height, int(hhea.ascent), -int(hhea.descent)
        )
