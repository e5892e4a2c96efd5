"""Widths of text from a table of advances."""

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.model import ATKINSON, FontTable, em_for_capitals, face_file, face_table, load_font_table, text_width

TABLE = FontTable({97: 500, 98: 600, 32: 250}, 1000, 668, 950, 290)


@given(st.text("ab ", max_size=20), st.text("ab ", max_size=20), st.floats(0, 100))
def test_width_of_two_texts_is_the_sum(first: str, second: str, size: float) -> None:
    """Kerning is left out, so widths add up."""
    whole = text_width(first + second, size, TABLE)
    assert whole == pytest.approx(text_width(first, size, TABLE) + text_width(second, size, TABLE))


def test_missing_letters_are_counted_wide() -> None:
    """A letter of some other face takes at least as much room as any of ours."""
    assert text_width("ế", 10, TABLE) == 9.0
    assert not TABLE.has("ế")
    assert TABLE.has("a b")


def test_a_size_below_zero_is_refused() -> None:
    """Neither is one that is no number."""
    for size in (-1.0, float("nan")):
        with pytest.raises(ValueError, match="size"):
            text_width("a", size, TABLE)


def test_capitals_come_out_at_the_height_asked_for() -> None:
    """The em times the cap share is the height asked for."""
    assert em_for_capitals(2.5, TABLE) * 668 / 1000 == pytest.approx(2.5)


def test_the_table_of_a_face_agrees_with_the_file() -> None:
    """Advances, cap height and em as the font file itself gives them."""
    from fontTools.ttLib import TTFont

    font, table = TTFont(face_file(ATKINSON, 700)), face_table(ATKINSON, 700)
    name = font.getBestCmap()[ord("M")]
    assert table.advances[ord("M")] == font["hmtx"][name][0]
    glyph = font["glyf"][font.getBestCmap()[ord("H")]]
    assert table.cap_height == glyph.yMax
    assert (table.units_per_em, table.ascent, table.descent) == (1000, 950, 290)


def test_a_file_that_is_no_font_is_said_so(tmp_path: Path) -> None:
    """Not as a library's error."""
    path = tmp_path / "face.ttf"
    path.write_bytes(b"not a font at all")
    with pytest.raises(ValueError, match=r"face\.ttf"):
        load_font_table(path)
