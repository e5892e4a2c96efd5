"""How much room a step of a sheet has for words and photos, as the themes lay it out (`sheets/step.typ`).

Estimates for rules, on the side of saying nothing: what is found too long or too coarse here is so on paper.
"""

from __future__ import annotations

from functools import cache

from builder.model import FontTable, Step, capital_mm, em_for_capitals, load_font_table, text_width

PAPER_WIDTH_MM = {"Letter": 215.9, "A4": 210.0}
EDGE_MM = 12.0
DRILL_HOLE, GUTTER = 3.22, 1.65
"""In capital heights: the number's disc, and what stands between it and the words."""
BETWEEN_MM = 5.0
LEAST_EM = 11
"""Narrower than this, in em of the action line, the words go above the pictures."""
PHOTO_ALONE_MM, PHOTO_BESIDE_FIGURE_MM = 68.0, 44.0
"""Largest height of a photo, without and with a figure above it."""
_REASON = 0.78  # size of a reason over that of the action line
_BOLD, _REGULAR = 700, 400


@cache
def face(weight: int) -> FontTable:
    """Measures of the face sheets are set in."""
    import fontpkg

    return load_font_table(fontpkg.path("atkinson-hyperlegible", weight))


def lines_needed(key: str, text: str, step: Step, paper: str, distance_mm: float) -> float:
    """Lines that a step's `do`, `key` or `why` takes at least; 0 where its letters are not those of the face.

    Without a picture the words have the whole width; with one, half the page, or the whole where half is too narrow.
    """
    letters, capital = face(_BOLD if key == "do" else _REGULAR), capital_mm(distance_mm)
    plain = text.replace("*", "")
    if not letters.has(plain):
        return 0.0
    em = em_for_capitals(capital, letters)
    page = PAPER_WIDTH_MM[paper] - 2 * EDGE_MM
    left = capital * (DRILL_HOLE + GUTTER)
    beside = page / 2 - left - BETWEEN_MM
    width = beside if _has_picture(step) and beside >= LEAST_EM * em else page - left
    return text_width(plain, em * (_REASON if key == "why" else 1), letters) / width


def photo_width_mm(pixels: tuple[int, int], step: Step, paper: str) -> float:
    """Printed width of a photo: half the page, or less where its height would be too much."""
    width, height = pixels
    half = (PAPER_WIDTH_MM[paper] - 2 * EDGE_MM) / 2
    most = PHOTO_BESIDE_FIGURE_MM if step.shows or step.work[0] else PHOTO_ALONE_MM
    return min(half, most * width / height)


def _has_picture(step: Step) -> bool:
    return step.photo is not None or bool(step.shows) or bool(step.work[0])
