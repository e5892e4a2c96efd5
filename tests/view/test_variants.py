"""Sizes and colours of a sheet: rows, figures, fingerprints."""

from __future__ import annotations

from pathlib import Path

from builder.pipeline import check_plant, plant_views_of
from builder.view import PlantViews, SheetView
from tests.checking.overlay import lay_over

SIZES = """
products/pouch.yaml:
  sizes: {M: {}, L: {panel.width: 360 mm}, XL: {panel.width: 400 mm}}
"""
COLOURS = """
materials/all.yaml:
  materials:
    cloth-moss: {title: Moss cloth, form: sheet, width: 1.5 m, mass: 250 g/m2}
    thread-moss: {title: Moss thread, form: thread, tex: 70 tex}
products/pouch.yaml:
  colours: {slate: {}, moss: {cloth: cloth-moss, thread-70: thread-moss}}
"""


def views(example: str, folder: Path) -> PlantViews:
    """Views of the small plant with an example laid over it."""
    return plant_views_of(check_plant(lay_over(example, folder)))


def sheet(example: str, folder: Path, stem: str) -> SheetView:
    """One sheet of it."""
    return next(one for one in views(example, folder).sheets if one.stem == stem)


def test_a_sheet_names_the_materials_it_takes_in_each_colour(tmp_path: Path) -> None:
    """The cutter's cloth, the machine's thread; what comes in from elsewhere brings its colour with it."""
    cutting = sheet(COLOURS, tmp_path / "a", "cut-panel")
    sewing = sheet(COLOURS, tmp_path / "b", "sew-hem")
    pressing = sheet(COLOURS, tmp_path / "c", "press-snap")
    assert [(row.colour, row.values) for row in cutting.colours] == [
        ("slate", ("Coated cloth",)),
        ("moss", ("Moss cloth",)),
    ]
    assert sewing.colour_names == ("thread",)
    assert [row.values for row in sewing.colours] == [("Thread, tex 70",), ("Moss thread",)]
    assert pressing.colours == ()


def test_a_setting_that_changes_with_the_colour_points_to_the_colours(tmp_path: Path) -> None:
    """Else every operator sews moss with slate thread."""
    sewing = sheet(COLOURS, tmp_path / "a", "sew-hem")
    plain = sheet("{}", tmp_path / "b", "sew-hem")
    assert next(one.value for one in sewing.settings if one.name == "thread") == "see Colours"
    assert next(one.value for one in plain.settings if one.name == "thread") == "Thread, tex 70"


def test_a_new_colour_is_a_new_sheet_and_leaves_the_old_colours_current(tmp_path: Path) -> None:
    """Each row carries its own fingerprint."""
    third = COLOURS.replace("thread-moss}}", "thread-moss}, rust: {cloth: cloth-moss}}")
    before, after = sheet(COLOURS, tmp_path / "a", "cut-panel"), sheet(third, tmp_path / "b", "cut-panel")
    assert before.fingerprint != after.fingerprint
    assert [row.fingerprint for row in before.colours] == [row.fingerprint for row in after.colours[:2]]
    assert len({row.fingerprint for row in after.colours}) == 3


def test_a_step_has_a_figure_of_each_size_whose_picture_differs(tmp_path: Path) -> None:
    """And none where nothing on it does."""
    sewing = sheet(SIZES, tmp_path / "a", "sew-hem")
    hem = next(step for step in sewing.steps if step.name == "hem")
    look = next(step for step in sewing.steps if step.name == "look")
    assert [size for size, _ in hem.sizes] == ["L", "XL"]
    widths = [figure.bounds[2] - figure.bounds[0] for figure in hem.figures()]
    assert [round(one) for one in widths] == [300, 360, 400]
    assert len({figure.name for figure in hem.figures()}) == 3
    assert look.sizes == ()
    same = sheet("products/pouch.yaml: {sizes: {M: {}, L: {panel.height: 200 mm}}}", tmp_path / "b", "sew-hem")
    assert all(step.sizes == () for step in same.steps)


def test_each_size_has_its_own_pace(tmp_path: Path) -> None:
    """A longer hem takes longer."""
    paces = [int(row.pieces_an_hour) for row in sheet(SIZES, tmp_path / "a", "sew-hem").sizes]
    assert paces == sorted(paces, reverse=True)
    assert paces[0] > paces[-1]


def test_a_product_page_says_what_a_piece_takes_in_each_colour(tmp_path: Path) -> None:
    """The first colour in full, `same` where another takes the same."""
    page = views(COLOURS, tmp_path / "a").products[0]
    rows = {row.titles[0]: row for row in page.variants[0].materials}
    assert page.colours == ("slate", "moss")
    assert rows["Coated cloth"].titles == ("Coated cloth", "Moss cloth")
    assert rows["Snap"].titles == ("Snap", "same")
    assert rows["Snap"].quantity == "1 ×"
    assert rows["Coated cloth"].quantity == "0.060 m²"
