"""Length and corners of what a step works on."""

from __future__ import annotations

from pathlib import Path

import pytest

from builder.computing.step_bench import bench_of
from builder.computing.step_extent import Extent, step_extent
from builder.geometry import ShapeBook
from tests.plants import linked

EXAMPLE = """
parts/tab.yaml:
  part: tab
  title: Tab
  material: cloth
  outline: {rectangle: {width: 80 mm, height: 25 mm}}
parts/panel.yaml:
  outline: {rectangle: {width: 300 mm, height: 200 mm, corner: 0 mm}}
  features:
    round: {seam: all, inset: 10 mm}
    l-seam: {seam: [left, bottom], inset: 10 mm}
    tab-left: {strip: tab, at: {left: 20 mm, bottom: 20 mm}}
    box: {box: plain, width: 40 mm, height: 30 mm, at: {left: 100 mm, bottom: 100 mm}}
operations/sew-hem.yaml:
  steps:
  - {step: work, do: Work on it., KEYS}
"""


def extent(keys: str, folder: Path) -> Extent:
    """Of a step with those keys in the small plant's hem."""
    found = linked(EXAMPLE.replace("KEYS", keys), folder)
    book = ShapeBook(found.model.parts, found.model.states, found.dimensions.definitions)
    bench = bench_of(found.model, book, "sew-hem", found.dimensions.values)
    assert bench is not None
    return step_extent(next(step for step in bench.operation.steps if step.step == "work"), bench)


@pytest.mark.parametrize(
    ("keys", "length", "corners"),
    [
        ("fold: hem-fold", 300, 0),
        ("sew: hem-seam", 300, 0),
        ("sew: round", 2 * (280 + 180), 4),
        ("sew: box", 140, 4),
        ("fold: [hem-fold, hem-fold]", 600, 0),
        ("place: tab-left", 80, 4),
        ("cut: panel", 1000, 4),
        ("shows: panel", 300, 4),
        ("shows: 'tab, wrong side'", 80, 4),
        ("time: 2 s", 300, 4),
    ],
)
def test_what_counts_as_length_and_corners(keys: str, length: float, corners: float, tmp_path: Path) -> None:
    """Lines by their length, a piece by its longest side; a step that shows nothing works on what is made."""
    found = extent(keys, tmp_path)
    assert found.length_mm == pytest.approx(length)
    assert found.corners == corners
    assert (found.of("length"), found.of("corners")) == (found.length_mm, found.corners)


@pytest.mark.parametrize("keys", ["set: snap-place", "mark: nowhere"])
def test_what_has_no_line_has_no_length(keys: str, tmp_path: Path) -> None:
    """A snap is set at a point; an unknown feature is nowhere."""
    assert extent(keys, tmp_path) == Extent(None, None)
