"""Pictures of a wallet that is folded, sewn at its sides and turned right side out, and of its nest."""

from __future__ import annotations

import pytest

from builder.view import FigureView
from tests.drawing.gallery_assemblies import assembly_gallery


@pytest.fixture(scope="module")
def figures() -> dict[str, FigureView]:
    return {one.name: one for one in assembly_gallery()}


def areas(figure: FigureView) -> list[tuple[str, tuple[float, ...]]]:
    """Fill and box of each piece of goods, the lowest first."""
    found = []
    for stroke in figure.strokes:
        if stroke.role == "cut edge" and stroke.closed:
            boxes = [one.bounds() for one in stroke.path]
            box = min(b[0] for b in boxes), min(b[1] for b in boxes), max(b[2] for b in boxes), max(b[3] for b in boxes)
            found.append((stroke.fill, tuple(round(one, 3) for one in box)))
    return found


def test_the_part_is_flat_while_it_is_folded_and_folded_afterwards(figures: dict[str, FigureView]) -> None:
    """260 mm high, folded 140 mm up: 120 mm come over, wrong side up, on the rest."""
    assert areas(figures["sew-wallet-3"]) == [("ground", (0, 0, 180, 260))]
    assert areas(figures["sew-wallet-4"]) == [("ground", (0, 0, 180, 140)), ("wrong", (0, 20, 180, 140))]
    assert figures["sew-wallet-4"].side == ""


def test_seams_through_both_layers_are_sewn_once(figures: dict[str, FigureView]) -> None:
    seams = [one for one in figures["sew-wallet-4"].strokes if one.role == "seam"]
    assert len(seams) == 2


def test_turned_it_is_narrower_and_shows_its_right_side(figures: dict[str, FigureView]) -> None:
    """8 mm of each side lie inside, the raw edges 16 mm from where they were."""
    turned = figures["sew-wallet-5"]
    assert areas(turned)[-1] == ("ground", (8, 0, 172, 140))
    assert not any(one.role == "seam" for one in turned.strokes)
    xs = {
        round(end[0], 3)
        for one in turned.strokes
        if one.role == "hidden"
        for line in one.path
        for end in (line.start, line.end)
    }
    assert {16, 164} <= xs
    assert ("turned", "wallet") in turned.facts


def test_the_other_side_shows_the_flap_and_is_marked_as_turned_over(figures: dict[str, FigureView]) -> None:
    back = figures["sew-wallet-6"]
    assert [fill for fill, _ in areas(back)] == ["wrong", "ground"]
    assert back.turned == "over"
    assert all(figures[f"sew-wallet-{number}"].turned == "" for number in (1, 3, 5))


def test_only_the_step_that_warns_marks_where_fingers_stay_out(figures: dict[str, FigureView]) -> None:
    marked = [name for name, one in figures.items() if any(stroke.role == "zone" for stroke in one.strokes)]
    assert marked == ["sew-wallet-4"]
    assert "hands out" in [one.text for one in figures["sew-wallet-4"].callouts]


def test_the_nest_names_counts_and_marks_what_lies_wrong_side_up(figures: dict[str, FigureView]) -> None:
    nest = figures["cut-wallet-1-nest-2"]
    pieces = [one for one in nest.strokes if one.role == "piece"]
    assert [one.fill for one in pieces] == ["ground"] * 18 + ["wrong"] * 6
    assert [one.text for one in nest.callouts] == ["18 × Wallet", "6 × Wallet, wrong side up"]
    assert nest.side.startswith("24 pieces, ")
    assert ("nest 2", "wallet wrong side up count 6 turned 180 angle in deg") in nest.facts
    assert all(isinstance(value, str) for _, value in nest.facts)
