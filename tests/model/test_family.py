"""Families of letters: which a language takes, and that it has every letter the demo shows."""

from __future__ import annotations

import pytest

from builder.model import (
    ATKINSON,
    BOLD,
    FAMILIES,
    capital_mm,
    face_file,
    face_table,
    family_of,
    missing_letters,
    speaking,
    tongue_of,
    translations,
)
from builder.model.wording import wordings
from builder.pipeline import check_plant
from tests.pages.conftest import DEMO


@pytest.mark.parametrize(
    ("code", "name"),
    [
        ("en", "Atkinson Hyperlegible"),
        ("es", "Atkinson Hyperlegible"),
        ("pt-BR", "Atkinson Hyperlegible"),
        ("pl", "Atkinson Hyperlegible"),
        ("vi", "Be Vietnam Pro"),
        ("tr", "Be Vietnam Pro"),
        ("ar", "IBM Plex Sans Arabic"),
        ("ur", "IBM Plex Sans Arabic"),
        ("th", "Sarabun"),
        ("hi", "Mukta"),
        ("km", "Noto Sans Khmer"),
    ],
)
def test_a_language_takes_the_first_family_with_its_letters(code: str, name: str) -> None:
    assert family_of(code).name == name


@pytest.mark.parametrize("family", FAMILIES, ids=lambda one: one.slug)
def test_both_weights_are_static_faces(family: object) -> None:
    """And the bold is another one: a variable font in a figure prints in its default weight."""
    from fontTools.ttLib import TTFont

    for weight in (400, BOLD):
        with TTFont(face_file(family, weight)) as font:  # type: ignore[arg-type]
            assert "fvar" not in font
    regular, bold = (face_table(family, weight) for weight in (400, BOLD))  # type: ignore[arg-type]
    assert regular.advances[ord("m")] != bold.advances[ord("m")]


def test_no_letter_of_the_demo_is_missing_in_any_language() -> None:
    """The plant's texts and the program's own words, in every language they are said in."""
    model = check_plant(DEMO).linked.model  # type: ignore[union-attr]
    drawn = "→←↑↓↔▶✓✗⌀⅛⅜⅝⅞⅓⅔"  # by the program itself, or spelt
    assert missing_letters("".join(one.text for one in wordings(model)), "en").strip(drawn) == ""
    for one in translations(model):
        said = "".join((*one.words.values(), *tongue_of(one.code).words.values()))
        assert missing_letters(said, one.code).strip(drawn) == "", one.code


def test_a_script_without_capitals_stands_no_lower_than_capitals_would() -> None:
    from builder.model import em_for_capitals

    for code in ("th", "hi", "ar", "km"):
        table = face_table(family_of(code))
        own, latin = em_for_capitals(capital_mm(600), table), em_for_capitals(capital_mm(600), face_table(ATKINSON))
        assert own >= 0.9 * latin


def test_letters_nobody_has_are_named() -> None:
    assert missing_letters("seam 縫 a", "en") == "縫"
    with speaking(tongue_of("vi")):
        assert missing_letters("đường may", "vi") == ""
