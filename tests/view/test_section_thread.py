"""Threads of a seam cut across: which one goes where, against the close-ups of the same stitch types."""

from __future__ import annotations

import pytest

from builder.geometry import STITCHES_DRAWN, StitchSize, stitch_threads
from builder.view import FigureView
from builder.view.figure import Stroke
from builder.view.section_thread import Place, needle_places, needles, threads
from tests.drawing.gallery_sections import section_gallery

AT = Place(x=0.0, bottom=0.0, top=6.0, edge=14.0, scale=2.0)


def cords(stitch: str, width: float = 0.0) -> list[Stroke]:
    """The cords of a stitch in goods 6 mm thick, in the order they are drawn."""
    return list(threads(stitch, AT, "now", width))


def reach(stitch: str, thread: str) -> tuple[float, float, float, float]:
    """How far a thread reaches: left, bottom, right, top."""
    boxes = [one.bounds() for cord in cords(stitch) if cord.fill == thread for one in cord.path]
    return min(b[0] for b in boxes), min(b[1] for b in boxes), max(b[2] for b in boxes), max(b[3] for b in boxes)


@pytest.mark.parametrize("stitch", STITCHES_DRAWN)
def test_every_thread_of_a_type_is_in_its_section(stitch: str) -> None:
    """Called as in the close-up: 516 has a looper of its own for its chain."""
    size = StitchSize(3.0, 0.3, 2.1, width=6.0, gauge=2.5)
    assert {one.fill for one in cords(stitch)} == {one.role for one in stitch_threads(stitch, 1, size).threads}


def test_the_cover_thread_lies_under_the_needle_threads() -> None:
    """602: laid across the face and held down by both needles: drawn before them, and lower."""
    fills = [one.fill for one in cords("602")]
    assert fills[0] == "cover"
    assert reach("602", "cover")[3] < min(reach("602", "needle")[3], reach("602", "needle 2")[3])


def test_the_first_needle_of_a_cover_stitch_stands_on_the_right() -> None:
    """As in the close-up, looked at the way it is sewn."""
    for stitch in ("406", "602"):
        assert reach(stitch, "needle")[0] > reach(stitch, "needle 2")[2]


def test_the_inner_needle_of_512_misses_the_upper_looper_thread() -> None:
    """Of 514 the upper looper thread holds both needles."""
    outer = reach("512", "needle 2")[0]
    assert reach("512", "needle")[2] < reach("512", "looper 2")[0] < outer
    assert reach("514", "looper 2")[0] < reach("514", "needle")[0]


def test_the_lower_looper_thread_lies_below_and_the_upper_one_above() -> None:
    """504: each on its own face, hooked into each other outside the edge."""
    assert reach("504", "looper")[1] < AT.bottom
    assert reach("504", "looper 2")[3] > AT.top
    for looper in ("looper", "looper 2"):
        left, _, right, _ = reach("504", looper)
        assert left < AT.x
        assert right > AT.edge
    assert reach("504", "looper")[3] > reach("504", "looper 2")[1]


def test_the_needle_loop_of_503_goes_to_the_edge_under_the_goods() -> None:
    """There the looper thread, which lies on the face, comes through it."""
    assert reach("503", "needle")[2] > AT.edge
    assert reach("503", "needle")[1] < AT.bottom < AT.top < reach("503", "looper")[3]
    assert reach("503", "looper")[1] > AT.bottom


def test_the_chain_of_516_has_no_thread_of_its_overedge() -> None:
    """401 beside 504: no loop of one reaches the other."""
    chain = max(reach("516", thread)[2] for thread in ("needle 2", "looper 3"))
    assert chain < min(reach("516", thread)[0] for thread in ("needle", "looper", "looper 2"))


@pytest.mark.parametrize(("stitch", "width", "count"), [("301", 0, 1), ("304", 8, 1), ("406", 0, 2), ("407", 0, 3)])
def test_needles_stand_where_thread_goes_in(stitch: str, width: float, count: int) -> None:
    """As many as the machine has: the one of a zigzag over one of its rows, never between them."""
    standing = needles(stitch, AT, width)
    assert len(standing) == count
    assert set(standing) <= set(needle_places(stitch, AT, width))


def test_a_blindstitch_stays_in_the_goods() -> None:
    """103: its thread dips into the lowest ply, comes out on the face again, and is looped there."""
    _, bottom, _, top = reach("103", "needle")
    assert AT.bottom < bottom < (AT.bottom + AT.top) / 2
    assert top > AT.top
    assert needles("103", AT)[0] == pytest.approx(reach("103", "needle")[0], abs=1.5)


@pytest.mark.parametrize("figure", section_gallery(), ids=lambda figure: str(figure.name))
def test_no_needle_and_no_extension_line_touches_a_thread(figure: FigureView) -> None:
    """Needles end above the highest thread; the line of the seam begins below the lowest."""
    sewn = [one for stroke in figure.strokes if stroke.role == "thread" for one in stroke.path]
    standing = [one for stroke in figure.strokes if stroke.role == "needle" for one in stroke.path]
    assert min(one.bounds()[1] for one in standing) > max(one.bounds()[3] for one in sewn)
    for line in figure.dimensions:
        assert min(line.start[1], line.end[1]) < min(one.bounds()[1] for one in sewn)
