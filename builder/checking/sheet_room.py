"""How much room a step of a sheet has for words and photos, as the themes lay it out (`sheets/step.typ`).

Estimates for rules, on the side of saying nothing: what is found too long or too coarse here is so on paper.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import cache

from builder.model import (
    FontTable,
    Step,
    capital_mm,
    em_for_capitals,
    load_font_table,
    photo_sizes_mm,
    text_width,
)

DRILL_HOLE, GUTTER = 3.22, 1.65
"""In capital heights: the number's disc, and what stands between it and the words."""
BETWEEN_MM = 5.0
LEAST_EM = 11
"""Narrower than this, in em of the action line, the words go above the pictures."""
_REASON = 0.78  # size of a reason over that of the action line
_BOLD, _REGULAR = 700, 400


@cache
def face(weight: int) -> FontTable:
    """Measures of the face sheets are set in."""
    import fontpkg

    return load_font_table(fontpkg.path("atkinson-hyperlegible", weight))


def lines_needed(key: str, text: str, step: Step, column: float, distance_mm: float) -> float:
    """Lines that a step's `do`, `key` or `why` takes at least; 0 where its letters are not those of the face.

    Without a picture the words have the whole width; with one, half the column, or the whole where half is too narrow.

    column : width of the column of steps, mm
    """
    letters, capital = face(_BOLD if key == "do" else _REGULAR), capital_mm(distance_mm)
    plain = text.replace("*", "")
    if not letters.has(plain):
        return 0.0
    em = em_for_capitals(capital, letters)
    left = capital * (DRILL_HOLE + GUTTER)
    beside = column / 2 - left - BETWEEN_MM
    width = beside if _has_picture(step) and beside >= LEAST_EM * em else column - left
    return text_width(plain, em * (_REASON if key == "why" else 1), letters) / width


def photo_widths_mm(shown: Sequence[tuple[float, float]], step: Step, column: float) -> list[float]:
    """Printed width of each picture of a step. shown : width and height of what each shows, in any unit"""
    beside_figure = bool(step.shows or step.work[0])
    return [width for width, _ in photo_sizes_mm([wide / high for wide, high in shown], beside_figure, column)]


def _has_picture(step: Step) -> bool:
    return step.photo is not None or bool(step.shows) or bool(step.work[0])
