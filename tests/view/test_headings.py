"""Columns of the sizes table, on the sheets of the demo."""

from __future__ import annotations

from builder.model import PlantModel
from builder.pipeline import check_plant
from builder.view.headings import outlined_by
from tests.view.test_sheets import DEMO, views


def test_no_two_columns_say_the_same() -> None:
    """A column equal to another in every size tells nothing."""
    for sheet in views().sheets:
        columns = list(zip(*(row.values for row in sheet.sizes), strict=True))
        assert len(columns) == len(set(columns)), sheet.stem


def test_the_piece_comes_before_what_is_placed_on_it_and_no_notch_is_listed() -> None:
    """The panel's width and height are found with a rule; a notch's place is the drawing's and the cutter's."""
    sheet = next(one for one in views().sheets if one.stem == "cut-bar-panels")
    assert sheet.size_names[:2] == ("Bar bag, panel, width", "Bar bag, panel, height")
    assert not [name for one in views().sheets for name in one.size_names if "notch" in name]


def test_a_sub_assembly_is_as_large_as_its_lowest_layer() -> None:
    """Through all levels; a part with an outline is its own."""
    checked = check_plant(DEMO)
    assert checked.linked is not None
    model: PlantModel = checked.linked.model
    assert outlined_by("hanger-rows", model) == "board-face"
    assert outlined_by("board-face", model) == "board-face"
