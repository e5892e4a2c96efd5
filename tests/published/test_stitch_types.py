"""Threads of stitch types as drawn, against published descriptions.

How many: ISO 4915:1991 / ASTM D6193 (formerly FED-STD-751), as described in: a thread maker's stitch-type guide,
https://ru.scribd.com/document/49933681/stitchtypeclassification (read: 101); apparelscience.com, "Stitch classes
300-400", http://apparelscience.com/index.php/85-apparel-science/technical/126-iso-stitch-types-300-400 (read: 301,
304, 401); ICAR e-course, http://ecoursesonline.iasri.res.in/mod/page/view.php?id=80417 (read: 503, 504, 514); the
others: memory.

How they run: textileschool.com, "Different kind of stitches", http://www.textileschool.com/articles/97/
different-kind-of-stitches (read): intralooping is a loop of thread through another loop of the same thread (101),
interlooping through a loop of another thread (401), interlacing a thread over or around another (301). The same three
are defined in ISO 4915:1981 as translated at https://m.bzxz.net/en/76a69b016e7e23566.html, 2.1.1 to 2.1.3 (read).
301 and 304: the interlacing lies midway between the surfaces; 401: the interloopings are drawn up against the
underside (apparelscience.com, read). 504: the needle goes through a loop of the upper looper thread on the face, its
own loop is entered by the lower looper thread, whose loop is taken to the edge and entered there by the upper looper
thread: a public description of sewing stitches by their threads, entry 504 (author not known, read). 602: loops of
the cover thread lie on opposite sides of the two needles as they go down: claims of a patent, "Cover thread assist
member", https://trea.com/information/cover-thread-assist-member/patentgrant/7c37c00c-154a-4b1d-ab58-d06c15ced895
(read); they lie on the face, held down by the needle threads, and the looper thread interloops with all needle
threads below: a teaching text on stitch classes, http://www.dybbs8.com/excel/3216739.html (read). 512 and 514:
memory.
"""

from __future__ import annotations

import pytest

from builder.geometry import STITCHES_DRAWN, StitchSize, stitch_threads

# type: (needle threads, bobbin or looper threads, cover threads)
COUNTS = {
    "101": (1, 0, 0),
    "301": (1, 1, 0),
    "304": (1, 1, 0),
    "308": (1, 1, 0),
    "401": (1, 1, 0),
    "406": (2, 1, 0),
    "407": (3, 1, 0),
    "503": (1, 1, 0),
    "504": (1, 2, 0),
    "512": (2, 2, 0),
    "514": (2, 2, 0),
    "516": (2, 3, 0),
    "602": (2, 1, 1),
}
SIZE = StitchSize(3.0, 0.3, 2.1, width=6.0, gauge=2.5)


def test_every_stitch_drawn_is_compared() -> None:
    """No type is drawn without its published count."""
    assert set(COUNTS) == set(STITCHES_DRAWN)


@pytest.mark.parametrize("stitch", COUNTS)
def test_threads_drawn_are_as_many_as_published(stitch: str) -> None:
    """Needle, lower and cover threads."""
    roles = [one.role for one in stitch_threads(stitch, 2, SIZE).threads]
    found = tuple(
        sum(role.startswith(names) for role in roles) for names in (("needle",), ("bobbin", "looper"), ("cover",))
    )
    assert found == COUNTS[stitch]


@pytest.mark.parametrize(
    ("stitch", "pairs"),
    [("101", {("needle", "needle")}), ("301", {("needle", "bobbin")}), ("304", {("needle", "bobbin")})],
)
def test_intralooping_and_interlacing_are_of_the_threads_published(stitch: str, pairs: set[tuple[str, str]]) -> None:
    """101 loops through itself; a lockstitch interlaces its two threads."""
    assert {(hold.loop[0], hold.strand[0]) for hold in stitch_threads(stitch, 3, SIZE).holds} == pairs


def test_401_is_interlaced_and_interlooped() -> None:
    """Loops of each thread hold the other: the needle's the looper thread, the looper's the next needle loop."""
    holds = {(hold.loop[0], hold.strand[0]) for hold in stitch_threads("401", 3, SIZE).holds}
    assert holds == {("needle", "looper"), ("looper", "needle")}


@pytest.mark.parametrize("stitch", ["301", "304"])
def test_a_lockstitch_locks_midway_between_the_surfaces(stitch: str) -> None:
    """Lowest point of the needle thread and highest of the bobbin thread lie alike about the middle, in the goods."""
    row = stitch_threads(stitch, 3, SIZE)
    low = min(z for _, _, z in row.thread("needle").course)
    high = max(z for _, _, z in row.thread("bobbin").course)
    assert low + high == pytest.approx(0.0, abs=1e-9)
    assert 0 < high < SIZE.face


def test_a_chainstitch_is_drawn_up_against_the_underside() -> None:
    """401: all of the looper thread lies under the goods, against them."""
    heights = [z for _, _, z in stitch_threads("401", 3, SIZE).thread("looper").course]
    assert max(heights) < -SIZE.face
    assert max(heights) > -SIZE.face - SIZE.thread


def held(stitch: str) -> set[tuple[str, str]]:
    """Pairs of threads: a loop of the first holds the second."""
    return {(hold.loop[0], hold.strand[0]) for hold in stitch_threads(stitch, 3, SIZE).holds}


def test_504_is_a_ring_of_three_loops() -> None:
    """The needle's holds the lower looper thread, that one's the upper, and the upper one's the needle thread."""
    assert held("504") == {("needle", "looper"), ("looper", "looper 2"), ("looper 2", "needle")}


def test_512_and_514_differ_in_what_the_upper_looper_thread_holds() -> None:
    """Of 512 only the needle nearer the edge, which is the second; of 514 both."""
    assert {strand for loop, strand in held("512") if loop == "looper 2"} == {"needle 2"}
    assert {strand for loop, strand in held("514") if loop == "looper 2"} == {"needle", "needle 2"}


def test_516_is_401_beside_504_without_a_link() -> None:
    """What holds each other is of the one or of the other."""
    chain = {"needle 2", "looper 3"}
    assert all((loop in chain) == (strand in chain) for loop, strand in held("516"))


def test_the_cover_thread_of_602_lies_on_the_face_under_both_needle_threads() -> None:
    """Its loops hold both; it never goes into the goods, and the looper thread holds and is held below them."""
    row = stitch_threads("602", 3, SIZE)
    assert {strand for loop, strand in held("602") if loop == "cover"} == {"needle", "needle 2"}
    assert {loop for loop, strand in held("602") if strand == "looper"} == {"needle", "needle 2"}
    heights = [z for _, _, z in row.thread("cover").course]
    assert SIZE.face < min(heights) <= max(heights) < max(z for _, _, z in row.thread("needle").course)
    assert max(z for _, _, z in row.thread("looper").course) < -SIZE.face
