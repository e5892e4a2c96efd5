"""Pictures as view objects: crops worked out, names of files, and what makes the method another one."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction
from pathlib import Path

import pytest

from builder.pipeline import check_plant, plant_views_of
from builder.view import Photo, SheetView

HANDLE = "operations/sew-handle-end.yaml"


def sheet(folder: Path) -> SheetView:
    return next(one for one in plant_views_of(check_plant(folder)).sheets if one.operation == "sew-handle-end")


def test_marks_are_places_in_what_is_shown(demo_sheets: Mapping[str, SheetView]) -> None:
    """The demo's pair: cropped to 20 to 80 % across and 12 to 94 % down."""
    right, wrong = next(step for step in demo_sheets["sew-handle-end"].steps if step.name == "look").photos
    assert (right.verdict, wrong.verdict) == ("right", "wrong")
    ring = right.marks[0]
    assert ring.points == (
        (
            (Fraction(71, 100) - Fraction(20, 100)) / Fraction(60, 100),
            (Fraction(254, 1000) - Fraction(12, 100)) / Fraction(82, 100),
        ),
    )
    assert ring.size == Fraction(13, 100) / Fraction(60, 100)
    assert wrong.legend == ((1, "loop of loose thread"),)
    assert right.height_mm == wrong.height_mm
    assert right.width_mm + wrong.width_mm + 4 <= 95.95 + 1e-9
    assert right.width_mm / right.height_mm == pytest.approx(1600 * 0.6 / (1200 * 0.82))


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ("ring: [69 %, 28.5 %], size: 16 %", "ring: [69 %, 28.6 %], size: 16 %"),
        ("size: 16 %, says: open", "size: 16 %, says: gaping"),
        ("says: loop of loose thread", "says: loop"),
        ("crop: [[20 %, 12 %], [80 %, 94 %]]", "crop: [[21 %, 12 %], [80 %, 94 %]]"),
        ("- {ring: [69 %", "- {blur: [[30 %, 30 %], [40 %, 40 %]]}\n          - {ring: [69 %"),
    ],
)
def test_callouts_crops_and_hidden_areas_are_the_method(
    demo: Path, demo_sheets: Mapping[str, SheetView], old: str, new: str
) -> None:
    before = demo_sheets["sew-handle-end"].fingerprint
    path = demo / HANDLE
    text = path.read_text(encoding="utf-8")
    assert old in text
    path.write_text(text.replace(old, new, 1), encoding="utf-8")
    assert sheet(demo).fingerprint != before


def test_a_caption_is_no_method(demo: Path, demo_sheets: Mapping[str, SheetView]) -> None:
    before = demo_sheets["sew-handle-end"].fingerprint
    path = demo / HANDLE
    path.write_text(path.read_text(encoding="utf-8").replace("stitches even (rendered)", "even (rendered)"))
    assert sheet(demo).fingerprint == before


def test_other_pixels_are_another_file() -> None:
    plain = Photo("5f" * 32, "A hem.", "photos/a.jpg")
    cropped = Photo("5f" * 32, "A hem.", "photos/a.jpg", crop=(Fraction(0), Fraction(0), Fraction(1, 2), Fraction(1)))
    hidden = Photo(
        "5f" * 32, "A hem.", "photos/a.jpg", hidden=((Fraction(0), Fraction(0), Fraction(1, 2), Fraction(1)),)
    )
    assert plain.name == plain.digest
    assert len({plain.name, cropped.name, hidden.name}) == 3
