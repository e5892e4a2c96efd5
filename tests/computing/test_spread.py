"""Spread, intervals, readings needed, odd readings, drift."""

from __future__ import annotations

import math
import random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.computing import (
    drift_z,
    interval,
    modified_z,
    readings_normal,
    readings_t_iterated,
    readings_t_pilot,
    sample_sd,
    t_quantile,
)

POSITIVE = st.floats(min_value=0.1, max_value=1000)


def test_the_example_of_the_definition() -> None:
    """Mean 20 s, s 2 s, 5 % at 95 %: iterated 18; pilot of 15 18.4; normal 15.4 (definition of this project)."""
    assert readings_t_iterated(20, 2, 0.05, 0.95) == 18
    assert readings_t_pilot(20, 2, 15, 0.05, 0.95) == pytest.approx(18.4, abs=0.05)
    assert readings_normal(20, 2, 0.05, 1.96) == pytest.approx(15.4, abs=0.05)


@given(POSITIVE, st.floats(min_value=0.0, max_value=2.0), st.floats(0.01, 0.3), st.floats(0.5, 0.999))
def test_the_iterated_number_is_the_smallest_that_suffices(
    centre: float, spread: float, within: float, confidence: float
) -> None:
    """With it the interval is narrow enough, with one less it is not."""
    sd = centre * spread
    n = readings_t_iterated(centre, sd, within, confidence)
    assert t_quantile(confidence, n - 1) * sd / math.sqrt(n) <= within * centre * (1 + 1e-9)
    if n > 2:
        assert t_quantile(confidence, n - 2) * sd / math.sqrt(n - 1) > within * centre * (1 - 1e-9)


@given(POSITIVE, POSITIVE, st.integers(2, 200), st.floats(0.5, 0.999))
def test_more_readings_of_the_same_variance_never_widen_the_interval(
    centre: float, sd: float, n: int, confidence: float
) -> None:
    few, more = interval(centre, sd, n, confidence), interval(centre, sd, n + 1, confidence)
    assert few is not None
    assert more is not None
    assert more[1] - more[0] <= few[1] - few[0] + 1e-12


def test_one_reading_has_no_interval_and_equal_ones_have_no_width() -> None:
    assert sample_sd([3.0]) is None
    assert interval(3.0, None, 1, 0.95) is None
    assert interval(3.0, sample_sd([3.0, 3.0, 3.0]), 3, 0.95) == (3.0, 3.0)


def test_the_odd_reading_of_the_definition() -> None:
    """20 21 19 20 22 20 30: 6.7 for the 30."""
    scores = modified_z([20, 21, 19, 20, 22, 20, 30])
    assert scores is not None
    assert [round(one, 1) for one in scores] == [0.0, 0.7, -0.7, 0.0, 1.3, 0.0, 6.7]


def test_where_most_readings_are_equal_none_is_odd() -> None:
    assert modified_z([5, 5, 5, 5, 9]) is None
    assert modified_z([]) is None


def test_drift_of_ten_growing_readings() -> None:
    """S = 45, variance 10·9·25/18 = 125: z = 44/√125 (worked by hand)."""
    assert drift_z([float(i) for i in range(10)]) == pytest.approx(44 / math.sqrt(125))
    assert drift_z([float(-i) for i in range(10)]) == pytest.approx(-44 / math.sqrt(125))


def test_drift_asks_for_ten_readings_and_two_values() -> None:
    assert drift_z([1.0] * 9) is None
    assert drift_z([1.0] * 12) == 0.0


@given(st.lists(st.integers(0, 5), min_size=10, max_size=40))
def test_drift_counts_as_the_plain_definition_does(values: list[int]) -> None:
    """S by all pairs, and its variance with ties."""
    z = drift_z([float(one) for one in values])
    s = sum((b > a) - (b < a) for i, a in enumerate(values) for b in values[i + 1 :])
    n = len(values)
    ties = sum(values.count(v) * (values.count(v) - 1) * (2 * values.count(v) + 5) for v in set(values))
    variance = (n * (n - 1) * (2 * n + 5) - ties) / 18
    expected = 0.0 if s == 0 or variance == 0 else (s - math.copysign(1, s)) / math.sqrt(variance)
    assert z == pytest.approx(expected)


def test_chance_alone_seldom_drifts() -> None:
    """Of 400 studies without a trend about 5 in 100 show one (seeded)."""
    rolls = random.Random(7)
    found = sum(abs(drift_z([rolls.random() for _ in range(20)]) or 0) > 1.96 for _ in range(400))
    assert 8 <= found <= 32
