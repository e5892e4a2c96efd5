"""Nests: where pieces come to lie, and overlaps against shapely's."""

from __future__ import annotations

import math
from fractions import Fraction

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from shapely import Point, Polygon

from builder.geometry import NestedPiece, NestFault, NestLayout, Outline, PartShape, Placing, lay_out_nest
from builder.geometry import polygon as ring
from builder.geometry.outline import rectangle
from builder.model import Nest, Part, Quantity

WIDTH = Quantity.of(Fraction(1500), "length", "mm")


def shape(outline: Outline) -> PartShape:
    return PartShape("piece", Part(title="Piece"), outline, {})


def laid(wide: float, tall: float, **typed: object) -> NestLayout | NestFault | None:
    nest = Nest.model_validate(typed)
    return lay_out_nest(nest, (), {}, lambda name: shape(rectangle(wide, tall)), WIDTH)


def test_as_many_columns_as_fit_and_rows_for_the_rest() -> None:
    """1500 mm less two margins of 10 hold five pieces of 280 mm with gaps of 4, and no sixth."""
    found = laid(280, 100, margin="10 mm", gap="4 mm", pieces=[{"part": "piece", "count": 12}])
    assert isinstance(found, NestLayout)
    corners = [one.outline.bounds()[:2] for one in found.pieces]
    assert corners[0] == (10, 10)
    assert corners[4] == (10 + 4 * 284, 10)
    assert corners[5] == (10, 114)
    assert (found.width, found.length, len(found.pieces)) == (1500, 10 + 3 * 104 - 4 + 10, 12)
    assert found.used == pytest.approx(12 * 280 * 100 / (1500 * 328))
    assert found.outside() is None
    assert not list(found.overlaps())


def test_a_turned_piece_stands_on_its_corner() -> None:
    """A quarter turn swaps the sides of the box, and the lower left corner is where it was asked for."""
    place = {"left": "20 mm", "bottom": "30 mm"}
    found = laid(300, 100, sheet=["500 mm", "400 mm"], pieces=[{"part": "piece", "at": place, "turn": "90 deg"}])
    assert isinstance(found, NestLayout)
    assert found.pieces[0].outline.bounds() == pytest.approx((20, 30, 120, 330))


def test_the_next_entry_begins_above_the_last() -> None:
    pieces = [{"part": "piece", "count": 3, "columns": 2}, {"part": "piece"}]
    found = laid(100, 50, gap="5 mm", pieces=pieces)
    assert isinstance(found, NestLayout)
    assert found.pieces[3].outline.bounds()[1] == 110
    assert found.counts == (3, 14)


def test_a_sheet_nobody_gave_a_width_is_a_fault() -> None:
    nest = Nest.model_validate({"pieces": [{"part": "piece"}]})
    found = lay_out_nest(nest, (), {}, lambda name: shape(rectangle(10, 10)), None)
    assert isinstance(found, NestFault)
    assert "how wide" in found.message


def test_more_pieces_than_anybody_lays_out_are_counted() -> None:
    found = laid(1, 1, pieces=[{"part": "piece", "columns": 100000, "rows": 100000}])
    assert isinstance(found, NestLayout)
    assert found.counts == (10**10,)
    assert len(found.pieces) == 2000


CORNERS = st.lists(st.tuples(st.floats(-0.2, 0.2), st.floats(20, 60)), min_size=3, max_size=9)
PLACES = st.tuples(st.floats(-90, 90), st.floats(-90, 90), st.floats(0, 360), st.booleans())


def _star(corners: list[tuple[float, float]]) -> Outline:
    """A ring about the origin, often not convex; each corner a little off its place in a regular one."""
    turns = [2 * math.pi * (number + off) / len(corners) for number, (off, _) in enumerate(corners)]
    return ring([(r * math.cos(turn), r * math.sin(turn)) for turn, (_, r) in zip(turns, corners, strict=True)])


@given(CORNERS, PLACES, CORNERS, PLACES)
def test_two_pieces_overlap_where_their_areas_do(
    a: list[tuple[float, float]],
    at: tuple[float, float, float, bool],
    b: list[tuple[float, float]],
    there: tuple[float, float, float, bool],
) -> None:
    """The same answer as shapely's, but for those that hardly touch."""
    places, outlines = (Placing(*at), Placing(*there)), (_star(a), _star(b))
    pieces = tuple(
        NestedPiece(number, f"p{number}", place, place.outline(outline))
        for number, (place, outline) in enumerate(zip(places, outlines, strict=True))
    )
    first, second = (Polygon(one.outline.to_polyline(0.01)) for one in pieces)
    shared = first.intersection(second)
    assume(shared.is_empty or shared.buffer(-0.2).area > 0)
    found = list(NestLayout(1, 1, 0, pieces, (1, 1)).overlaps())
    assert bool(found) == (not shared.is_empty)
    for _, _, point in found:
        assert shared.buffer(0.02).contains(Point(point))


def test_a_piece_on_the_very_same_place_overlaps() -> None:
    """Two entries typed to the same corner: their edges are one, which only a point inside can tell."""
    same = [{"part": "piece", "at": {"left": "0 mm", "bottom": "0 mm"}, "columns": 1}] * 2
    found = laid(100, 50, pieces=same)
    assert isinstance(found, NestLayout)
    assert [(first, second) for first, second, _ in found.overlaps()] == [(0, 1)]


def test_touching_edges_are_no_overlap() -> None:
    found = laid(100, 50, pieces=[{"part": "piece", "columns": 10, "rows": 10}])
    assert isinstance(found, NestLayout)
    assert not list(found.overlaps())
