"""Threads and needles of stitch types against published descriptions."""

from __future__ import annotations

import pytest

from builder.model import STITCHES

# type: (needle threads, bobbin or looper threads, top cover threads, threads in all)
# ISO 4915:1991 / ASTM D6193 (formerly FED-STD-751), as described in: apparelscience.com, "Stitch classes 300-400"
# (read: 301); ICAR e-course on stitch classes (read: 504, 514); the other rows: same standards, memory.
PUBLISHED = {
    "101": (1, 0, 0, 1),
    "301": (1, 1, 0, 2),
    "304": (1, 1, 0, 2),
    "401": (1, 1, 0, 2),
    "406": (2, 1, 0, 3),
    "407": (3, 1, 0, 4),
    "504": (1, 2, 0, 3),
    "512": (2, 2, 0, 4),
    "514": (2, 2, 0, 4),
    "516": (2, 3, 0, 5),
    "602": (2, 1, 1, 4),
    "605": (3, 1, 1, 5),
    "607": (4, 1, 1, 6),
}


@pytest.mark.parametrize("stitch", PUBLISHED)
def test_threads_of_a_stitch(stitch: str) -> None:
    """Needle, lower and cover threads, and their sum."""
    one = STITCHES[stitch]
    assert (one.needles, one.lower, one.cover, one.threads) == PUBLISHED[stitch]


@pytest.mark.parametrize("stitch", STITCHES)
def test_class_is_the_first_digit(stitch: str) -> None:
    """Classes 100 to 600, ISO 4915:1991 as summarised in the ICAR e-course (read)."""
    assert stitch[0] in "123456"
    assert len(stitch) == 3
