"""Fingerprints: what changes them, and what doesn't."""

from __future__ import annotations

import dataclasses
import re
from collections.abc import Mapping
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

import builder.view as view
from builder.pipeline import check_plant, plant_views_of
from builder.view import SheetView, controlled_facts, tag_of

CLASSES = [
    one
    for name in view.__all__
    if dataclasses.is_dataclass(one := getattr(view, name)) and name not in ("PlantViews", "TableRead")
]
Sheets = Mapping[str, SheetView]
HANDLE = "operations/sew-handle-end.yaml"


def sheets(folder: Path) -> dict[str, SheetView]:
    """Sheets of a plant by stem."""
    return {one.stem: one for one in plant_views_of(check_plant(folder)).sheets}


def edited(folder: Path, file: str, old: str, new: str) -> dict[str, SheetView]:
    """Sheets after one edit."""
    path = folder / file
    text = path.read_text(encoding="utf-8")
    assert old in text
    path.write_text(text.replace(old, new, 1), encoding="utf-8")
    return sheets(folder)


def changed(before: Sheets, after: Sheets) -> set[str]:
    """Stems whose method fingerprint differs."""
    return {
        stem
        for stem in before.keys() | after.keys()
        if stem not in before or stem not in after or before[stem].fingerprint != after[stem].fingerprint
    }


@pytest.mark.parametrize("one", CLASSES, ids=lambda one: one.__name__)
def test_every_field_is_marked(one: type) -> None:
    """A field of a view object is controlled or shown; nothing is left to chance."""
    for field in dataclasses.fields(one):
        assert "controlled" in field.metadata, f"{one.__name__}.{field.name}"


@pytest.mark.parametrize("one", CLASSES, ids=lambda one: one.__name__)
def test_view_objects_are_frozen(one: type) -> None:
    """A view object is a value."""
    assert one.__dataclass_params__.frozen  # type: ignore[attr-defined]


def test_a_float_can_not_be_controlled() -> None:
    """Two equal formulas differ in the last digit."""
    with pytest.raises(TypeError):
        controlled_facts({"length": 3.2})


def test_typography_of_blanks_does_not_count() -> None:
    """Runs of blanks are joined, letters composed."""
    assert controlled_facts("a  b\n c") == controlled_facts("a b c")
    assert controlled_facts("e\u0301") == controlled_facts("\u00e9")


@pytest.mark.parametrize(
    ("file", "old", "new"),
    [
        (HANDLE, "revision: C", "revision: D"),
        (HANDLE, "date: 2026-10-12", "date: 2026-11-02"),
        (HANDLE, "recorded by: [E2, L1]", "recorded by: [E3]"),
        (HANDLE, "code: HND-20", "code: HND-21"),
        (HANDLE, "time: turn-over", "time: 9 s"),
        ("plant.yaml", "units: mm", "units: in"),
        ("plant.yaml", "paper: Letter", "paper: A4"),
        ("plant.yaml", "bundle: 20", "bundle: 25"),
    ],
)
def test_what_is_no_method_changes_no_fingerprint(
    file: str, old: str, new: str, demo: Path, demo_sheets: Sheets
) -> None:
    """Codes, dates, times, people, paper and the order of units leave every sheet current."""
    assert changed(demo_sheets, edited(demo, file, old, new)) == set()


@pytest.mark.parametrize(
    ("file", "old", "new", "stems"),
    [
        (HANDLE, "Needle down at every corner.", "Needle down at each corner.", {"sew-handle-end"}),
        (HANDLE, "stitch length: 3.2 mm ± 0.2", "stitch length: 3.2 mm ± 0.1", {"sew-handle-end"}),
        (HANDLE, "class: major", "class: minor", {"sew-handle-end"}),
        (HANDLE, "every: first piece, then 20th", "every: first piece, then 10th", {"sew-handle-end"}),
    ],
)
def test_a_method_change_changes_its_sheet(
    file: str, old: str, new: str, stems: set[str], demo: Path, demo_sheets: Sheets
) -> None:
    """Key points, settings, faults and check plans are the method."""
    assert changed(demo_sheets, edited(demo, file, old, new)) == stems


def test_a_moved_hole_changes_the_sheets_that_show_it(demo: Path, demo_sheets: Sheets) -> None:
    """Geometry shown is the method; sheets that don't show the hole stay current."""
    before = demo_sheets
    after = edited(demo, "parts/roll-back.yaml", "pitch: 16 mm", "pitch: 18 mm")
    assert "sew-handle-end" in changed(before, after)
    assert "cut-strap-webbing" not in changed(before, after)


def test_a_new_size_leaves_every_old_size_current(demo: Path, demo_sheets: Sheets) -> None:
    """The sheet is a new issue, the rows of the old sizes keep their codes."""
    before = demo_sheets["sew-handle-end"]
    size = "  L: {roll-back.width: 480 mm, roll-back.height: 320 mm}"
    after = edited(
        demo, "products/tool-roll.yaml", size, f"{size}\n  XL: {{roll-back.width: 520 mm, roll-back.height: 340 mm}}"
    )
    rows = {row.size: row.fingerprint for row in after["sew-handle-end"].sizes}
    assert after["sew-handle-end"].fingerprint != before.fingerprint
    assert {row.size: row.fingerprint for row in before.sizes}.items() <= rows.items()
    assert "XL" in rows


def test_a_changed_size_changes_only_its_own_row(demo: Path, demo_sheets: Sheets) -> None:
    """M stays current when L grows."""
    before = {row.size: row.fingerprint for row in demo_sheets["sew-handle-end"].sizes}
    after = edited(demo, "products/tool-roll.yaml", "roll-back.width: 480 mm", "roll-back.width: 490 mm")
    rows = {row.size: row.fingerprint for row in after["sew-handle-end"].sizes}
    assert rows["M"] == before["M"]
    assert rows["L"] != before["L"]


@given(st.binary(min_size=32, max_size=32))
def test_tag_has_its_form(digest: bytes) -> None:
    """Eight signs and a check sign, none of them I, L, O or U."""
    assert re.fullmatch(r"[0-9A-HJKMNP-TV-Z]{4} [0-9A-HJKMNP-TV-Z]{4} [0-9A-HJKMNP-TV-Z]", tag_of(digest.hex()))


@given(st.integers(0, 2**40 - 1), st.integers(0, 7), st.integers(1, 31))
def test_check_sign_catches_one_wrong_sign(number: int, place: int, change: int) -> None:
    """Any single wrong sign gives another check sign."""
    wrong = number ^ (change << (5 * place))
    assert tag_of(f"{number:010x}")[-1] != tag_of(f"{wrong:010x}")[-1]


@given(st.lists(st.integers(0, 31), min_size=8, max_size=8), st.integers(0, 7), st.integers(0, 7))
def test_check_sign_catches_two_signs_swapped(signs: list[int], one: int, other: int) -> None:
    """Unless they are the same sign."""
    swapped = list(signs)
    swapped[one], swapped[other] = swapped[other], swapped[one]
    tags = [
        tag_of(f"{sum(sign << (5 * i) for i, sign in enumerate(reversed(each))):010x}") for each in (signs, swapped)
    ]
    assert (tags[0][-1] == tags[1][-1]) == (signs[one] == signs[other])
