"""How often a step is done, in words."""

from __future__ import annotations

import pytest

from builder.model import Step
from builder.view.time_words import often


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


def test_work_inside_a_machine_run_says_so() -> None:
    """So that nobody waits for the machine first."""
    step = Step.model_validate({"step": "a", "do": "Band them.", "per": "bundle", "during": "cut"})
    assert often(step) == "Every bundle, while it runs"
