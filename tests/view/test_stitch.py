"""Stitches close up: what the picture shows and says follows from the stitch and its settings."""

from __future__ import annotations

import itertools

import pytest

from builder.drawing import draw
from builder.geometry import STITCHES_DRAWN
from builder.model import STITCHES
from builder.view import FigureView
from builder.view.stitch import Sewn, close_up
from tests.drawing.gallery_stitches import PAPER, SETTINGS, sewn, stitch_gallery, tack


def words(view: FigureView) -> list[str]:
    """All callouts, in one line each."""
    return [" ".join(note.text.split("\n")) for note in view.callouts]


@pytest.mark.parametrize("view", stitch_gallery(), ids=lambda view: str(view.name))
def test_every_word_finds_its_place(view: FigureView) -> None:
    """Drawn at 98 mm with letters of 2.8 mm, no label is left out or lies on a line, and threads can be told apart."""
    drawing = draw(view)
    assert not drawing.problems
    cords = [stroke.width * drawing.scale for stroke in view.strokes if stroke.role == "thread"]
    assert min(cords) > 0.85
    for one, other in itertools.combinations(drawing.texts, 2):
        assert not one.box.overlaps(other.box), (one.text, other.text)


@pytest.mark.parametrize("stitch", STITCHES_DRAWN)
def test_every_thread_is_drawn_and_named_in_the_key(stitch: str) -> None:
    """A sample and a name for each thread, and all of them in the panels."""
    view = close_up(sewn(stitch), "one", PAPER)
    roles = [stroke.fill for stroke in view.strokes if stroke.role == "thread"]
    assert len(set(roles)) == STITCHES[stitch].threads
    assert all(roles.count(role) > 1 for role in set(roles))
    keyed = [note for note in words(view) if "thread" in note or "looper" in note or "needle" in note.split()[1:]]
    assert len([note for note in keyed if not note.startswith("wrong")]) >= STITCHES[stitch].threads


def test_settings_are_said_with_the_picture() -> None:
    """Tension, material, needle, and the stitch length as the dimension."""
    view = close_up(sewn("301"), "one", PAPER)
    assert "needle thread 1.4 N ± 0.2 Bonded nylon thread, tex 70" in words(view)
    assert "bobbin thread 0.25 N ± 0.05" in words(view)
    assert "needle Nm 110 R" in words(view)
    assert [(line.text, line.strong) for line in view.dimensions] == [("3.2 mm ± 0.2", True)]


def test_a_setting_nobody_typed_is_left_out() -> None:
    """No tension, no needle, no stitch length: the threads alone."""
    one = sewn("401", {})
    view = close_up(Sewn(one.stitch, one.settings, {}, "mm"), "one", PAPER)
    assert words(view) == ["face", "back", "cut", "needle thread", "looper thread", "not to scale"]
    assert view.dimensions == ()


def test_the_length_drawn_is_the_length_typed() -> None:
    """Hole to hole, in the figure's own millimetres."""
    line = close_up(sewn("301"), "one", PAPER).dimensions[0]
    assert line.end[0] - line.start[0] == pytest.approx(3.2)


def test_a_bartack_has_its_own_length_and_width() -> None:
    """In true proportion, and no stitch length."""
    view = close_up(tack(), "one", PAPER)
    assert [line.text for line in view.dimensions] == ["12 mm", "2.5 mm"]
    assert [abs(line.end[0] - line.start[0]) for line in view.dimensions] == pytest.approx([12.0, 2.5])
    assert ("bartack", "28 stitches") in view.facts


def test_a_bartack_is_as_long_as_its_outermost_holes_are_apart() -> None:
    """The dimension ends at them; and who counts the stitches is told that there are more."""
    view = close_up(tack(), "one", PAPER)
    line = view.dimensions[0]
    holes = [one.bounds() for stroke in view.strokes if stroke.role == "puncture" for one in stroke.path]
    middles = [(left + right) / 2 for left, _, right, _ in holes[:16]]
    assert (min(middles), max(middles)) == pytest.approx((line.start[0], line.end[0]))
    assert "28 stitches, fewer drawn" in words(view)


@pytest.mark.parametrize("stitch", ["301", "304", "308", "406", "514", "602"])
def test_the_stitch_length_is_taken_from_hole_to_hole(stitch: str) -> None:
    """Both ends of the dimension are holes that are drawn, of a zigzag one on each side."""
    view = close_up(sewn(stitch), "one", PAPER)
    boxes = [one.bounds() for stroke in view.strokes if stroke.role == "puncture" for one in stroke.path]
    middles = [((left + right) / 2, (low + high) / 2) for left, low, right, high in boxes]
    line = view.dimensions[0]
    for end in (line.start, line.end):
        assert any(end == pytest.approx(middle) for middle in middles)


def test_the_alternative_says_how_the_threads_run() -> None:
    """In words made from what holds what."""
    assert "Loops of the needle thread hold: bobbin thread." in close_up(sewn("301"), "one", PAPER).alt
    chain = close_up(sewn("401"), "one", PAPER).alt
    assert "Loops of the looper thread hold: needle thread." in chain
    assert "Loops of the needle thread hold: its own next loop." in close_up(sewn("101"), "one", PAPER).alt


@pytest.mark.parametrize(("stitch", "turns"), [("101", 3), ("504", 1), ("301", 0)])
def test_a_loop_that_turns_back_towards_the_eye_has_a_round_end(stitch: str, turns: int) -> None:
    """It isn't drawn as a thread cut off: a disc lies under its end; where nothing turns back there is none."""
    drawn = [one for one in close_up(sewn(stitch), "one", PAPER).strokes if one.role == "thread"]
    discs = [one for one in drawn if sum(segment.length for segment in one.path) < one.width / 10]
    assert len(discs) >= turns
    assert bool(discs) == bool(turns)


def test_only_the_method_changes_the_facts() -> None:
    """Another stitch length does; another tension is a fact of the settings, not of the picture."""
    first = close_up(sewn("301"), "one", PAPER)
    assert close_up(sewn("301", {**SETTINGS, "top tension": "2 N ± 0.2"}), "one", PAPER).facts == first.facts
    assert close_up(sewn("301", {**SETTINGS, "stitch length": "4 mm"}), "one", PAPER).facts != first.facts


@pytest.mark.parametrize("capital", [2.8, 3.6, 4.7])
def test_larger_letters_take_more_of_the_page(capital: float) -> None:
    """At a longer reading distance the figure grows in height, never in width."""
    drawing = draw(close_up(sewn("504"), "one", (98.0, 62.0, capital)))
    assert drawing.width_mm == 98.0
    assert not drawing.problems
