"""Readings of several steps pooled: the mean, its interval, and whether the steps agree."""

from __future__ import annotations

import random
from statistics import fmean

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.computing import interval, pooled, sample_sd, z_quantile

SECONDS = st.floats(0.5, 60)


@given(st.integers(2, 6).flatmap(lambda n: st.lists(st.lists(SECONDS, min_size=n, max_size=n), min_size=2, max_size=6)))
def test_equal_numbers_of_readings_give_the_plain_mean_of_the_steps(groups: list[list[float]]) -> None:
    assert pooled(groups, 0.95).mean_s == pytest.approx(fmean(fmean(group) for group in groups))


@given(st.lists(st.lists(SECONDS, min_size=1, max_size=6), min_size=1, max_size=6))
def test_the_interval_lies_round_the_mean_of_all_readings(groups: list[list[float]]) -> None:
    found = pooled(groups, 0.95)
    values = [value for group in groups for value in group]
    assert found.mean_s == pytest.approx(fmean(values))
    assert found.n == len(values)
    if len(values) == 1:
        assert found.interval_s is found.error_s is None
        return
    assert found.interval_s is not None
    assert found.error_s is not None
    low, high = found.interval_s
    assert low <= found.mean_s <= high
    assert found.error_s == pytest.approx((high - low) / 2 / z_quantile(0.95))


def test_one_step_is_a_mean_as_any_other() -> None:
    values = [2.0, 2.4, 2.2, 2.1]
    found = pooled([values], 0.9)
    assert found.interval_s == interval(found.mean_s, sample_sd(values), 4, 0.9)
    assert (found.homogeneous, found.between_sd_s, found.within_sd_s) == (None, None, sample_sd(values))


def test_one_reading_a_step_counts_the_steps() -> None:
    """Nobody can tell the scatter of readings from that of steps."""
    found = pooled([[2.0], [2.4], [2.2]], 0.95)
    assert found.interval_s == interval(found.mean_s, sample_sd([2.0, 2.4, 2.2]), 3, 0.95)
    assert (found.homogeneous, found.f) == (None, None)


def test_equal_work_keeps_the_interval_of_all_its_readings_and_other_work_widens_it() -> None:
    """The same readings, once dealt out evenly, once with half a second more in one step."""
    chance = random.Random(11)
    groups = [[chance.gauss(3, 0.2) for _ in range(20)] for _ in range(4)]
    centred = [[value - fmean(group) + 3 for value in group] for group in groups]
    even, uneven = pooled(centred, 0.95), pooled([*centred[:3], [value + 0.5 for value in centred[3]]], 0.95)
    assert even.homogeneous is True
    assert uneven.homogeneous is False
    assert even.interval_s is not None
    assert uneven.interval_s is not None
    plain = interval(3.0, even.within_sd_s, 80, 0.95)
    assert plain is not None
    assert even.interval_s[1] - 3 == pytest.approx(plain[1] - 3, rel=0.02)
    assert even.between_sd_s == 0
    assert uneven.between_sd_s == pytest.approx(0.25, rel=0.05)  # of steps at 0, 0, 0 and 0.5
    assert uneven.interval_s[1] - uneven.interval_s[0] > 6 * (even.interval_s[1] - even.interval_s[0])


def test_steps_without_scatter_agree_only_when_equal() -> None:
    assert pooled([[2.0, 2.0], [2.0, 2.0]], 0.95).homogeneous is True
    assert pooled([[2.0, 2.0], [2.1, 2.1]], 0.95).homogeneous is False


def test_with_five_steps_the_interval_holds_the_truth_about_as_often_as_it_says() -> None:
    """Steps that differ by 0.1 s, readings by 0.25 s: 95 % intervals hold 3 s in 85 to 99 of 100 trials."""
    chance = random.Random(5)
    held = 0
    for _ in range(300):
        steps = [3 + chance.gauss(0, 0.1) for _ in range(5)]
        span = pooled([[chance.gauss(step, 0.25) for _ in range(20)] for step in steps], 0.95).interval_s
        assert span is not None
        held += span[0] <= 3 <= span[1]
    assert 255 <= held <= 297
