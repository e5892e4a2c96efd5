"""How often a step is done, in words."""

from __future__ import annotations

from fractions import Fraction

import pytest

from builder.model import Step, StepTime
from builder.view.time_words import often, seconds_words


@pytest.mark.parametrize(
    ("per", "words"),
    [
        ("piece", ""),
        ("20 pieces", "Every 20 pieces"),
        ("bundle", "Every bundle"),
        ("batch", "Every batch"),
        ("2 times a piece", "2 times a piece"),
        ("2 times per 20 pieces", "2 times per 20 pieces"),
    ],
)
def test_a_frequency_in_words(per: str, words: str) -> None:
    """Nothing is said of what is done once a piece."""
    assert often(Step.model_validate({"step": "a", "do": "Do it.", "per": per})) == words


@pytest.mark.parametrize(
    ("per", "shares", "words"),
    [
        ("bobbin", ["1/13"], "At each new bobbin (about every 13 pieces)"),
        ("bobbin", ["1/13", "1/11", "1/13"], "At each new bobbin (about every 11 to 13 pieces)"),
        ("bobbin", ["2/27"], "At each new bobbin (about every 14 pieces)"),
        ("bobbin", ["2/5"], "At each new bobbin (about every 2.5 pieces)"),
        ("bobbin", ["1"], "At each new bobbin (about every piece)"),
        ("bobbin", ["0"], "At each new bobbin"),
        ("bobbin", [], "At each new bobbin"),
        ("2 times a bobbin", ["2/13"], "2 times at each new bobbin (about every 13 pieces)"),
        ("cone", ["10/57463"], "At each new cone (about every 5700 pieces)"),
        ("needle", ["1/160"], "At each new needle (about every 160 pieces)"),
        ("sheet", ["1/22"], "Every sheet (22 pieces)"),
        ("sheet", [], "Every sheet"),
        ("2 times a sheet", ["1/11"], "2 times a sheet (22 pieces)"),
        ("20 pieces", ["1/20"], "Every 20 pieces"),
    ],
)
def test_a_lot_says_what_it_comes_to(per: str, shares: list[str], words: str) -> None:
    """In each size; nothing where it isn't known."""
    step = Step.model_validate({"step": "a", "do": "Do it.", "per": per})
    assert often(step, [Fraction(one) for one in shares]) == words


@pytest.mark.parametrize(
    ("share", "words"),
    [
        (Fraction(1), "18.0 s"),
        (Fraction(0), "18.0 s"),
        (Fraction(1, 13), "18.0 s, 1 in 13"),
        (Fraction(3), "18.0 s, 3 in 1"),
        (Fraction(1894, 25500), "18.0 s, 1 in 13.5"),
    ],
)
def test_a_time_says_in_how_many_pieces_it_comes(share: Fraction, words: str) -> None:
    """Of a share that was calculated, once in so many."""
    time = StepTime("a", 18.0, 0.0, 0.0, 0.0, share, "element")
    assert seconds_words(time) == words


def test_work_inside_a_machine_run_says_so() -> None:
    """So that nobody waits for the machine first."""
    step = Step.model_validate({"step": "a", "do": "Band them.", "per": "bundle", "during": "cut"})
    assert often(step) == "Every bundle, while it runs"
