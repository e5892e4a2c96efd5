"""Thread formulas, against sums by hand."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.computing import (
    ThreadUse,
    bartack_thread,
    ratio_factors,
    sampled_factors,
    tack_thread,
    tail_thread,
    thread_factors,
)
from builder.computing.thread_use import GEOMETRIC
from builder.model import STITCHES


def factors(stitch: str, per_mm: float, thick: float, bight: float = 0.0) -> ThreadUse:
    """Geometric factors of a stitch that has a formula."""
    found = thread_factors(stitch, per_mm, thick, bight)
    assert found is not None
    return found


def test_a_lockstitch_takes_the_same_from_needle_and_bobbin() -> None:
    """3.2 mm stitches through 3 mm: 1 + 3/3.2 each."""
    assert factors("301", 1 / 3.2, 3) == ThreadUse((1.9375, 1.9375), (1.9375, 1.9375))


def test_a_chainstitch_takes_more_below() -> None:
    """The same seam: 2.875 above, 3 below."""
    found = factors("401", 1 / 3.2, 3)
    assert (found.needle[0], found.under[0]) == (2.875, 3.0)


def test_overedges_keep_what_the_texts_disagree_on() -> None:
    """2.5 mm stitches through 2 mm, 5 mm wide: 504 takes 14.2 to 16.2; a second needle thread makes it 16.8."""
    assert factors("504", 0.4, 2, 5).total == pytest.approx((14.2, 16.2))
    assert factors("514", 0.4, 2, 5).total == pytest.approx((16.8, 18.8))


@given(st.floats(0.1, 1), st.floats(0, 8), st.floats(1, 10))
def test_a_safety_stitch_is_its_two_rows(per_mm: float, thick: float, bight: float) -> None:
    """516 is 401 beside 504."""
    rows = factors("401", per_mm, thick).plus(factors("504", per_mm, thick, bight))
    both = factors("516", per_mm, thick, bight)
    assert both.needle == pytest.approx(rows.needle)
    assert both.under == pytest.approx(rows.under)


@given(st.sampled_from(GEOMETRIC), st.floats(0.1, 1), st.floats(0, 8), st.floats(0, 10))
def test_no_thread_is_shorter_than_its_seam(stitch: str, per_mm: float, thick: float, bight: float) -> None:
    """And an interval is one; each thread lies along the seam at least once."""
    found = factors(stitch, per_mm, thick, bight)
    one = STITCHES[stitch]
    assert found.needle[0] >= one.needles
    assert found.under[0] >= (1 if one.lower else 0)
    assert found.under[0] <= found.under[1]


def test_a_stitch_without_a_formula_is_not_guessed() -> None:
    """A zigzag has a ratio of the trade, 607 not even that."""
    assert thread_factors("304", 0.4, 2) is None
    assert thread_factors("602", 0.4, 2) is None
    assert ratio_factors("607") is None


@pytest.mark.parametrize("wrong", [(0.0, 1.0, 1.0), (0.4, -1.0, 1.0), (0.4, 1.0, -1.0)])
def test_impossible_seams_are_refused(wrong: tuple[float, float, float]) -> None:
    """No stitches, or a thickness or a width below 0."""
    with pytest.raises(ValueError, match="a seam has stitches"):
        thread_factors("504", *wrong)


def test_a_bartack_with_its_underlay_known() -> None:
    """28 stitches, 9.525 × 3.175 mm through 3 mm, 8 beneath in two passes: 167 mm of each thread."""
    found = bartack_thread(28, 9.525, 3.175, 3, (8, 2))
    by_hand = 2 * 9.525 + 20 * math.hypot(3.175, 9.525 / 20) + 28 * 3
    assert found.needle == found.under == pytest.approx((by_hand, by_hand))
    assert round(by_hand) == 167


def test_a_bartack_of_unknown_underlay_is_an_interval() -> None:
    """Up to 173 mm, were all of it cover; what has an underlay lies between."""
    low, high = bartack_thread(28, 9.525, 3.175, 3).needle
    assert round(high) == 173
    assert low < bartack_thread(28, 9.525, 3.175, 3, (8, 2)).needle[0] < high


def test_a_bartack_without_cover_is_none() -> None:
    """All its stitches can't lie beneath."""
    with pytest.raises(ValueError, match="cover"):
        bartack_thread(8, 10, 2, 1, (8, 2))


def test_tacks_and_ends_stand_apart() -> None:
    """3 stitches of 3 mm back and forth at two ends are 36 mm of seam; 80 mm of end for each of five threads."""
    assert tack_thread(sampled_factors(1.5, 1.25), 3, 3.0, 2) == ThreadUse((54.0, 54.0), (45.0, 45.0))
    assert tail_thread("516", 80) == ThreadUse((160.0, 160.0), (240.0, 240.0))
    assert tail_thread("101", 80) == ThreadUse((80.0, 80.0), (0.0, 0.0))
    assert tail_thread("602", 80).under == (160.0, 160.0)
