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
underside (apparelscience.com, read).
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
