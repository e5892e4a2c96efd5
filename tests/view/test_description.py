"""A figure in words, from its geometry: sizes, places, begin and end, dimensions; the same in every language."""

from __future__ import annotations

from pathlib import Path

import pytest

from builder.model import speaking, tongue_of
from builder.pipeline import check_plant, plant_views_of
from builder.view import FigureView, described

DEMO = Path(__file__).resolve().parents[2] / "instructions"


@pytest.fixture(scope="module")
def figures() -> dict[str, FigureView]:
    """Figures of steps by sheet and step."""
    sheets = plant_views_of(check_plant(DEMO)).sheets
    return {f"{one.stem} {step.name}": step.figure for one in sheets for step in one.steps if step.figure is not None}


def test_a_seam_has_its_place_its_length_and_its_ends(figures: dict[str, FigureView]) -> None:
    said = described(figures["join-bar-ends sew-left"])
    assert said[0] == "What is drawn is 274 mm wide and 474 mm high."
    assert "Worked now: seam at the right, 394 mm long." in said
    assert "It begins at the top right and ends at the bottom right." in said
    assert "Worked to: 7 mm ± 1 (0.28 in ± 0.03)." in said


def test_a_closed_path_ends_where_it_began(figures: dict[str, FigureView]) -> None:
    said = described(figures["bind-edge bind"])
    assert "Worked now: binding all round, 368 mm by 264 mm." in said
    assert "It begins at the bottom and ends where it began." in said


def test_a_detail_says_that_it_is_one(figures: dict[str, FigureView]) -> None:
    said = described(figures["sew-handle-end box"])
    assert said[0].startswith("A cutting of it is drawn large: ")
    assert "Worked now: box seam in the middle, 32 mm by 32 mm." in said


def test_what_is_ringed_and_named_has_its_place(figures: dict[str, FigureView]) -> None:
    said = " ".join(described(figures["sew-handle-end lay"]))
    assert "Ringed: at the top right; at the bottom right; at the bottom right." in said
    assert "handle notch, at the top right" in said


def test_every_figure_of_a_step_is_described_in_every_language(figures: dict[str, FigureView]) -> None:
    for code in ("en", "es", "vi", "ar"):
        with speaking(tongue_of(code)):
            for name, figure in figures.items():
                said = described(figure)
                assert said, name
                assert all("{" not in one and "None" not in one for one in said), said
