"""Chlorinated polymers by name."""

from __future__ import annotations

import pytest

from builder.model import chlorinated


@pytest.mark.parametrize(
    "words",
    [
        "PVC",
        "polyester, PVC coated",
        "Vinyl",
        "polyvinyl chloride",
        "neoprene 3 mm",
        "Polychloroprene",
        "CPVC",
        "chlorosulfonated polyethylene",
        "PVDC film",
        "vinyl-coated polyester",
    ],
)
def test_chlorinated_is_found(words: str) -> None:
    """Common practice, no source: trade names of chlorinated polymers."""
    assert chlorinated(words)


@pytest.mark.parametrize(
    "words",
    ["nylon 6.6", "ethylene vinyl acetate", "polyvinyl alcohol", "polyurethane", "PVC-free coating", "polyester"],
)
def test_harmless_names_pass(words: str) -> None:
    """EVA and its kin hold no chlorine."""
    assert chlorinated(words) is None


def test_free_of_one_does_not_hide_another() -> None:
    """A label can't talk a coating away."""
    assert chlorinated("PVC-free print on vinyl")
