"""Pieces on a sheet, against shapely."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely.geometry import Polygon

from builder.geometry import (
    GeometryFault,
    LaidPiece,
    Outline,
    Placing,
    Vertex,
    beyond_sheet,
    covered_share,
    laid_pieces,
    polygon,
    rectangle,
    too_near,
)
from builder.geometry.shape import PartShape
from builder.model import NestPieces, Part

PART = Part.model_validate({"title": "Piece"})


def shape(outline: Outline) -> PartShape:
    return PartShape("piece", PART, outline, {})


def typed(**more: object) -> NestPieces:
    return NestPieces.model_validate({"part": "piece", "left": "0 mm", "bottom": "0 mm", **more})


def polygon_of(piece: LaidPiece) -> Polygon:
    return Polygon([point for one in piece.outline.segments for point in one.to_polyline(0.01)[:-1]])


PLACES = st.tuples(st.floats(0, 300), st.floats(0, 200), st.floats(0, 359), st.booleans())
SHAPES = st.sampled_from(
    [
        rectangle(60.0, 30.0),
        polygon([Vertex((0, 0)), Vertex((50, 0)), Vertex((0, 40))], [None, None, None]),
        polygon([Vertex((0, 0)), Vertex((50, 0)), Vertex((50, 50)), Vertex((25, 15)), Vertex((0, 50))], [None] * 5),
    ]
)


@given(st.lists(st.tuples(SHAPES, PLACES), min_size=2, max_size=6))
def test_overlaps_are_those_of_shapely(many: list[tuple[Outline, tuple[float, float, float, bool]]]) -> None:
    """Every pair that shares more than a sliver is found, and no pair that is clearly apart."""
    pieces = [
        LaidPiece(n, 0, "piece", Placing(x, y, turn, flipped).outline(outline))
        for n, (outline, (x, y, turn, flipped)) in enumerate(many)
    ]
    found = {frozenset((a.entry, b.entry)) for a, b in too_near(pieces, 0.0)}
    areas = [polygon_of(one) for one in pieces]
    for a in range(len(pieces)):
        for b in range(a):
            if areas[a].intersection(areas[b]).area > 5.0:
                assert frozenset((a, b)) in found
            elif areas[a].distance(areas[b]) > 1e-6:
                assert frozenset((a, b)) not in found


@given(st.integers(1, 5), st.integers(1, 5), st.floats(0.5, 10))
def test_rows_and_columns_with_room_never_meet(columns: int, rows: int, gap: float) -> None:
    pitches = {"pitch": f"{40 + gap + 0.01:.4f} mm", "row pitch": f"{20 + gap + 0.01:.4f} mm"}
    laid = list(laid_pieces(0, typed(columns=str(columns), rows=str(rows), **pitches), shape(rectangle(40.0, 20.0))))
    assert len(laid) == columns * rows
    assert not list(too_near(laid, gap))
    if len(laid) > 1:
        assert list(too_near(laid, gap + 0.1))


def test_pieces_side_by_side_may_share_a_cut() -> None:
    laid = list(laid_pieces(0, typed(columns="3", pitch="40 mm"), shape(rectangle(40.0, 20.0))))
    assert not list(too_near(laid, 0.0))
    assert covered_share(laid, 120, 20) == pytest.approx(1.0)


def test_a_turned_piece_is_placed_by_its_box() -> None:
    (one,) = laid_pieces(0, typed(left="5 mm", bottom="7 mm", turn="90°"), shape(rectangle(40.0, 20.0)))
    assert one.outline.bounds() == pytest.approx((5, 7, 25, 47))
    assert list(beyond_sheet([one], 25, 47, 0.0)) == []
    assert list(beyond_sheet([one], 24.9, 47, 0.0)) == [one]
    assert list(beyond_sheet([one], 30, 60, 6.0)) == [one]


def test_columns_need_a_pitch() -> None:
    with pytest.raises(GeometryFault, match="pitch"):
        list(laid_pieces(0, typed(columns="2"), shape(rectangle(40.0, 20.0))))
