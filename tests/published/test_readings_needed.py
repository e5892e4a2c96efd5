"""Numbers of observations and standard deviations against published worked examples, at the precision printed there."""

from __future__ import annotations

import math

import pytest

from builder.computing import readings_normal, readings_root, readings_t_pilot, sample_sd, z_quantile
from builder.computing.spread import recommended_cycles


def test_normal_approximation_with_z_217() -> None:
    """Course slides MEE308 Time study (2017), id.scribd.com/document/350697365 (read): 11.14, mean 65 s, s 5 s."""
    assert readings_normal(65, 5, 0.05, 2.17) == pytest.approx(11.14, abs=0.01)


def test_relative_and_absolute_error() -> None:
    """W. J. Stevenson, Operations Management, ch. 7, example 1 (memory): 41.36 -> 42; 67.77 -> 68."""
    relative = readings_normal(6.4, 2.1, 0.10, 1.96)
    absolute = readings_normal(6.4, 2.1, 0.5 / 6.4, 1.96)
    assert (relative, absolute) == (pytest.approx(41.36, abs=0.005), pytest.approx(67.77, abs=0.005))
    assert (math.ceil(relative), math.ceil(absolute)) == (42, 68)


def test_five_percent_at_95() -> None:
    """Heizer and Render, Operations Management, ch. 10, example 3 (memory): 170.74 -> 171."""
    n = readings_normal(3.0, 1.0, 0.05, 1.96)
    assert n == pytest.approx(170.74, abs=0.005)
    assert math.ceil(n) == 171


def test_forty_root_form() -> None:
    """ILO, Introduction to Work Study, 4th ed. 1992, ch. on selecting and timing the job (memory): 8.81 -> 9."""
    n = readings_root([7, 6, 7, 7, 6])
    assert n == pytest.approx(8.81, abs=0.01)
    assert math.ceil(n) == 9


def test_twenty_root_form_for_ten_percent() -> None:
    """transtutors.com, sample size determination (read): 4; the page's unrounded value is not used."""
    assert math.ceil(readings_root([8, 7, 8, 9, 7], 20)) == 4


def test_t_based_number_from_a_pilot() -> None:
    """Niebel and Freivalds, Methods, Standards, and Work Design, ch. Time study (memory): 25 readings, 153.3 -> 154."""
    n = readings_t_pilot(0.30, 0.09, 25, 0.05, 0.95)
    assert n == pytest.approx(153.3, abs=0.1)
    assert math.ceil(n) == 154


def test_six_pilot_readings_at_94_percent() -> None:
    """W. J. Stevenson, Operations Management, ch. 7 problem (data read, answer memory): s 0.253, 78 cycles."""
    readings = [5.2, 5.5, 5.8, 5.3, 5.5, 5.1]
    sd = sample_sd(readings)
    assert sum(readings) / 6 == pytest.approx(5.4, abs=1e-9)
    assert sd == pytest.approx(0.253, abs=0.0005)
    assert sd is not None
    assert z_quantile(0.94) == pytest.approx(1.88, abs=0.005)
    assert math.ceil(readings_normal(5.4, 0.253, 0.01, 1.88)) == 78


def test_work_sampling_size() -> None:
    """Heizer and Render, ch. 10, work sampling (memory): z² p(1 − p)/h² with p 0.25, h 0.03, z 2 prints 833."""
    # A share is the mean of zeros and ones: s = √(p(1 − p)), the error h absolute.
    assert readings_normal(0.25, math.sqrt(0.25 * 0.75), 0.03 / 0.25, 2) == pytest.approx(833, abs=0.5)


FIVE_ELEMENTS = [
    ([23, 20, 21, 19, 22, 19, 21, 23, 20, 23], 1.5951),
    ([13, 14, 16, 15, 15, 13, 16, 17, 16, 17], 1.4757),
    ([16, 21, 18, 17, 18, 19, 17, 18, 19, 20], 1.4944),
    ([10, 10, 9, 10, 9, 12, 9, 11, 10, 9], 0.9944),
    ([12, 11, 10, 13, 12, 11, 13, 12, 11, 13], 1.0328),
]


@pytest.mark.parametrize(("readings", "printed"), FIVE_ELEMENTS)
def test_sample_standard_deviations(readings: list[float], printed: float) -> None:
    """tutorsglobe.com, given the following unit time observations (read)."""
    assert sample_sd(readings) == pytest.approx(printed, abs=5e-5)


CYCLES = [
    (0.10, 200),
    (0.25, 100),
    (0.50, 60),
    (0.75, 40),
    (1, 30),
    (2, 20),
    (5, 15),
    (10, 10),
    (20, 8),
    (40, 5),
    (41, 3),
]


@pytest.mark.parametrize(("minutes", "cycles"), CYCLES)
def test_recommended_number_of_cycles(minutes: float, cycles: int) -> None:
    """Time study manual of a large electrical maker (1940s), in Niebel and in ILO (memory)."""
    assert recommended_cycles(minutes) == cycles
