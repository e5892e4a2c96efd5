"""The faces figures are lettered in: two static faces of one family, and their measures.

Text inside a figure is set in static faces only, because a variable font inside an SVG prints in its default
weight. Which family a language needs is chosen above this room; the default covers Latin.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path

from builder.model import FontTable, em_for_capitals, load_font_table, text_width

REGULAR, BOLD = 400, 700

# How far letters stand above the capitals (j, quotes, brackets) and below the line (g, p), in capital heights:
# what a text covers on paper. The line height a font recommends is far taller and would waste the space.
_ABOVE_CAPITALS = 0.07
_BELOW_LINE = 0.32


@dataclass(frozen=True, slots=True)
class Family:
    """A family of lettering.

    name : as SVG and CSS call it
    slug : as the package of font files calls it
    """

    name: str
    slug: str


ATKINSON = Family("Atkinson Hyperlegible", "atkinson-hyperlegible")


@lru_cache(maxsize=32)
def face_file(family: Family, weight: int = REGULAR) -> Path:
    """The font file of a family in a weight, 400 or 700. Raises fontpkg's error when it isn't installed."""
    import fontpkg

    return Path(fontpkg.path(family.slug, weight))


@lru_cache(maxsize=32)
def face_table(family: Family, weight: int = REGULAR) -> FontTable:
    """The measures of a family in a weight."""
    return load_font_table(face_file(family, weight))


@dataclass(frozen=True, slots=True)
class Lettering:
    """The texts of one figure: one family, one capital height (mm) for all."""

    family: Family
    cap_mm: float

    def table(self, bold: bool) -> FontTable:
        """Measures of the regular or the bold face."""
        return face_table(self.family, BOLD if bold else REGULAR)

    def em(self, bold: bool) -> float:
        """font-size, mm. Rounded up to 0.001, so that no capital comes out under the height asked for."""
        exact = em_for_capitals(self.cap_mm, self.table(bold))
        return -(-exact * 1000 // 1) / 1000

    def width(self, text: str, bold: bool = False) -> float:
        """Width of a line of text, mm."""
        return _width(text, self, bold)

    @property
    def above(self) -> float:
        """What a line of text covers above its baseline, mm."""
        return self.cap_mm * (1 + _ABOVE_CAPITALS)

    @property
    def below(self) -> float:
        """What a line of text covers below its baseline, mm."""
        return self.cap_mm * _BELOW_LINE

    @property
    def pitch(self) -> float:
        """Baseline to baseline of lines that belong together, mm."""
        return self.cap_mm * 1.55


@lru_cache(maxsize=4096)
def _width(text: str, lettering: Lettering, bold: bool) -> float:
    # The same few words are measured for every place tried.
    return text_width(text, lettering.em(bold), lettering.table(bold))
