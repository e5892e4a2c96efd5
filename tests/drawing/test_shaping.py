"""Lines of scripts whose letters join, stack or run from right to left."""

from __future__ import annotations

import pytest

from builder.drawing.font import Lettering
from builder.drawing.raster import outlined
from builder.drawing.shaping import shape_line
from builder.model import BOLD, family_of

ARABIC = family_of("ar")


def names(text: str, code: str) -> list[str]:
    """Names of a line's glyphs from left to right."""
    return [glyph.name for glyph in shape_line(text, family_of(code), 400).glyphs]


def test_arabic_joins_and_runs_from_right_to_left() -> None:
    """Beh at the begin and at the end of a word are other glyphs; the word's first letter stands at the right."""
    joined, alone = names("بب", "ar"), names("ب", "ar")
    assert joined[0] != joined[1]
    assert alone[0] not in joined
    whole = shape_line("اب", ARABIC, 400)
    assert whole.glyphs[-1].name == names("ا", "ar")[0]


def test_figures_in_an_arabic_line_read_from_left_to_right() -> None:
    line = names("طول 25 سم", "ar")
    two, five = names("2", "ar")[0], names("5", "ar")[0]
    assert line.index(two) + 1 == line.index(five)


@pytest.mark.parametrize(("code", "text"), [("km", "ស្រ"), ("hi", "क्ष"), ("th", "น้ำ")])
def test_letters_that_stack_become_fewer_or_other_glyphs(code: str, text: str) -> None:
    alone = [name for letter in text for name in names(letter, code)]
    assert names(text, code) != alone


def test_a_mark_the_family_lacks_comes_from_the_default_one() -> None:
    families = [glyph.family.slug for glyph in shape_line("± ក", family_of("km"), BOLD).glyphs]
    assert families[0] == "atkinson-hyperlegible"
    assert families[-1] == "noto-sans-khmer"


def test_the_width_of_a_line_is_that_of_its_glyphs() -> None:
    lettering = Lettering(ARABIC, 2.8)
    assert 0 < lettering.width("لا") < lettering.width("ل ا")


def test_texts_become_paths_in_the_family_they_name() -> None:
    svg = (
        '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9"><text x="1" y="5" font-size="3" '
        'font-family="{}">{}</text></svg>'
    )
    arabic = outlined(svg.format("IBM Plex Sans Arabic", "بب"))
    assert "<text" not in arabic
    assert arabic != outlined(svg.format("Atkinson Hyperlegible", "bb"))
    assert outlined(svg.format("Be Vietnam Pro", "ế")).count("<path") == 1
