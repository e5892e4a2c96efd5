"""What a cutter follows, in which order, and what a raster takes."""

from __future__ import annotations

import math
import random
from pathlib import Path as FilePath
from types import SimpleNamespace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.computing import (
    contour_time,
    cut_contours,
    cut_length,
    cut_path,
    mark_areas,
    mark_time,
    nearest_next,
    raster_time,
)
from builder.computing.cut_path import lead_start
from builder.computing.cut_time import raster_lines
from builder.geometry import PartShape, Path, ShapeBook, polyline, rectangle
from builder.model import Pace
from tests.plants import linked

LASER = Pace.model_validate(
    {"travel": "800 mm/s", "acceleration": "3000 mm/s2", "corner speed": "30 mm/s", "pierce": "0.1 s"}
)
POINTS = st.lists(st.tuples(st.floats(-500, 500), st.floats(-500, 500)), max_size=25)


@given(POINTS, st.tuples(st.floats(-500, 500), st.floats(-500, 500)))
def test_the_nearest_is_always_next(points: list[tuple[float, float]], at: tuple[float, float]) -> None:
    """Every point once, and each time none that is left lies nearer."""
    order = nearest_next(points, at)
    assert sorted(order) == list(range(len(points)))
    left = set(order)
    for number in order:
        assert math.dist(points[number], at) <= min(math.dist(points[one], at) for one in left) + 1e-9
        left.remove(number)
        at = points[number]


def test_a_sheet_of_ten_thousand_holes_is_ordered_without_looking_at_all_pairs(monkeypatch: pytest.MonkeyPatch) -> None:
    """Far fewer distances than the 50 million of all pairs."""
    rolls = random.Random(1)
    points = [(rolls.uniform(0, 2000), rolls.uniform(0, 1000)) for _ in range(10_000)]
    looked = []

    def counted(one: tuple[float, float], two: tuple[float, float]) -> float:
        looked.append(1)
        return math.hypot(one[0] - two[0], one[1] - two[1])

    monkeypatch.setattr(cut_path, "math", SimpleNamespace(dist=counted, inf=math.inf))
    assert len(set(nearest_next(points, (0, 0)))) == len(points)
    assert len(looked) < 5_000_000


def shape_of(example: str, folder: FilePath, part: str = "panel") -> PartShape:
    """A part of the small plant with an example laid over it; its panel is 300 × 200 mm, corners of 10 mm radius."""
    found = linked(example, folder)
    book = ShapeBook(found.model.parts, found.model.states, found.dimensions.definitions)
    shape = book.shape(part, found.dimensions.values)
    assert shape is not None
    return shape


HOLES = "parts/panel.yaml: {features: {row: {hole: 8 mm, at: {left: 30 mm, bottom: 40 mm}, count: 3, pitch: 60 mm}}}"


def test_holes_come_first_then_notches_then_the_outline(tmp_path: FilePath) -> None:
    """Each the nearest next: holes from the lower left on, the outline last."""
    shape = shape_of(HOLES, tmp_path)
    contours = cut_contours(shape, [shape.features["top-notch"], shape.features["row"]])
    assert len(contours) == 5
    assert [path.closed for path in contours] == [True, True, True, False, True]
    assert [round(path.bounds()[0]) for path in contours[:3]] == [26, 86, 146]
    assert contours[4].length == pytest.approx(Path(shape.outline.segments).length)


def test_a_kerf_goes_outside_the_outline_and_inside_holes(tmp_path: FilePath) -> None:
    """Half of 0.4 mm: 2π·0.2 longer round the convex panel, 2π·0.2 shorter round each hole."""
    shape = shape_of(HOLES, tmp_path)
    hole, *_, outline = cut_contours(shape, [shape.features["row"]], 0.4)
    assert hole.length == pytest.approx(2 * math.pi * (4 - 0.2))
    assert outline.length == pytest.approx(Path(shape.outline.segments).length + 2 * math.pi * 0.2)


def test_a_hole_no_wider_than_the_beam_is_pierced_all_the_same(tmp_path: FilePath) -> None:
    """0.2 mm wide with a kerf of 0.3 mm."""
    shape = shape_of(HOLES.replace("8 mm", "0.2 mm"), tmp_path)
    holes = cut_contours(shape, [shape.features["row"]], 0.3)[:-1]
    assert len(holes) == 3
    assert all(0 < path.length < 0.5 for path in holes)


def test_a_lead_in_comes_from_the_side_of_the_waste(tmp_path: FilePath) -> None:
    """From inside a hole, 3 mm from its edge and 1 mm from its centre; from outside the outline."""
    shape = shape_of(HOLES, tmp_path)
    hole, *_, outline = cut_contours(shape, [shape.features["row"]])
    assert math.dist(lead_start(hole, 3), shape.features["row"].points[0]) == pytest.approx(1)
    assert not shape.outline.contains(lead_start(outline, 3))
    assert shape.outline.distance_to_boundary(lead_start(outline, 3)) == pytest.approx(3)


def test_cut_length_is_that_of_all_contours(tmp_path: FilePath) -> None:
    """The outline and three holes."""
    shape = shape_of(HOLES, tmp_path)
    length = 2 * (280 + 180) + 2 * math.pi * 10 + 3 * math.pi * 8
    assert cut_length(shape, [shape.features["row"]]) == pytest.approx(length)


STRIP = """
materials/all.yaml: {materials: {tape: {title: Tape, form: webbing, width: 25 mm, mass per length: 20 g/m}}}
parts/tape-end.yaml: {part: tape-end, title: Tape, material: tape, outline: {strip: {length: 300 mm}}}
"""


def test_cut_length_of_a_strip_is_the_length_fed(tmp_path: FilePath) -> None:
    """300 mm of tape: only its end is cut."""
    shape = shape_of(STRIP, tmp_path, "tape-end")
    assert cut_length(shape, []) == pytest.approx(300)


def test_marked_areas_of_a_box_and_of_holes(tmp_path: FilePath) -> None:
    """A box by its frame, each hole by the square round it; a seam has no area."""
    extra = "label: {box: plain, width: 40 mm, height: 20 mm, at: {left: 50 mm, bottom: 60 mm}}"
    shape = shape_of(HOLES.replace("features: {", f"features: {{{extra}, "), tmp_path)
    assert mark_areas(shape.features["label"]) == [pytest.approx((50, 60, 90, 80))]
    assert mark_areas(shape.features["row"])[0] == pytest.approx((26, 36, 34, 44))
    assert mark_areas(shape.features["hem-seam"]) == []


def test_a_lead_in_starts_in_the_waste_and_costs_time() -> None:
    path = Path(rectangle(100, 50).segments)
    start = lead_start(path, 3)
    assert math.dist(start, path.start) == pytest.approx(3)
    assert contour_time([path], 300, 1, LASER, 3) > contour_time([path], 300, 1, LASER)


def test_each_pass_pierces_and_follows_again() -> None:
    path = Path(rectangle(100, 50).segments)
    one, two = (contour_time([path], 300, passes, LASER) for passes in (1, 2))
    assert two == pytest.approx(2 * one)


def test_a_raster_takes_its_lines_at_speed_and_a_turn_each() -> None:
    """10 mm high at 0.25 mm: 40 lines of 20 mm at 200 mm/s, 2·v/a a turn (worked by hand)."""
    assert raster_lines(10, 0.25) == 40
    assert raster_time(20, 10, 0.25, 200, LASER) == pytest.approx(40 * (20 / 200 + 2 * 200 / 3000))
    assert mark_time([(0, 0, 20, 10)], 0.25, 200, LASER) == pytest.approx(raster_time(20, 10, 0.25, 200, LASER))


@given(st.floats(5, 800), st.floats(5, 800), st.floats(20, 400))
def test_a_longer_cut_is_never_quicker_and_a_higher_speed_never_slower(one: float, two: float, speed: float) -> None:
    short, long = sorted((one, two))
    lines = [polyline([(0, 0), (length, 0)]) for length in (short, long)]
    assert contour_time([lines[0]], speed, 1, LASER) <= contour_time([lines[1]], speed, 1, LASER) + 1e-9
    assert contour_time([lines[1]], speed * 1.5, 1, LASER) <= contour_time([lines[1]], speed, 1, LASER) + 1e-9


def test_a_slot_is_cut_round_inside_by_half_the_beam(tmp_path: FilePath) -> None:
    """Its drawn length is that of its outline; the head goes clockwise, half a kerf inside."""
    text = "{slot: 20 mm, width: 4 mm, turn: 30 deg, at: {left: 50 mm, bottom: 60 mm}, count: 2, pitch: 40 mm, rows: 2,"
    example = f"parts/panel.yaml: {{features: {{vents: {text} row pitch: 20 mm}}}}}}"
    found = linked(example, tmp_path)
    shape = ShapeBook(found.model.parts, found.model.states, found.dimensions.definitions).shape(
        "panel", found.dimensions.values
    )
    assert shape is not None
    around = 2 * 16 + math.pi * 4
    vents = shape.features["vents"]
    assert cut_length(shape, [vents]) == pytest.approx(shape.outline.perimeter() + 4 * around)
    *slots, _ = cut_contours(shape, [vents], 0.4)
    assert len(slots) == 4
    for slot in slots:
        assert slot.length == pytest.approx(around - math.pi * 0.4)
        region = min(vents.regions, key=lambda one: math.dist(one.centroid(), slot.runs[0].point_at(0.5)))
        assert all(region.contains(run.point_at(0.5)) for run in slot.runs)
    narrow, *_ = cut_contours(shape, [vents], 4.0)
    assert narrow.length == pytest.approx(20)


def test_a_drill_hole_is_cut_as_a_hole_is(tmp_path: FilePath) -> None:
    """It is a mark for people, a hole for the machine."""
    holes = "a: {KIND: 2 mm, at: {left: 50 mm, bottom: 60 mm}, count: 3, pitch: 20 mm}"
    lengths = []
    for kind in ("hole", "drill hole"):
        found = linked(f"parts/panel.yaml: {{features: {{{holes.replace('KIND', kind)}}}}}", tmp_path / kind)
        shape = ShapeBook(found.model.parts, found.model.states, found.dimensions.definitions).shape(
            "panel", found.dimensions.values
        )
        assert shape is not None
        lengths.append(cut_length(shape, [shape.features["a"]]))
    assert lengths[0] == lengths[1] == pytest.approx(shape.outline.perimeter() + 3 * math.pi * 2)
