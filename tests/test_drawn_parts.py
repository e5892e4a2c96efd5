"""Parts whose outline is a drawing, from the file to the sheet."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Any

import ezdxf
import pytest

from builder.finding import Finding
from builder.pipeline import Checked, build_plant, check_plant
from tests.checking.overlay import lay_over

PANEL = """
parts/panel.yaml: |
  part: panel
  title: Panel
  material: cloth
  outline: {drawing: drawings/panel.dxf, layer: CUT, edges: {mouth: {top: 0 mm, centre: 0 mm}}}
  dimensions: {margin: 100 mm}
  features:
    top-notch: {notch: mouth, at: {left: 100 mm}}
    hem-fold: {fold: mouth, inset: 15 mm}
    hem-seam: {seam: mouth, inset: 12 mm}
    snap-place: {hardware: snap, diameter: 12 mm, at: {centre: 0 mm, bottom: 30 mm}}
"""
"""The small plant's panel, drawn instead of typed."""

CORNERS = [(50, 20, 0), (350, 20, 0.1), (350, 220, 0), (50, 220, 0)]


def draw(path: Path, add: Callable[[Any], None] | None = None, unit: int = 4, corners: Any = CORNERS) -> None:
    """The panel on the layer CUT, and what else is drawn."""
    document = ezdxf.new()
    document.header["$INSUNITS"] = unit
    space = document.modelspace()
    if corners:
        space.add_lwpolyline(corners, format="xyb", close=True, dxfattribs={"layer": "CUT"})
    space.add_text("PANEL", dxfattribs={"layer": "CUT"})
    if add is not None:
        add(space)
    path.parent.mkdir(exist_ok=True)
    document.saveas(path)


def checked(folder: Path, example: str = PANEL, **drawn: Any) -> Checked:
    """The small plant with the drawing in it."""
    plant = lay_over(example, folder / "plant")
    draw(plant / "drawings" / "panel.dxf", **drawn)
    return check_plant(plant)


def at(found: Finding, folder: Path) -> str:
    """The text a finding points at."""
    line = (folder / "plant" / found.place.file).read_text(encoding="utf-8").splitlines()[found.place.line - 1]
    return line[found.place.column - 1 :]


def test_a_drawn_panel_is_checked_and_drawn_like_a_typed_one(tmp_path: Path) -> None:
    """Its edges by a place and by themselves, its origin at the lower left."""
    plant = checked(tmp_path)
    assert plant.findings == ()
    assert plant.book is not None
    assert plant.linked is not None
    shape = plant.book.shape("panel", plant.linked.dimensions.values)
    assert shape is not None
    assert list(shape.outline.edges) == ["bottom", "right", "mouth", "left"]
    assert shape.bounds[:2] == pytest.approx((0, 0))
    assert shape.bounds[3] == pytest.approx(200)


def test_moving_a_line_is_a_changed_method_and_saving_again_is_not(tmp_path: Path) -> None:
    """The sheets are made anew only where the outline is another one."""
    plant = lay_over(PANEL, tmp_path / "plant")
    path = plant / "drawings" / "panel.dxf"
    draw(path)
    assert build_plant(plant, tmp_path / "out").written is not None
    draw(path, add=lambda space: space.add_line((0, 0), (5, 5), dxfattribs={"layer": "MARK"}))
    again = build_plant(plant, tmp_path / "out")
    assert again.written is not None
    assert again.written.changed == 0
    draw(path, corners=[*CORNERS[:3], (51, 220, 0)])
    moved = build_plant(plant, tmp_path / "out")
    assert moved.written is not None, [one.message for one in moved.checked.findings]
    assert moved.written.changed > 0


def test_a_wrong_file_name_offers_the_near_one(tmp_path: Path) -> None:
    """Like any other name."""
    plant = checked(tmp_path, PANEL.replace("drawings/panel.dxf", "drawings/panell.dxf"))
    assert [one.rule for one in plant.findings] == ["name-unknown"]
    assert "drawings/panel.dxf" in plant.findings[0].remedy


@pytest.mark.parametrize(
    ("drawn", "words", "where"),
    [
        ({"unit": 21}, "number 21", "drawings/panel.dxf"),
        ({"corners": None, "add": lambda space: space.add_line((0, 0), (1, 1))}, "layers with lines: 0", "CUT"),
        ({"corners": None}, "has no lines", "drawings/panel.dxf"),
    ],
)
def test_what_can_not_be_read_is_found_at_its_key(tmp_path: Path, drawn: Any, words: str, where: str) -> None:
    """One finding, and nothing that follows from it."""
    plant = checked(tmp_path, **drawn)
    assert [one.rule for one in plant.findings] == ["drawing-unreadable"]
    assert words in plant.findings[0].message
    assert at(plant.findings[0], tmp_path).startswith(where)


@pytest.mark.parametrize(
    ("corners", "add", "words"),
    [
        (CORNERS, [((60, 30), (70, 30))], "open: it ends at (60, 30) and at (70, 30), 10 mm apart"),
        (CORNERS, [((0, 0), (9, 0)), ((9, 0), (9, 9)), ((9, 9), (0, 0))], "could be the outline"),
        ([(0, 0, 0), (300, 200, 0), (300, 0, 0), (0, 200, 0)], [], "crosses or touches itself at (150, 100)"),
    ],
)
def test_what_is_no_outline_is_found_with_its_coordinates(
    tmp_path: Path, corners: Any, add: list[Any], words: str
) -> None:
    """At the outline of the part."""

    def lines(space: Any) -> None:
        for start, end in add:
            space.add_line(start, end, dxfattribs={"layer": "CUT"})

    plant = checked(tmp_path, corners=corners, add=lines)
    assert [one.rule for one in plant.findings] == ["shape-impossible"]
    assert words in plant.findings[0].message


def test_a_link_out_of_the_plant_is_not_read(tmp_path: Path) -> None:
    """As for photos."""
    plant = lay_over(PANEL, tmp_path / "plant")
    draw(tmp_path / "elsewhere.dxf")
    (plant / "drawings").mkdir()
    (plant / "drawings" / "panel.dxf").symlink_to(tmp_path / "elsewhere.dxf")
    assert "text-link-outside" in {one.rule for one in check_plant(plant).findings}
