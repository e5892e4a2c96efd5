"""The word tables of rules: what they find, and what they must leave alone."""

from __future__ import annotations

import pytest

from builder.checking.words.near_machine import deed_in
from builder.checking.words.vague import vague_pattern
from builder.checking.words.work_verbs import work_verbs


@pytest.mark.parametrize(
    "text",
    [
        "Change the needle. Resew from 20 mm before the skip.",
        "Put in a new needle.",
        "Replace the worn lower knife.",
        "Rethread with the foot up.",
        "Thread the needle from the left.",
        "Thread up the machine.",
        "Pull the thread through the eye of the needle.",
        "Clear the jam under the blade.",
        "Oil the hook once a shift.",
        "Brush the hook clean.",
        "Sew a sample, then oil the hook.",
        "Wipe the needle with alcohol, or change it.",
        "Clean the bobbin case, tack a sample.",
        "Blow the die out.",
        "Pull out the end stuck under the blade.",
        "Cut out the thread nest.",
        "Take off the blade guard.",
        "Put your fingers under the presser foot.",
        "Open the finger guard.",
        "Reach behind the guard.",
        "Stop. Find every piece of the needle before you sew on.",
    ],
)
def test_hands_near_the_machine_are_found(text: str) -> None:
    """Each is done with fingers where the machine works."""
    assert deed_in(text, "en") is not None
    assert deed_in(f"Switch off. {text}", "en") is None


@pytest.mark.parametrize(
    "text",
    [
        "Trim both thread ends to 5 mm.",
        "Needle down at every corner.",
        "Hold the thread tail behind the foot.",
        "Thread the bare end through the ring.",
        "Thread two straps through the keeper and close them.",
        "Change to 25 mm webbing. Let it cut the ties.",
        "Cut the tape. Fold its end in.",
        "Let the extraction run ten seconds, then open the lid.",
        "Press the emergency stop. Pull the webbing back with the hook.",
        "Calliper from needle to knife.",
        "Change the bundle ticket beside the needle thread cone.",
        "Remove the piece. Oil stains are scrap.",
        "Open the flap with one hand.",
        "Clean the edge with the cloth.",
        "Take out the thread.",
        "Mark the needle hole.",
        "Lift the panel over the finger guard.",
        "Fit it under the needle.",
        "Brush the hook tape free of fluff.",
        "Remove the paper stuck on the tape.",
        "Clean the edge with the blade of the snips.",
        "Polish the die-cut edge.",
        "Fit the needle-punched pad.",
        "Insert the pad, blade pocket up.",
        "Turn the handwheel for the first stitch.",
    ],
)
def test_harmless_sentences_are_left_alone(text: str) -> None:
    """Words of the trade that only sound like it."""
    assert deed_in(text, "en") is None


def test_it_is_the_blade_in_the_row_of_the_blade() -> None:
    """`Change it` counts where the text is about a needle or blade."""
    assert deed_in("Read the mark. Change it after 400 m.", "en", topic="blade") == ("a needle or blade is changed", 15)
    assert deed_in("Read the mark. Change it after 400 m.", "en", topic="thread") is None


@pytest.mark.parametrize(
    ("language", "text", "word"),
    [
        ("en-GB", "Fold it Neatly.", "Neatly"),
        ("de", "Bei Bedarf nachnähen.", "Bei Bedarf"),
        ("es", "Coser con cuidado.", "con cuidado"),
        ("vi", "Gấp mép cẩn thận.", "cẩn thận"),
    ],
)
def test_vague_words_by_language(language: str, text: str, word: str) -> None:
    """Whole words, whatever their capitals."""
    pattern = vague_pattern(language)
    assert pattern is not None
    found = pattern.search(text)
    assert found is not None
    assert found[0] == word


def test_a_vague_word_inside_another_is_none() -> None:
    """`improperly` is no `properly`; the plant's own words count too."""
    pattern = vague_pattern("en", ("by feel",))
    assert pattern is not None
    assert not pattern.search("improperly unsuitableness")
    assert pattern.search("set it by feel")
    assert vague_pattern("xx") is None


@pytest.mark.parametrize(
    ("text", "kinds"),
    [
        ("Fold the hem and sew it.", ["fold", "sew"]),
        ("Cut the tape. Fold its end in.", ["cut", "fold"]),
        ("Set the snap, then mark the next place.", ["set", "mark"]),
        ("Sew the box, then the cross, without lifting the foot.", ["sew"]),
        ("Sew the hem in one run, backstitch both ends.", ["sew", "sew"]),
        ("Turn over and look along every line.", []),
        ("Sew between fold and tack.", []),
        ("Press both buttons until the ram is up again.", []),
        ("Set the counter back to 0 and sew the seam.", ["sew"]),
        ("Set 80 mm. Let it cut the hook pieces.", []),
        ("Match cut and fold lines.", []),
    ],
)
def test_kinds_of_work_in_a_sentence(text: str, kinds: list[str]) -> None:
    """Only verbs at the start of a clause, with their object behind them."""
    assert [kind for _, kind, _ in work_verbs(text, "en")] == kinds
