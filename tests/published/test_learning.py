"""Learning curves against published values, at the precision printed there.

BF: B. C. Boehmke, J. K. Freels, learningCurve R package (Air Force Institute of Technology, 2017), vignette output in
GitHub AFIT-R/learningCurve, docs/articles/learningCurve.html, commit 4e7be187685b, and its tests/testthat (read).
SM: solutions manual, ch. 13 Learning Curves, problems 13.1 to 13.5, coursehero.com/file/6536972 (read).
"""

from __future__ import annotations

import pytest

from builder.computing import (
    average_total,
    average_unit_time,
    exponent,
    rate_from_total,
    rate_of,
    unit_time,
    unit_total,
    unit_total_approximate,
)

RATES = [(0.8, 21.13225), (0.825, 26.18401), (0.85, 32.23647), (0.875, 39.44942), (0.9, 48.00243)]


@pytest.mark.parametrize(("rate", "hours"), RATES)
def test_unit_time_of_piece_125(rate: float, hours: float) -> None:
    """BF: first unit 100 h."""
    assert unit_time(rate, 125, 100) == pytest.approx(hours, abs=5e-6)


LATER = [(0.83, 1, 100, 80, 30.79056), (0.92, 20, 120, 150, 94.17084), (0.87, 10, 90, 175, 50.64078)]


@pytest.mark.parametrize(("rate", "known", "took", "n", "hours"), LATER)
def test_unit_time_from_a_known_later_piece(rate: float, known: int, took: float, n: int, hours: float) -> None:
    """BF, vignette."""
    assert unit_time(rate, n, took, known) == pytest.approx(hours, abs=5e-6)


def test_unit_time_when_piece_100_took_100_hours() -> None:
    """BF, tests: 94.903 h for piece 125 at 85 %."""
    assert unit_time(0.85, 125, 100, 100) == pytest.approx(94.903, abs=0.0005)


def test_unit_totals_exact_and_approximate() -> None:
    """BF: pieces 1 to 125, 5201.085 and 5202.988 h; to one million, 5 119 612 and 5 119 614 h."""
    assert unit_total(0.85, 125, 100) == pytest.approx(5201.085, abs=0.0005)
    assert unit_total_approximate(0.85, 125, 100) == pytest.approx(5202.988, abs=0.0005)
    assert unit_total(0.85, 10**6, 100) == pytest.approx(5119612, abs=0.5)
    assert unit_total_approximate(0.85, 10**6, 100) == pytest.approx(5119614, abs=0.5)


def test_cumulative_average_unit_times() -> None:
    """BF: 24.70136 h for piece 125; tests 23.34 and 36.909 h."""
    assert average_unit_time(0.85, 125, 100) == pytest.approx(24.70136, abs=5e-6)
    assert average_unit_time(0.885, 2200, 110) == pytest.approx(23.34, abs=0.0005)
    assert average_unit_time(0.75, 350, 225, 5) == pytest.approx(36.909, abs=0.0005)


def test_cumulative_average_blocks() -> None:
    """BF: 4029.559 h for pieces 1 to 125; tests 806.77 and 1188.61 h."""
    assert average_total(0.85, 125, 100) == pytest.approx(4029.559, abs=0.0005)
    assert average_total(0.85, 250, 75, 201) == pytest.approx(806.77, abs=0.005)
    assert average_total(0.75, 165, 125, 55) == pytest.approx(1188.61, abs=0.005)


@pytest.mark.parametrize(("rate", "b"), [(0.8, -0.3219281), (0.85, -0.2344653), (0.9, -0.1520031)])
def test_exponent_and_rate(rate: float, b: float) -> None:
    """BF."""
    assert exponent(rate) == pytest.approx(b, abs=5e-8)
    assert rate_of(b) == pytest.approx(rate, abs=5e-8)


def test_rate_from_a_block() -> None:
    """BF: 250 units in 8250 h, first unit 80 h, cumulative-average model: 0.8947908."""
    assert rate_from_total(8250, 80, 250) == pytest.approx(0.8947908, abs=5e-8)
    assert exponent(rate_from_total(8250, 80, 250)) == pytest.approx(-0.1603777, abs=5e-8)


def test_cumulative_average_by_doublings() -> None:
    """Accounting course text, ch. 15, p. 324, online.flipbuilder.com/bmcx/vksq (read): 100 to 655.36 h."""
    totals = [average_total(0.8, n, 100) for n in (1, 2, 4, 8, 16)]
    assert totals == pytest.approx([100, 160, 256, 409.6, 655.36], abs=1e-9)
    assert [total / n for total, n in zip(totals, (1, 2, 4, 8, 16), strict=True)] == pytest.approx(
        [100, 80, 64, 51.2, 40.96], abs=1e-9
    )
    blocks = [average_total(0.8, n, 100, begin) for begin, n in ((1, 1), (2, 2), (3, 4), (5, 8))]
    assert blocks == pytest.approx([100, 60, 96, 153.6], abs=1e-9)
    averages = [block / n for block, n in zip([*blocks, 655.36 - 409.6], (1, 1, 2, 4, 8), strict=True)]
    assert averages == pytest.approx([100, 60, 48, 38.4, 30.72], abs=1e-9)


def test_eighteen_aircraft() -> None:
    """SM 13.1, 80 %, first unit 300 h: piece 5 178.7 h; to 5 1121.4, to 18 2914.8 h by three-decimal factors."""
    assert unit_time(0.8, 5, 300) == pytest.approx(178.7, abs=0.05)
    assert unit_total(0.8, 5, 300) == pytest.approx(1121.4, abs=0.2)
    assert unit_total(0.8, 18, 300) == pytest.approx(2914.8, abs=0.2)


def test_three_units_at_70_percent() -> None:
    """SM 13.3: 10.5, 8.523 min, together 34.023 min."""
    assert unit_time(0.7, 2, 15) == pytest.approx(10.5, abs=0.001)
    assert unit_time(0.7, 3, 15) == pytest.approx(8.523, abs=0.001)
    assert unit_total(0.7, 3, 15) == pytest.approx(34.023, abs=0.001)


def test_four_units_at_95_percent() -> None:
    """SM 13.5: 57, 55.32, 54.15 min."""
    assert [unit_time(0.95, n, 60) for n in (2, 3, 4)] == pytest.approx([57, 55.32, 54.15], abs=0.02)


def test_ten_exams_at_80_percent() -> None:
    """Student answer with printed table, coursehero.com/file/14064008 (read); three-decimal factors."""
    printed = [15, 12, 10.53, 9.6, 8.93, 8.42, 8.02, 7.68, 7.39, 7.15]
    assert [unit_time(0.8, n, 15) for n in range(1, 11)] == pytest.approx(printed, abs=0.011)
    totals = [15, 27, 37.53, 47.13, 56.06, 64.49, 72.5, 80.18, 87.58, 94.72]
    assert [unit_total(0.8, n, 15) for n in range(1, 11)] == pytest.approx(totals, abs=0.011)
    assert unit_time(0.8, 25, 15) == pytest.approx(5.32, abs=0.011)


def test_the_integral_differs_little_over_twenty_cycles() -> None:
    """Lecture summary of M. P. Groover, Work Systems, ch. 19, Scribd 535064047 (read): 0.258 percent."""
    exact, approximate = unit_total(0.8, 20, 10), unit_total_approximate(0.8, 20, 10)
    assert abs(approximate / exact - 1) * 100 == pytest.approx(0.258, abs=0.0005)
