"""Threads looked at from one side: the nearer one is drawn over the other, wherever they cross."""

from __future__ import annotations

from builder.geometry import Piece, Space, woven


def seen_from_above(*courses: tuple[Space, ...]) -> list[Piece]:
    """The pieces as seen from above, everything in sight."""
    return woven(courses, 0.1, lambda point: point, lambda point: True)


def test_the_nearer_thread_is_drawn_last() -> None:
    """Whatever the order they come in."""
    low, high = ((-1.0, 0.0, 0.0), (1.0, 0.0, 0.0)), ((0.0, -1.0, 1.0), (0.0, 1.0, 1.0))
    assert [piece.thread for piece in seen_from_above(low, high)] == [0, 1]
    assert [piece.thread for piece in seen_from_above(high, low)] == [1, 0]


def test_a_thread_that_goes_over_and_under_is_cut_midway() -> None:
    """Over the first, under the second: two pieces, cut halfway between the crossings."""
    wave = ((-2.0, 0.0, 1.0), (0.0, 0.0, 0.0), (2.0, 0.0, -1.0))
    posts = [((x, -1.0, 0.0), (x, 1.0, 0.0)) for x in (-1.0, 1.0)]
    pieces = [piece for piece in seen_from_above(wave, *posts) if piece.thread == 0]
    assert {piece.over for piece in pieces} == {True, False}
    assert {round(piece.points[0][0], 6) for piece in pieces} == {-2.0, 0.0}


def test_a_thread_may_cross_itself() -> None:
    """A loop lies over its own beginning."""
    loop = ((-2.0, 0.0, 0.0), (2.0, 0.0, 0.0), (2.0, 2.0, 1.0), (0.0, 2.0, 1.0), (0.0, -2.0, 1.0))
    pieces = seen_from_above(loop)
    assert [piece.over for piece in pieces] == [False, True]
    assert pieces[-1].points[-1] == (0.0, -2.0)


def test_what_is_out_of_sight_is_left_out() -> None:
    """A thread that dives into the goods is two pieces."""
    dive = tuple((x / 10, 0.0, -1.0 if 3 < x < 7 else 1.0) for x in range(11))
    pieces = woven([dive], 0.1, lambda point: point, lambda point: point[2] > 0)
    assert [(piece.points[0][0], piece.points[-1][0]) for piece in pieces] == [(0.0, 0.3), (0.7, 1.0)]
