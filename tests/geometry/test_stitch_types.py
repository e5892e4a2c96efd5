"""Threads of stitches: they hold each other as their stitch says, keep apart, and go through the goods."""

from __future__ import annotations

import math
from itertools import pairwise

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from builder.geometry import (
    STITCHES_DRAWN,
    GeometryFault,
    Space,
    StitchSize,
    StitchThreads,
    bartack_lock,
    stitch_threads,
)
from builder.model import STITCHES

APART = 0.6
"""Threads are pressed where they cross: their middle lines stay this share of a diameter apart."""


@st.composite
def sizes(draw: st.DrawFn) -> StitchSize:
    """Sizes all stitch types have room in."""
    d = draw(st.floats(0.1, 0.6))
    length = draw(st.floats(7.0, 16.0)) * d
    gauge = draw(st.floats(5.0, 12.0)) * d
    return StitchSize(
        length=length,
        thread=d,
        thickness=draw(st.floats(4.0, 14.0)) * d,
        width=gauge + max(0.6 * length, 6.0 * d) + draw(st.floats(0.0, 8.0)) * d,
        gauge=gauge,
    )


def pierced(loop: tuple[Space, ...], strand: tuple[Space, ...]) -> int:
    """How often a strand goes through the surface that closes a loop, one way counted against the other."""
    # Not quite the middle: a strand that goes through it exactly would meet the edges of the triangles.
    middle = tuple(0.95 * sum(p[axis] for p in loop) / len(loop) + 0.05 * loop[3][axis] for axis in range(3))
    ring = [*pairwise(loop), (loop[-1], loop[0])]
    return sum(_through((middle, a, b), c, d) for a, b in ring for c, d in pairwise(strand))


def _through(triangle: tuple[Space, ...], c: Space, d: Space) -> int:
    """1 or −1 where the piece c-d goes through a triangle, 0 where it doesn't."""
    a, b, e = triangle
    below, above = _volume(a, b, e, c), _volume(a, b, e, d)
    if (below > 0) == (above > 0):
        return 0
    turns = {_volume(c, d, p, q) > 0 for p, q in ((a, b), (b, e), (e, a))}
    return 0 if len(turns) > 1 else (1 if above > 0 else -1)


def _volume(a: Space, b: Space, c: Space, d: Space) -> float:
    u, v, w = ([q - p for p, q in zip(a, x, strict=True)] for x in (b, c, d))
    cross = (u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0])
    return sum(p * q for p, q in zip(cross, w, strict=True))


def check_holds(row: StitchThreads) -> None:
    """Pull at any loop and it finds the strand in it: every strand said to lie in a loop goes through it once."""
    for hold in row.holds:
        loop = row.thread(hold.loop[0]).span(hold.loop[1])
        strand = row.thread(hold.strand[0]).span(hold.strand[1])
        assert abs(pierced(loop, strand)) == 1, hold


@pytest.mark.parametrize("stitch", STITCHES_DRAWN)
@given(size=sizes())
@settings(max_examples=4)
def test_every_loop_holds_what_its_stitch_says(stitch: str, size: StitchSize) -> None:
    """Each needle loop holds a strand, and a strand pulled out of a loop would not."""
    row = stitch_threads(stitch, 2, size)
    check_holds(row)
    held = {hold.loop for hold in row.holds} | {hold.strand for hold in row.holds}
    assert {role for role, _ in held} == {thread.role for thread in row.threads}


def test_a_strand_drawn_out_of_its_loop_is_noticed() -> None:
    """The test that pulls can fail: a bobbin thread moved below the needle's loop isn't in it."""
    row = stitch_threads("301", 1, StitchSize(3.2, 0.4, 2.4))
    loop, strand = row.thread("needle").span("loop 0"), row.thread("bobbin").span("loop 0")
    assert abs(pierced(loop, strand)) == 1
    assert pierced(loop, tuple((x, y, z - 3.0) for x, y, z in strand)) == 0


@pytest.mark.parametrize("stitch", STITCHES_DRAWN)
@given(size=sizes())
@settings(max_examples=4)
def test_no_two_threads_are_in_the_same_place(stitch: str, size: StitchSize) -> None:
    """Two threads, and two parts of one thread, keep a share of a diameter apart."""
    row = stitch_threads(stitch, 2, size)
    assert nearest(row, size.thread) >= APART * size.thread


def nearest(row: StitchThreads, thread: float) -> float:
    """Least distance of two threads, or of two parts of one that lie more than a few diameters apart along it."""
    placed = [(number, *one) for number, thread_ in enumerate(row.threads) for one in _walked(thread_.course)]
    numbers, along = np.array([one[0] for one in placed]), np.array([one[1] for one in placed])
    points = np.array([one[2] for one in placed])
    apart = np.linalg.norm(points[:, None, :] - points[None, :, :], axis=2)
    same = (numbers[:, None] == numbers[None, :]) & (np.abs(along[:, None] - along[None, :]) <= 2.2 * thread)
    return float(apart[~same].min())


def _walked(course: tuple[Space, ...]) -> list[tuple[float, Space]]:
    walked, along = [(0.0, course[0])], 0.0
    for a, b in pairwise(course):
        along += math.dist(a, b)
        walked.append((along, b))
    return walked


@pytest.mark.parametrize("stitch", STITCHES_DRAWN)
@given(size=sizes())
@settings(max_examples=4)
def test_the_needle_thread_goes_down_through_the_goods_at_every_hole(stitch: str, size: StitchSize) -> None:
    """Every needle thread passes the middle of the goods twice a stitch, down and up, at its hole."""
    row = stitch_threads(stitch, 3, size)
    for thread in row.threads:
        if not thread.role.startswith("needle"):
            continue
        # The needle thread of 503 also goes round the edge, outside the goods.
        inside = [(a, b) for a, b in pairwise(thread.course) if a[1] > row.edge]
        down = [(a[0] + b[0]) / 2 for a, b in inside if a[2] > 0 >= b[2]]
        up = [(a[0] + b[0]) / 2 for a, b in inside if a[2] <= 0 < b[2]]
        assert len(down) == len(up) == 4
        for index, x in enumerate(down):
            assert abs(x - index * size.length) < 2.0 * size.thread


@pytest.mark.parametrize("stitch", STITCHES_DRAWN)
def test_a_stitch_has_the_threads_of_its_type(stitch: str) -> None:
    """As many needle, lower and cover threads as the table of stitch types says."""
    roles = [one.role for one in stitch_threads(stitch, 1, StitchSize(3.0, 0.3, 2.0, width=6.0, gauge=2.5)).threads]
    known = STITCHES[stitch]
    assert sum(role.startswith("needle") for role in roles) == known.needles
    assert sum(role.startswith(("bobbin", "looper")) for role in roles) == known.lower
    assert roles.count("cover") == known.cover


def test_a_bartack_has_its_underlay_under_its_zigzag() -> None:
    """The straight stitches lie on the goods, the zigzag over them; all of them lock."""
    size = StitchSize(0.9, 0.4, 2.8, width=2.5, hook=0.6)
    row = bartack_lock(12.0, 2.5, 13, 3, size)
    check_holds(row)
    across = [z for x, y, z in row.thread("needle").course if abs(y) < 0.1 and 2.5 < x < 5.5 and z > 0]
    assert min(across) < size.face + 0.6 * size.thread < size.face + 1.3 * size.thread < max(across)
    assert all(abs(y) <= 1.26 for _, y in row.holes)


def test_a_lock_pulled_up_lies_at_the_face() -> None:
    """With the needle thread too tight it stays near the face, and the bobbin thread comes up there."""
    size = StitchSize(3.2, 0.4, 2.8, lock=1.4)
    row = stitch_threads("301", 2, size)
    # The bobbin's loop stands up over the needle thread, which lies straight through it.
    assert abs(pierced(row.thread("bobbin").span("loop 1"), row.thread("needle").span("loop 1"))) == 1
    assert min(z for _, _, z in row.thread("needle").course) > size.face - 0.5 * size.thickness
    assert max(z for _, _, z in row.thread("bobbin").course) > size.face


@pytest.mark.parametrize(
    ("stitch", "size"),
    [
        ("301", StitchSize(2.0, 0.4, 2.4)),
        ("301", StitchSize(3.2, 0.4, 1.0)),
        ("304", StitchSize(3.2, 0.4, 2.4, width=1.0)),
        ("504", StitchSize(3.2, 0.4, 2.4, width=1.0)),
        ("602", StitchSize(3.2, 0.4, 2.4, gauge=1.0)),
    ],
)
def test_threads_without_room_are_refused(stitch: str, size: StitchSize) -> None:
    """Threads too thick for their stitch would lie in each other."""
    with pytest.raises(GeometryFault):
        stitch_threads(stitch, 2, size)
