"""The program's own words in a language, complete, with their placeholders, and values that keep their order."""

from __future__ import annotations

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.model import isolated, named, plain, say, show_date, speaking, spoken_languages, tongue, tongue_of
from tests.model.program_words import program_words

OTHERS = [code for code in spoken_languages() if code != "en"]
_PLACE = re.compile(r"\{\w+\}")


def test_english_is_said_without_a_table() -> None:
    assert tongue().code == "en"
    assert say("page {n} of {m}", n=1, m=2) == "page 1 of 2"


def test_a_brace_in_a_value_is_not_read_again() -> None:
    assert say("{code} {title}", code="{title}", title="x") == "{title} x"


def test_a_language_is_spoken_for_a_stretch_of_work() -> None:
    with speaking(tongue_of("es")):
        assert say("page {n} of {m}", n=1, m=2) == "página 1 de 2"
        with speaking(tongue_of("vi")):
            assert say("Stations") == "Trạm"
        assert say("Stations") == "Puestos"
    assert say("Stations") == "Stations"


def test_a_sentence_a_language_lacks_is_said_in_english() -> None:
    with speaking(tongue_of("es")):
        assert say("No such sentence {n}", n=3) == "No such sentence 3"
    with speaking(tongue_of("fi")):
        assert say("Stations") == "Stations"


@pytest.mark.parametrize("code", OTHERS)
def test_a_language_says_all_the_program_says(code: str) -> None:
    """And nothing the program says no more; each sentence has the places of the English one."""
    words = tongue_of(code).words
    assert program_words() == set(words)
    for english, said in words.items():
        assert sorted(_PLACE.findall(english)) == sorted(_PLACE.findall(said)), english
        assert said.strip(), english


def test_names_are_words_and_may_be_translated() -> None:
    assert plain("handle-box") == "handle box"
    from dataclasses import replace

    with speaking(replace(tongue_of("es"), names={"handle box": "caja del asa"})):
        assert plain("handle-box") == named("handle box") == "caja del asa"


def test_days_are_written_as_the_language_does() -> None:
    assert show_date("2026-11-23") == "2026-11-23"
    with speaking(tongue_of("es")):
        assert show_date("2026-11-23") == "23 nov 2026"
        assert show_date("soon") == "soon"


def test_values_keep_their_order_where_lines_run_from_right_to_left() -> None:
    assert isolated("2 mm ± 0.5") == "2 mm ± 0.5"
    with speaking(tongue_of("ar")):
        assert isolated("2 mm ± 0.5") == "\u20662 mm ± 0.5\u2069"
        assert isolated("ضع على بعد 105 mm من الطرف.") == "ضع على بعد \u2066105 mm\u2069 من الطرف."
        assert isolated("صفحة 1 من 3") == "صفحة 1 من 3"
        assert isolated("&#39;") == "&#39;"


@given(st.text(alphabet="ab1 2±.,()اب&#;", max_size=40))
def test_isolating_only_adds_pairs_of_marks(text: str) -> None:
    with speaking(tongue_of("ar")):
        found = isolated(text)
    assert found.translate({0x2066: None, 0x2069: None}) == text
    assert found.count("\u2066") == found.count("\u2069")
