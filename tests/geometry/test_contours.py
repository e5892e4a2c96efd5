"""Lines of a drawing to an outline with named edges: joined in any order, and every refusal with its coordinates."""

from __future__ import annotations

import math
import random
from collections.abc import Sequence

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.geometry.contours import JOIN_MM, outline_of
from builder.geometry.edge_names import with_edges
from builder.geometry.outline import Outline
from builder.geometry.vector import GeometryFault, Point
from builder.reading import Piece


def closed(points: Sequence[Point]) -> list[Piece]:
    """Straight pieces through points and back."""
    return [Piece(a, b) for a, b in zip(points, [*points[1:], points[0]], strict=True)]


def box(x: float, y: float, width: float, height: float) -> list[Piece]:
    """A rectangle."""
    return closed([(x, y), (x + width, y), (x + width, y + height), (x, y + height)])


ROUND = [Piece((20, 0), (-20, 0), 1.0), Piece((-20, 0), (20, 0), 1.0)]


@given(st.randoms(use_true_random=False), st.integers(3, 12), st.floats(0, JOIN_MM / 2.1))
def test_pieces_are_joined_in_any_order_and_direction(chance: random.Random, count: int, ragged: float) -> None:
    """A star with ends that miss each other a little, its lines shuffled, turned, some drawn twice."""
    radii = [40 + 30 * chance.random() for _ in range(count)]
    angles = [2 * math.pi * number / count for number in range(count)]
    points = [(r * math.cos(a), r * math.sin(a)) for r, a in zip(radii, angles, strict=True)]
    whole = outline_of(closed(points)).area()
    pieces = []
    for piece in closed(points):
        moved = (piece.start[0] + ragged * (2 * chance.random() - 1) / 2, piece.start[1])
        piece = Piece(moved, piece.end, piece.bulge)
        pieces += [piece] * chance.choice([1, 1, 2])
    chance.shuffle(pieces)
    pieces = [Piece(one.end, one.start, -one.bulge) if chance.random() < 0.5 else one for one in pieces]
    assert outline_of(pieces).area() == pytest.approx(whole, abs=1e-6 + ragged * 80 * count)


def test_a_circle_and_a_line_with_bulge_keep_their_area() -> None:
    """Arcs stay arcs."""
    assert outline_of(ROUND).area() == pytest.approx(math.pi * 400)
    half = outline_of([Piece((0, 0), (10, 0)), Piece((10, 0), (0, 0), 1.0)])
    assert half.area() == pytest.approx(math.pi * 25 / 2)


def test_an_open_contour_tells_both_ends_and_the_gap() -> None:
    """In the drawing's own coordinates."""
    pieces = box(10, 10, 100, 50)
    pieces[3] = Piece((10, 60), (10, 12.5))
    with pytest.raises(GeometryFault, match=r"ends at \(10, 10\) and at \(10, 12.5\), 2.5 mm apart"):
        outline_of(pieces)


def test_lines_that_branch_tell_where() -> None:
    """A third line at a corner."""
    with pytest.raises(GeometryFault, match=r"3 lines of the layer meet at \(110, 60\)"):
        outline_of([*box(10, 10, 100, 50), Piece((110, 60), (150, 80))])


def test_a_contour_that_crosses_itself_tells_where() -> None:
    """A bow tie."""
    with pytest.raises(GeometryFault, match=r"crosses or touches itself at \(50, 50\)"):
        outline_of(closed([(0, 0), (100, 100), (100, 0), (0, 100)]))


def test_two_contours_beside_each_other_name_both() -> None:
    """Two parts on a layer."""
    with pytest.raises(GeometryFault, match=r"could be the outline: one at \(0, 0\), one at \(200, 0\)"):
        outline_of([*box(200, 0, 50, 50), *box(0, 0, 100, 100)])


def test_a_contour_inside_is_a_cut_out_to_be_typed() -> None:
    """With its place."""
    with pytest.raises(GeometryFault, match=r"contour inside the outline, at \(40, 40\)"):
        outline_of([*box(40, 40, 10, 10), *box(0, 0, 100, 100)])


def test_nothing_closed() -> None:
    """Scraps alone."""
    with pytest.raises(GeometryFault, match="no closed contour"):
        outline_of([Piece((0, 0), (0, 0.00001))])


def test_four_edges_are_named_by_themselves() -> None:
    """A drawn rectangle with rounded corners has its arcs in no way of its sides."""
    outline = with_edges(outline_of(box(0, 0, 100, 50)), {})
    assert list(outline.edges) == ["bottom", "right", "top", "left"]
    assert outline.edge("top")[0].start == (100, 50)


def test_a_place_names_the_nearest_edge() -> None:
    """The others keep the names of their sides."""
    outline = with_edges(outline_of(box(0, 0, 100, 50)), {"mouth": (50, 48)})
    assert list(outline.edges) == ["bottom", "right", "mouth", "left"]
    with pytest.raises(GeometryFault, match="mouth and hem are one edge"):
        with_edges(outline, {"mouth": (50, 48), "hem": (20, 50)})


def test_an_edge_runs_from_corner_to_corner() -> None:
    """Turns of up to 15° are inside an edge; other counts than four are numbered."""
    outline = with_edges(outline_of(closed([(0, 0), (60, -5), (120, 0), (60, 100)])), {})
    assert list(outline.edges) == ["edge-1", "edge-2", "edge-3"]
    assert len(outline.edge("edge-1")) == 2


def test_a_circle_is_one_edge() -> None:
    """So that a seam all round has one to start on."""
    outline = with_edges(outline_of(ROUND), {})
    assert {name: len(outline.edge(name)) for name in outline.edges} == {"edge-1": 2}
    assert with_edges(outline_of(ROUND), {"rim": (0, 30)}).edges.keys() == {"rim"}


def test_a_name_given_to_another_side_is_not_given_twice() -> None:
    """`top` on the left side leaves the real top without a name of its own."""
    with pytest.raises(GeometryFault, match="Two edges would be called top"):
        with_edges(outline_of(box(0, 0, 100, 50)), {"top": (0, 25)})


def test_the_ring_begins_at_the_lower_left_corner() -> None:
    """Wherever the drawing began."""
    outline: Outline = with_edges(outline_of(box(0, 0, 100, 50)[2:] + box(0, 0, 100, 50)[:2]), {})
    assert outline.segments[0].start == (0, 0)
