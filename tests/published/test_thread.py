"""Thread of seams against published formulas, charts, tables and examples, at the precision printed."""

from __future__ import annotations

import pytest

from builder.computing import ThreadUse, ratio_factors, sampled_factors, thread_factors
from builder.computing.thread_use import NEEDLE_SHARES, RATIOS
from builder.model import STITCHES

INCH = 25.4

# stitch, stitches an inch, thickness in inches, thread per inch of seam, half of the last digit printed, source
CALCULATED = [
    # textileblog.com, "Sewing Thread Consumption Guide"; example: textilecalculations.com, "Calculate amount of sewing
    # thread consumption". Read.
    ("101", 9, 0.005, 3.09, 0.005),
    # textilecalculations.com, "Calculate amount of sewing thread consumption". Read.
    ("301", 10, 0.01, 2.2, 0.05),
    # "Estimating Thread Consumption", chart for type 401 at 8 stitches an inch, scribd.com/document/75439238. Read.
    ("401", 8, 0.055, 4.88, 0.005),
    ("401", 8, 0.060, 4.96, 0.005),
    ("401", 8, 0.070, 5.12, 0.005),
    # textilecalculation.blogspot.com, "Consumption formula for single needle double thread chain stitch", 2015. Read.
    ("401", 10, 0.025, 4.5, 0.05),
]


@pytest.mark.parametrize(("stitch", "per_inch", "thickness_in", "printed", "half_digit"), CALCULATED)
def test_thread_of_a_seam(stitch: str, per_inch: float, thickness_in: float, printed: float, half_digit: float) -> None:
    """A factor is thread per seam, so that inch over inch is mm over mm."""
    found = thread_factors(stitch, per_inch / INCH, thickness_in * INCH)
    assert found is not None
    assert found.total[0] == found.total[1] == pytest.approx(printed, abs=half_digit)


@pytest.mark.parametrize(("s", "t", "w"), [(0.4, 2.0, 5.0), (0.5, 0.7, 4.0), (0.3, 3.1, 6.5)])
def test_three_thread_overedge(s: float, t: float, w: float) -> None:
    """C = 3 + 4WS + 4TS (textilecalculations.com, "Calculate amount of sewing thread consumption", read).

    Other texts print 5 for its constant, as the same reading notes: the interval ends there.
    """
    found = thread_factors("504", s, t, w)
    assert found is not None
    assert found.total == pytest.approx((3 + 4 * w * s + 4 * t * s, 5 + 4 * w * s + 4 * t * s), abs=1e-9)


def test_an_unravelled_sample_of_a_chainstitch() -> None:
    """apparelscience.com, "Measuring actual thread consumption", read: 15 cm give 19.5 and 62 cm, for a metre.

    The source rounds its factors to a tenth before it multiplies, and adds 15 % waste to the sum.
    """
    needle, looper = round(19.5 / 15, 1), round(62 / 15, 1)
    assert (needle, looper) == (1.3, 4.1)
    found = sampled_factors(needle, looper).times(100)
    assert found.needle[0] == pytest.approx(130, abs=0.5)
    assert found.under[0] == pytest.approx(410, abs=0.5)
    assert found.total[0] == pytest.approx(540, abs=0.5)
    assert found.total[1] * 1.15 == pytest.approx(621, abs=0.5)


# Carr and Latham, *The Technology of Clothing Manufacture*, and thread-maker data, as tabulated in "Estimation of
# thread consumption of a garment", scribd.com/document/194966618. Read. 606 also: NIMI (Government of India), Sewing
# Technology Trade Practical vol. 2, p. 176. Read.
TABLE_A = {
    "301": 2.5,
    "101": 4.0,
    "401": 5.5,
    "304": 7.0,
    "503": 12.0,
    "504": 14.0,
    "512": 18.0,
    "516": 20.0,
    "406": 18.0,
    "602": 25.0,
    "605": 28.0,
    "606": 32.0,
}

# Thread maker's "Standard stitch type classification guide", ru.scribd.com/document/49933681; 301 and 304 also in
# apparelscience.com, "Stitch classes 300-400". Read.
TABLE_B = {"101": 5.0, "103": 4.5, "301": 2.5, "304": 5.5}

# [needles, needle %, bobbin, looper and cover %]: companion columns of table A in notes of thread makers. Memory.
SPLITS = {
    "101": (1, 100, 0),
    "301": (1, 50, 50),
    "304": (1, 50, 50),
    "401": (1, 25, 75),
    "503": (1, 55, 45),
    "504": (1, 20, 80),
    "512": (2, 25, 75),
    "516": (2, 20, 80),
    "406": (2, 30, 70),
    "602": (2, 20, 80),
    "605": (3, 30, 70),
}


@pytest.mark.parametrize("stitch", sorted({*TABLE_A, *TABLE_B}))
def test_ratios_are_those_of_the_tables_and_no_others(stitch: str) -> None:
    """Where the two tables differ both values are kept."""
    printed = {table[stitch] for table in (TABLE_A, TABLE_B) if stitch in table}
    assert set(RATIOS[stitch]) == printed
    assert set(RATIOS) == {*TABLE_A, *TABLE_B}


@pytest.mark.parametrize("stitch", SPLITS)
def test_needle_threads_take_their_share_of_a_ratio(stitch: str) -> None:
    """And the needles are as many as the stitch has."""
    needles, needle, under = SPLITS[stitch]
    found = ratio_factors(stitch)
    assert found is not None
    for end in (0, 1):
        assert found.needle[end] == pytest.approx(found.total[end] * needle / 100, abs=1e-9)
        assert found.under[end] == pytest.approx(found.total[end] * under / 100, abs=1e-9)
    assert STITCHES[stitch].needles == needles


def test_a_split_nobody_read_is_that_of_a_single_thread() -> None:
    """103 has no column in the table of splits; it is sewn with a needle thread alone."""
    assert set(NEEDLE_SHARES) - set(SPLITS) == {"103"}
    assert ratio_factors("103") == ThreadUse((4.5, 4.5), (0.0, 0.0))


def test_a_lockstitch_by_its_ratio() -> None:
    """melgeecrafts.com, "How do you calculate embroidery thread consumption", read: 220 cm at 2.5 are 275 + 275 cm."""
    found = ratio_factors("301")
    assert found is not None
    assert found.times(220) == ThreadUse((275.0, 275.0), (275.0, 275.0))
