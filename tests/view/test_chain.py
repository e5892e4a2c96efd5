"""Dimensions of rows and grids, of what is turned, and of the gap beside another feature."""

from __future__ import annotations

import math
from pathlib import Path

import pytest

from builder.model import Quantity, parse_quantity
from builder.view.chain import chain_text
from builder.view.dimension_line import dimension_points
from tests.drawing.array_figures import GRIDS, HARDWARE, LABELS, made
from tests.geometry.test_shapes import features

GRID = """{a: {hole: 4 mm, at: {left: 100 mm, bottom: 80 mm}, count: 4, pitch: 25 mm, rows: 3, row pitch: 20 mm,
  stagger: 12 mm, order: back and forth}}"""


def length(text: str) -> Quantity:
    """A length as typed."""
    return parse_quantity(text, "length", True)


@pytest.mark.parametrize(
    ("gaps", "pitch", "first", "words"),
    [
        (4, "25 mm", "mm", "4 × 25 mm = 100 mm (3 15/16 in)"),
        (3, "1 in", "in", "3 × 1 in = 3 in (76.2 mm)"),
        (2, "-15 mm", "mm", "2 × 15 mm = 30 mm (1 3/16 in)"),
        (1, "25 mm", "mm", "25 mm (0.98 in)"),
        (1, "-25 mm", "mm", "25 mm (0.98 in)"),
    ],
)
def test_a_row_is_dimensioned_as_a_whole(gaps: int, pitch: str, first: str, words: str) -> None:
    """Number, pitch and total; the total alone in both units, since it is what is measured."""
    assert chain_text(gaps, length(pitch), first) == words


def test_the_line_of_a_pitch_runs_over_its_row_or_over_one_gap(tmp_path: Path) -> None:
    """The whole for reference, one gap where it is worked to; on the side where no rows follow."""
    built = features(GRID, tmp_path)
    assert dimension_points(built, "a.pitch", whole=True) == ((100, 80), (175, 80), (0, -1))
    assert dimension_points(built, "a.pitch") == ((100, 80), (125, 80), (0, -1))
    assert dimension_points(built, "a.row-pitch", whole=True) == ((100, 80), (100, 120), (-1, 0))


def test_the_line_of_a_row_pitch_begins_at_the_first_of_each_row(tmp_path: Path) -> None:
    """Also where the second row is worked backward; a stagger makes the line no longer."""
    start, end, away = dimension_points(features(GRID, tmp_path), "a.row-pitch") or ((0, 0), (0, 0), (0, 0))
    assert (start, end) == ((100, 80), (112, 100))
    along = (-away[1], away[0])
    assert abs((end[0] - start[0]) * along[0] + (end[1] - start[1]) * along[1]) == pytest.approx(20)


def test_rows_that_go_down_have_their_pitch_above_them(tmp_path: Path) -> None:
    """The dimension line never runs through the rows that follow."""
    down = GRID.replace("row pitch: 20 mm", "row pitch: -20 mm").replace("stagger: 12 mm,", "")
    line = dimension_points(features(down, tmp_path), "a.pitch", whole=True)
    assert line is not None
    assert line[2] == pytest.approx((0, 1))


def test_a_turned_row_is_dimensioned_along_itself(tmp_path: Path) -> None:
    """Not along the part's edge, where nobody could measure it."""
    text = "{a: {hole: 4 mm, at: {left: 100 mm, bottom: 40 mm}, count: 3, pitch: 30 mm, angle: 40 deg}}"
    start, end, away = dimension_points(features(text, tmp_path), "a.pitch", whole=True) or ((0, 0), (0, 0), (0, 0))
    assert math.dist(start, end) == pytest.approx(60)
    assert (end[0] - start[0]) * away[0] + (end[1] - start[1]) * away[1] == pytest.approx(0, abs=1e-9)


@pytest.mark.parametrize(("short", "mm"), [("a.slot", 20), ("a.width", 4)])
def test_a_turned_slot_is_dimensioned_along_itself(short: str, mm: float, tmp_path: Path) -> None:
    """Length and width are measured as it lies."""
    text = "{a: {slot: 20 mm, width: 4 mm, turn: 30 deg, at: {left: 100 mm, bottom: 80 mm}}}"
    start, end, away = dimension_points(features(text, tmp_path), short) or ((0, 0), (0, 0), (0, 0))
    assert math.dist(start, end) == pytest.approx(mm)
    assert (end[0] - start[0]) * away[0] + (end[1] - start[1]) * away[1] == pytest.approx(0, abs=1e-9)


@pytest.mark.parametrize(
    ("at", "short", "gap"),
    [
        ("right of: 12 mm, bottom: 0 mm", "a.right-of", (140, 152)),
        ("left of: 12 mm, bottom: 0 mm", "a.left-of", (88, 100)),
        ("above: 9 mm, left: 0 mm", "a.above", (100, 109)),
        ("below: 9 mm, left: 0 mm", "a.below", (71, 80)),
        ("left: 3 mm, bottom: 0 mm", "a.left", (100, 103)),
    ],
)
def test_a_gap_is_drawn_between_the_two_features(at: str, short: str, gap: tuple[int, int], tmp_path: Path) -> None:
    """From the one it is measured from, not from the part's edge."""
    text = f"""{{zip: {{box: plain, width: 40 mm, height: 20 mm, at: {{left: 100 mm, bottom: 80 mm}}}},
      a: {{box: plain, width: 30 mm, height: 10 mm, at: {{from: zip, {at}}}}}}}"""
    start, end, away = dimension_points(features(text, tmp_path), short) or ((0, 0), (0, 0), (0, 0))
    axis = 0 if away[1] else 1
    assert sorted((start[axis], end[axis])) == pytest.approx(gap)


def test_a_place_is_measured_to_the_first_of_a_row(tmp_path: Path) -> None:
    """`right` of a row is that of its first one, as typed, not of its last."""
    text = "{a: {hole: 4 mm, at: {right: 100 mm, bottom: 40 mm}, count: 3, pitch: 30 mm}}"
    assert dimension_points(features(text, tmp_path), "a.right") == ((200, 40), (300, 40), (0, -1))


def test_a_grid_shows_its_place_and_both_pitches() -> None:
    """Where the first is, how far the others."""
    texts = [line.text for line in made("grids", GRIDS).dimensions]
    assert texts == [
        "110 mm (4.33 in)",
        "60 mm (2.36 in)",
        "3 × 25 mm = 75 mm (2.95 in)",
        "2 × 20 mm = 40 mm (1.57 in)",
    ]


def test_hardware_is_drawn_as_what_it_is() -> None:
    """Look, opening and own shape reach the drawing."""
    strokes = [one for one in made("hardware", HARDWARE).strokes if one.role == "hardware"]
    assert {one.fill for one in strokes} == {"eyelet", "snap", "rivet", "buckle"}
    assert {one.width for one in strokes if one.fill == "eyelet"} == {10}


def test_a_label_carries_its_words_and_its_folds() -> None:
    """For the drawing to write where they fit."""
    strokes = made("labels", LABELS).strokes
    assert [one.text for one in strokes if one.role == "tag"] == ["THORNQUAY", "M", "SIZE M"]
    assert sum(one.role == "tag fold" for one in strokes) == 4
