"""Texts as the template takes them, and type sizes from capital heights."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.model import ATKINSON, face_file
from builder.rendering.sheet_text import points, sheet_text, spelt, spoken_letters, type_sizes

CAPITAL_OF_EM = 0.668  # the face\'s own capital height, read from its OS/2 table


def test_capital_height_is_the_faces_own() -> None:
    from fontTools.ttLib import TTFont

    for weight in (400, 700):
        face = TTFont(face_file(ATKINSON, weight))
        assert face["OS/2"].sCapHeight / face["head"].unitsPerEm == CAPITAL_OF_EM


@given(st.floats(min_value=1, max_value=30))
def test_points_give_at_least_the_capital_asked_for(capital: float) -> None:
    printed = points(capital) * 25.4 / 72 * CAPITAL_OF_EM
    assert capital <= printed <= capital * 1.003


@given(st.floats(min_value=0.5, max_value=30))
def test_no_type_is_under_the_least_capital(capital: float) -> None:
    sizes = type_sizes(capital)
    assert min(sizes.values()) >= points(2.5)
    assert sizes["main"] >= points(capital)


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("1⅛ in", "1 1/8 in"),
        ("⅞", "7/8"),
        ("5″", '5"'),
        ("a✔", "a✓"),
        ("3\u202fmm", "3\u00a0mm"),
        ("½ in", "½ in"),
    ],
)
def test_letters_the_face_lacks_are_spelt(text: str, expected: str) -> None:
    assert spelt(text) == expected


def test_symbols_the_face_lacks_are_cut_out_to_be_drawn() -> None:
    made = sheet_text("Trim → **3 mm** ✓", spoken_letters(), marked=True)
    assert made["runs"] == [
        ["text", "Trim "],
        ["symbol", "→"],
        ["text", " "],
        ["strong", "3 mm"],
        ["text", " "],
        ["symbol", "✓"],
    ]


def test_asterisks_of_a_text_that_is_no_markdown_stay() -> None:
    assert sheet_text("2 * 3 **x**", spoken_letters())["runs"] == [["text", "2 * 3 **x**"]]


@pytest.mark.parametrize("letter", "−±×°½¼¾–·’“”…Ωµ")
def test_both_faces_have_the_letters_measures_need(letter: str) -> None:
    letters = spoken_letters()
    assert letters.regular.has(letter)
    assert letters.bold.has(letter)


def test_bold_is_measured_wider() -> None:
    letters = spoken_letters()
    assert sheet_text("needle down", letters, bold=True)["em"] > sheet_text("needle down", letters)["em"] > 4
