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
    fit_learning,
    newcomer_factor,
    newcomer_weeks,
    unit_time,
    unit_total,
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


def test_the_standard_is_kept_once_it_is_reached() -> None:
    assert newcomer_factor(0.85, 999, 1000) > 1
    assert newcomer_factor(0.85, 1000, 1000) == 1
    assert newcomer_factor(0.85, 5000, 1000) == 1
