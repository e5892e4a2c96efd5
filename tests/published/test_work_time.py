"""Time arithmetic against published worked examples, at the precision printed there."""

from __future__ import annotations

from fractions import Fraction

import pytest

from builder.computing import allowance_factor, labour, step_study
from builder.finding import Place
from builder.model import Precision, Reading, capital_mm


def basic_time(readings: list[tuple[Fraction, Fraction]], rated: bool) -> float:
    """Basic time of readings (time, rating in percent) as a study's step has it, in the unit of the readings."""
    place = Place("study.csv")
    taken = [Reading("element", "", seconds, rating, "", place) for seconds, rating in readings]
    found = step_study("element", taken, Precision(), rated)
    assert found is not None
    return found.basic_s


def test_allowance_of_20_percent_in_both_conventions() -> None:
    """W. J. Stevenson, Operations Management, ch. 7, example on allowance factors (memory): 1.2 and 1.25."""
    assert allowance_factor(0.2, "share of basic time") == pytest.approx(1.2, abs=1e-12)
    assert allowance_factor(0.2, "share of the shift") == pytest.approx(1.25, abs=1e-12)


def test_mean_rated_with_an_allowance_of_the_workday() -> None:
    """Heizer and Render, Operations Management, ch. 10, example 1 (memory): 4.0 min at 85 is 3.4, standard 3.9."""
    normal = basic_time([(Fraction(4), Fraction(85))], rated=True)
    assert float(normal) == pytest.approx(3.4, abs=1e-12)
    assert float(normal) * allowance_factor(0.13, "share of the shift") == pytest.approx(3.9, abs=0.05)


def test_standard_minutes_from_a_stopwatch() -> None:
    """noorbutex.blogspot.com 2015/01, trade blog of a garment engineer (read): 0.6 min at 80, 10 and 20 percent."""
    basic = basic_time([(Fraction(6, 10), Fraction(80))], rated=True)
    assert float(basic) == pytest.approx(0.48, abs=1e-12)
    assert float(basic) * allowance_factor(0.1 + 0.2, "share of basic time") == pytest.approx(0.624, abs=1e-9)


SEVEN_ELEMENTS = [
    (2.05, 75, 1, 1.54),
    (1.50, 85, 1, 1.28),
    (1.15, 100, 1, 1.15),
    (1.75, 80, 1, 1.40),
    (2.02, 75, 1, 1.52),
    (1.99, 75, 1, 1.49),
    (1.34, 90, 2, 2.41),
]


@pytest.mark.parametrize(("observed", "rating", "frequency", "printed"), SEVEN_ELEMENTS)
def test_basic_times_of_seven_elements(observed: float, rating: int, frequency: int, printed: float) -> None:
    """Worked answer on askfilo.com, work measurement, time study given (read): basic times, tolerance as printed."""
    basic = basic_time([(Fraction(str(observed)), Fraction(rating))], rated=True) * frequency
    assert float(basic) == pytest.approx(printed, abs=0.006)


def test_sums_of_the_seven_elements() -> None:
    """The same answer (read): 10.79 of basic times rounded each, 13.14 of observed times."""
    basic = [basic_time([(Fraction(str(o)), Fraction(r))], rated=True) * f for o, r, f, _ in SEVEN_ELEMENTS]
    assert float(sum(basic)) == pytest.approx(10.79, abs=0.01)
    assert float(sum(Fraction(str(o)) * f for o, _, f, _ in SEVEN_ELEMENTS)) == pytest.approx(13.14, abs=1e-9)


def test_irregular_element_once_in_five_cycles() -> None:
    """M. P. Groover, Work Systems (2007), ch. 2, examples 2.2 and 2.3 (data read): 3.48 and 4.00 min."""
    normal = Fraction("3.23") + Fraction("1.25") / 5
    assert normal == Fraction("3.48")
    assert float(normal) * allowance_factor(0.15, "share of basic time") == pytest.approx(4.0, abs=0.005)


def test_labour_in_a_machine_cycle() -> None:
    """Definition of this project, after work-study texts: outside 0.30, inside 0.40, run 2.0, share 0.35 give 1.00."""
    assert labour(0.30, [(0.40, 2.0)], 0.35) == pytest.approx(1.0, abs=1e-12)


def test_two_units_a_cycle() -> None:
    """M. P. Groover, Work Systems, ch. 2 problems (data read, results computed): 1.725 min a piece."""
    assert 3.0 * allowance_factor(0.15, "share of basic time") / 2 == pytest.approx(1.725, abs=1e-12)


@pytest.mark.parametrize(("distance", "printed"), [(600, 3.49), (1000, 5.82), (700, 4.07)])
def test_capital_height_at_20_minutes_of_arc(distance: float, printed: float) -> None:
    """NUREG-0700 1.3.1-4, formula for character height (read): h = 2·D·tan(20'/2), values derived from it."""
    assert capital_mm(distance) == pytest.approx(printed, abs=0.005)
