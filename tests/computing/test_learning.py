"""Learning curves and a newcomer's first weeks."""

from __future__ import annotations

import math
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.computing import (
    average_total,
    average_unit_time,
    exponent,
    fit_learning,
    newcomer_factor,
    newcomer_weeks,
    rate_from_total,
    unit_time,
    unit_total,
    unit_total_approximate,
)

RATE = st.floats(0.6, 1.0)


@given(RATE, st.integers(1, 5000))
def test_each_doubling_takes_the_rate_of_the_time(rate: float, n: int) -> None:
    assert unit_time(rate, 2 * n, 10) == pytest.approx(rate * unit_time(rate, n, 10))


@given(RATE, st.integers(1, 300))
def test_single_pieces_add_up_to_the_total_in_both_models(rate: float, n: int) -> None:
    assert math.fsum(unit_time(rate, k, 7) for k in range(1, n + 1)) == pytest.approx(unit_total(rate, n, 7))
    assert math.fsum(average_unit_time(rate, k, 7) for k in range(1, n + 1)) == pytest.approx(average_total(rate, n, 7))


@given(RATE, st.integers(5000, 9000))
def test_the_long_sum_is_the_plain_sum(rate: float, n: int) -> None:
    plain = math.fsum(unit_time(rate, k, 1) for k in range(1, n + 1))
    assert unit_total(rate, n, 1) == pytest.approx(plain, rel=1e-11)


@given(RATE, st.integers(1, 9000), st.integers(0, 9000))
def test_blocks_add_up_wherever_they_are_cut(rate: float, first_block: int, more: int) -> None:
    """Pieces 1 to m and m + 1 to n are pieces 1 to n, whether a block is summed piece by piece or by the formula."""
    n = first_block + more
    parts = unit_total(rate, first_block, 1) + unit_total(rate, n, 1, first_block + 1)
    assert parts == pytest.approx(unit_total(rate, n, 1), rel=1e-11)
    parts = average_total(rate, first_block, 1) + average_total(rate, n, 1, first_block + 1)
    assert parts == pytest.approx(average_total(rate, n, 1), rel=1e-9)


@pytest.mark.parametrize("rate", [0.5, 0.5 + 1e-12, 0.5 + 1e-9, 0.5 - 1e-9])
def test_sums_lose_no_digits_where_a_doubling_halves_the_time(rate: float) -> None:
    """There the power of the integral is 0 or nearly; 1/k sums to ln n and not to a power of n."""
    plain = math.fsum(unit_time(rate, k, 1) for k in range(1, 20001))
    assert unit_total(rate, 20000, 1) == pytest.approx(plain, rel=1e-12)
    far = math.fsum(unit_time(rate, k, 1) for k in range(100, 20001))
    assert unit_total_approximate(rate, 20000, 1, 100) == pytest.approx(far, rel=1e-6)


def test_a_rate_of_nothing_is_refused() -> None:
    with pytest.raises(ValueError, match="math domain"):
        exponent(0)


@given(st.floats(0.55, 1.0), st.floats(1, 100), st.integers(2, 5000))
def test_the_rate_from_a_total_is_the_rate_it_was_made_with(rate: float, first: float, n: int) -> None:
    assert rate_from_total(average_total(rate, n, first), first, n) == pytest.approx(rate, rel=1e-9)


def test_the_interval_of_a_rate_is_that_of_the_slope() -> None:
    """Four pieces by hand: ln n 0, ln 2, 2 ln 2, 3 ln 2; residuals +e, −e, −e, +e leave slope and start alone.

    s² = 4e²/2, spread 5·(ln 2)², t(0.975, 2) = 4.3027 (Student's t table, common knowledge); e = 0.01.
    """
    signs, e = (1, -1, -1, 1), 0.01
    found = fit_learning([(2**k, 10 * 0.8**k * math.exp(sign * e)) for k, sign in enumerate(signs)])
    assert found is not None
    assert (found.rate, found.first, found.n) == (pytest.approx(0.8), pytest.approx(10), 4)
    assert found.residual == pytest.approx(e * math.sqrt(2))
    half = 4.3027 * e * math.sqrt(2) / (math.sqrt(5) * math.log(2))
    assert found.interval == pytest.approx((0.8 * 2**-half, 0.8 * 2**half), rel=1e-5)


@given(st.floats(0.65, 0.99), st.floats(1, 100))
def test_a_fit_finds_the_curve_it_was_made_from(rate: float, first: float) -> None:
    found = fit_learning([(n, unit_time(rate, n, first)) for n in (1, 3, 10, 40, 200)])
    assert found is not None
    assert (found.rate, found.first) == (pytest.approx(rate), pytest.approx(first))
    assert found.interval is not None
    assert found.interval[0] <= rate * (1 + 1e-9)
    assert found.interval[1] >= rate * (1 - 1e-9)


def test_a_fit_asks_for_two_different_pieces() -> None:
    assert fit_learning([(3, 5.0), (3, 6.0)]) is None
    two = fit_learning([(1, 10.0), (2, 8.0)])
    assert two is not None
    assert (two.rate, two.interval) == (pytest.approx(0.8), None)


@given(st.floats(0.6, 0.99), st.floats(50, 3000), st.floats(0.5, 20), st.integers(1, 12))
def test_a_newcomer_earns_the_weeks_minutes_and_gets_no_slower(
    rate: float, reached: float, standard: float, weeks: int
) -> None:
    """Pieces × minutes is the week; each week is at least as quick as the one before; never under the standard."""
    found = list(newcomer_weeks(rate, reached, standard, 2000, weeks))
    for week in found:
        assert week.pieces * week.minutes == pytest.approx(2000)
        assert week.factor >= 1 - 1e-9
    assert all(one.minutes >= other.minutes - 1e-6 for one, other in pairwise(found))


@given(st.floats(0.7, 1.0), st.integers(300, 3000))
def test_both_models_give_a_newcomer_nearly_the_same_pieces(rate: float, reached: int) -> None:
    """Where piece `reached` takes the standard: so a plant needn't say under which model its rate was found."""
    unit = unit_total(rate, reached, unit_time(rate, 1, 1, reached))
    average = average_total(rate, reached, average_unit_time(rate, 1, 1, reached))
    assert unit == pytest.approx(average, rel=0.05)
    week, *_ = newcomer_weeks(rate, reached, 1.0, average, 1)
    assert week.pieces == pytest.approx(reached, rel=0.002)


@given(st.floats(0.505, 1.0), st.integers(1, 10**9), st.floats(0.01, 100), st.floats(0, 10000))
def test_no_learning_however_slow_stops_the_program(rate: float, reached: int, standard: float, minutes: float) -> None:
    """A week without a piece to speak of is left out; those listed are finite."""
    for week in newcomer_weeks(rate, reached, standard, minutes, 8):
        assert week.pieces > 0
        assert math.isfinite(week.minutes)


def test_somebody_at_the_standard_from_the_first_piece_needs_no_weeks() -> None:
    found = list(newcomer_weeks(0.85, 1, 2.0, 2000, 3))
    assert [week.number for week in found] == [1, 2, 3]
    assert found[1].factor == pytest.approx(1)


def test_the_standard_is_kept_once_it_is_reached() -> None:
    assert newcomer_factor(0.85, 999, 1000) > 1
    assert newcomer_factor(0.85, 1000, 1000) == 1
    assert newcomer_factor(0.85, 5000, 1000) == 1
