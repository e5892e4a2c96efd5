"""How figures are lettered: one family and one capital height for all texts of one, and what they measure.

Which family a language needs is the model's `family`; a figure is lettered in that of the language spoken while it is
drawn.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from builder.drawing.shaping import shape_line
from builder.model import BOLD, REGULAR, Family, FontTable, em_for_capitals, face_table, text_width


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
        return self.cap_mm * (1 + self.family.above)

    @property
    def below(self) -> float:
        """What a line of text covers below its baseline, mm."""
        return self.cap_mm * self.family.below

    @property
    def pitch(self) -> float:
        """Baseline to baseline of lines that belong together, mm."""
        return self.cap_mm * max(1.55, 1.16 + self.family.above + self.family.below)


@lru_cache(maxsize=4096)
def _width(text: str, lettering: Lettering, bold: bool) -> float:
    # The same few words are measured for every place tried.
    if lettering.family.shaped:
        return lettering.em(bold) * shape_line(text, lettering.family, BOLD if bold else REGULAR).width
    return text_width(text, lettering.em(bold), lettering.table(bold))
