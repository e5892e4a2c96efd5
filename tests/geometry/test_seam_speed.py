"""Which measured speed fits a seam."""

from __future__ import annotations

from pathlib import Path

import pytest

from builder.geometry import ShapeBook, measured_speed
from builder.model import Station
from tests.plants import linked

STATION = Station.model_validate(
    {
        "title": "A",
        "kind": "lockstitch",
        "count": "1",
        "distance": "0.6 m",
        "attendance": "constant",
        "seam speeds": [
            {"held": "folder", "smallest radius": "20 mm", "top speed": "1800 st/min", "study": "A"},
            {"held": "folder", "smallest radius": "8 mm", "top speed": "1200 st/min", "study": "B"},
            {"held": "edge stop", "top speed": "3000 st/min", "study": "C"},
        ],
    }
)


@pytest.mark.parametrize(
    ("seam", "study"),
    [
        ("{seam: bottom, inset: 5 mm, held: folder}", "A"),
        ("{seam: [bottom, right], inset: 0.5 mm, held: folder}", "B"),
        ("{seam: [bottom, right], inset: 4 mm, held: folder}", None),
        ("{seam: [bottom, right], inset: 4 mm, held: edge stop}", "C"),
        ("{seam: bottom, inset: 4 mm, held: free hand}", None),
        ("{seam: bottom, inset: 4 mm}", None),
        ("{box: plain, width: 20 mm, height: 20 mm}", None),
    ],
)
def test_first_speed_held_so_and_no_tighter_than_measured(tmp_path: Path, seam: str, study: str | None) -> None:
    """The panel's corners are rounded with 10 mm, less the inset of the seam."""
    found = linked(f"parts/panel.yaml: {{features: {{line: {seam}}}}}", tmp_path)
    book = ShapeBook(found.model.parts, found.model.states, found.dimensions.definitions)
    shape = book.shape("panel", found.dimensions.values)
    assert shape is not None
    speed = measured_speed(shape.features["line"], STATION)
    assert (speed.study if speed is not None else None) == study
