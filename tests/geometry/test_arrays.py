"""Rows, grids and long pieces: counts, places under a turn, the order they are worked in, what they cover."""

from __future__ import annotations

import math
from fractions import Fraction
from itertools import pairwise
from pathlib import Path
from types import SimpleNamespace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.geometry import GeometryFault, ShapeBook, discs_of, first_of_row
from builder.geometry.arrays import bartack_shape, row_points, row_ways, slot_shape
from builder.model import Bartack, Expression, Hole, Quantity, Slot
from tests.geometry.test_shapes import features
from tests.plants import linked

MM = st.integers(1, 400)
TURN = st.integers(-360, 360)
ORIGIN = (0.0, 0.0)


class Reader:
    """Reads lengths as typed; nothing has a name here."""

    def mm(self, typed: Quantity | Expression | None, default: float = 0.0, short: str = "") -> float:
        """The length, or the default."""
        return float(typed.value) if isinstance(typed, Quantity) else default


def row(**typed: object) -> Hole:
    """A row of holes."""
    return Hole.model_validate({"hole": "4 mm", **typed})


def near(a: tuple[float, float], b: tuple[float, float]) -> bool:
    return math.dist(a, b) < 1e-6


@given(st.integers(2, 12), st.integers(2, 9), MM, MM, TURN, st.sampled_from(["across", "up"]))
def test_a_grid_has_all_its_pieces_at_their_distances(
    count: int, rows: int, pitch: int, apart: int, turn: int, direction: str
) -> None:
    """Rows of `count` by the pitch, `rows` of them by the row pitch, square to one another under any turn."""
    grid = row(
        count=count,
        rows=rows,
        pitch=f"{pitch} mm",
        angle=f"{turn} deg",
        direction=direction,
        **{"row pitch": f"{apart} mm"},
    )
    points = row_points("a", grid, (50.0, 30.0), Reader())
    assert len(points) == count * rows == grid.pieces
    assert points[0] == (50.0, 30.0)
    for one, other in pairwise(points[:count]):
        assert math.dist(one, other) == pytest.approx(pitch)
    assert math.dist(points[0], points[count]) == pytest.approx(apart)
    assert math.dist(points[0], points[count + 1]) == pytest.approx(math.hypot(pitch, apart))
    along, aside = row_ways(grid)
    assert along[0] * aside[0] + along[1] * aside[1] == pytest.approx(0, abs=1e-9)


@given(st.integers(1, 9), st.integers(1, 9), MM, MM, st.integers(0, 200), TURN)
def test_back_and_forth_has_the_same_places_in_another_order(
    count: int, rows: int, pitch: int, apart: int, stagger: int, turn: int
) -> None:
    """The same points, every second row backward, and no row begins elsewhere."""
    typed = {
        "count": count,
        "rows": rows,
        "pitch": f"{pitch} mm",
        "row pitch": f"{apart} mm",
        "stagger": f"{stagger} mm",
        "angle": f"{turn} deg",
    }
    plain, forth = row(**typed), row(order="back and forth", **typed)
    one, other = row_points("a", plain, ORIGIN, Reader()), row_points("a", forth, ORIGIN, Reader())
    assert sorted(one) == sorted(other)
    for number in range(rows):
        same = other[number * count : (number + 1) * count]
        assert one[number * count : (number + 1) * count] == (same[::-1] if number % 2 else same)
        shapes = [SimpleNamespace(feature=spec, points=found) for spec, found in ((plain, one), (forth, other))]
        assert near(first_of_row(shapes[0], number), first_of_row(shapes[1], number))  # type: ignore[arg-type]


def test_every_second_row_is_moved_along() -> None:
    """Half a pitch, as perforations are staggered."""
    grid = row(count=2, pitch="20 mm", rows=3, stagger="10 mm", **{"row pitch": "15 mm"})
    points = row_points("a", grid, ORIGIN, Reader())
    assert points == ((0, 0), (20, 0), (10, 15), (30, 15), (0, 30), (20, 30))


def test_rows_below_the_first_have_a_negative_row_pitch() -> None:
    """A grid typed from its upper left corner."""
    grid = row(count=2, pitch="20 mm", rows=2, **{"row pitch": "-15 mm"})
    assert row_points("a", grid, (0.0, 100.0), Reader())[2:] == ((0, 85), (20, 85))


def test_rows_that_go_up_follow_each_other_to_the_right() -> None:
    """Not to the left, where nobody looks for the second."""
    grid = row(count=2, pitch="20 mm", rows=2, direction="up", **{"row pitch": "15 mm"})
    assert row_points("a", grid, ORIGIN, Reader()) == ((0, 0), (0, 20), (15, 0), (15, 20))


@pytest.mark.parametrize(
    ("typed", "words"),
    [({"count": 3}, "row of 3 without a pitch"), ({"rows": 2}, "grid of 2 rows without a row pitch")],
)
def test_a_grid_without_its_pitch_is_refused(typed: dict[str, object], words: str) -> None:
    """Both pitches are needed where there is more than one."""
    with pytest.raises(GeometryFault, match=words):
        row_points("a", row(**typed), ORIGIN, Reader())


@given(st.integers(11, 200), st.integers(1, 10), TURN, st.sampled_from(["round", "square"]))
def test_a_slot_keeps_its_area_and_place_under_a_turn(length: int, width: int, turn: int, ends: str) -> None:
    """A rectangle, or one with half circles for its ends; its middle is where it was placed."""
    slot = Slot.model_validate({"slot": f"{length} mm", "width": f"{width} mm", "turn": f"{turn} deg", "ends": ends})
    region = slot_shape("a", slot, ((30.0, -20.0),), Reader()).regions[0]
    square = length * width
    rounded = (length - width) * width + math.pi * width**2 / 4
    assert region.area() == pytest.approx(square if ends == "square" else rounded)
    assert region.centroid() == pytest.approx((30, -20))
    around = 2 * (length + width) if ends == "square" else 2 * (length - width) + math.pi * width
    assert region.perimeter() == pytest.approx(around)


def test_a_slot_lies_across_and_is_turned_counter_clockwise() -> None:
    """A quarter turn stands it up; 45 degrees point up and right."""
    flat, upright, slanted = (
        slot_shape(
            "a", Slot.model_validate({"slot": "20 mm", "width": "4 mm", "turn": f"{turn} deg"}), (ORIGIN,), Reader()
        )
        for turn in (0, 90, 45)
    )
    assert flat.regions[0].bounds() == pytest.approx((-10, -2, 10, 2))
    assert upright.regions[0].bounds() == pytest.approx((-2, -10, 2, 10))
    assert slanted.regions[0].contains((5.5, 5.5))
    assert not slanted.regions[0].contains((5.5, -5.5))


def test_a_slot_wider_than_long_is_refused() -> None:
    """Its length is the longer of the two."""
    slot = Slot.model_validate({"slot": "4 mm", "width": "20 mm"})
    with pytest.raises(GeometryFault, match="wider than long"):
        slot_shape("a", slot, (ORIGIN,), Reader())


@given(st.integers(6, 40), st.integers(1, 5), TURN, st.sampled_from(["across", "up"]))
def test_a_turned_bartack_covers_as_much_and_turns_from_how_it_stands(
    length: int, width: int, turn: int, stands: str
) -> None:
    """Its box has the diagonal's reach; a quarter turn of `across` is `up`."""
    typed = {"bartack": 28, "length": f"{length} mm", "width": f"{width} mm", "stands": stands, "turn": f"{turn} deg"}
    region = bartack_shape("a", Bartack.model_validate(typed), (ORIGIN,), Reader()).regions[0]
    assert region.area() == pytest.approx(length * width)
    angle = math.radians(turn + (90 if stands == "up" else 0))
    left, _, right, _ = region.bounds()
    wide = abs(length * math.cos(angle)) + abs(width * math.sin(angle))
    assert right - left == pytest.approx(wide)


@given(st.integers(6, 200), st.integers(1, 5), TURN)
def test_the_discs_of_a_slot_fill_it_and_stay_in_it(length: int, width: int, turn: int) -> None:
    """The first and last reach its ends, none is farther from the next than a quarter of its width."""
    slot = Slot.model_validate({"slot": f"{length} mm", "width": f"{width} mm", "turn": f"{turn} deg"})
    shape = slot_shape("a", slot, (ORIGIN,), Reader())
    points, radius = discs_of(shape, 0)
    assert radius == width / 2
    assert math.dist(points[0], points[-1]) == pytest.approx(length - width)
    assert all(math.dist(a, b) <= width / 4 + 1e-9 for a, b in pairwise(points))
    assert all(shape.regions[0].distance_to_boundary(point) >= radius - 1e-6 for point in points)


def test_hardware_without_a_size_has_no_shape(tmp_path: Path) -> None:
    """Round by its diameter, or as wide and high as typed."""
    found = linked("parts/panel.yaml: {features: {a: {hardware: snap, width: 20 mm}}}", tmp_path)
    book = ShapeBook(found.model.parts, found.model.states, found.dimensions.definitions)
    built = book.shape("panel", found.dimensions.values)
    assert built is not None
    assert "a" not in built.features
    assert [fault.message for fault in book.faults.values()] == [
        "a has no size: type its diameter, or its width and height"
    ]


def test_a_buckle_covers_a_rectangle_and_an_eyelet_has_an_opening(tmp_path: Path) -> None:
    """What is drawn true to scale."""
    text = """{buckle: {hardware: snap, width: 40 mm, height: 20 mm, turn: 90 deg, at: {left: 50 mm, bottom: 50 mm}},
      eyelet: {hardware: snap, diameter: 19 mm, inner: 10 mm, at: {left: 90 mm, bottom: 50 mm}}}"""
    built = features(text, tmp_path).features
    assert built["buckle"].regions[0].bounds() == pytest.approx((40, 30, 60, 70))
    assert built["eyelet"].size == (19, 10)


def test_a_size_may_change_the_pitches_of_a_grid(tmp_path: Path) -> None:
    """They are dimensions with names, as all lengths of a feature are."""
    example = """
parts/panel.yaml:
  features: {vents: {slot: 12 mm, width: 4 mm, at: {left: 40 mm, bottom: 40 mm}, count: 2, pitch: 20 mm, rows: 2,
    row pitch: =vents.pitch / 2, stagger: 5 mm}}
products/pouch.yaml: {sizes: {S: {}, L: {panel/vents.pitch: 30 mm}}}
"""
    found = linked(example, tmp_path)
    assert not found.findings, found.findings
    values = found.dimensions.sized({"panel/vents.pitch": Quantity.of(Fraction(30), "length")})
    assert values["panel/vents.row-pitch"].value == 15
    assert found.dimensions.values["panel/vents.stagger"].value == 5
    assert found.dimensions.values["panel/vents.slot"].value == 12
