"""The arithmetic of rounding."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.model.rounding import SIXTEENTH, decimal, down, exact, in_step, mixed, nearest, up

NUMBERS = st.fractions(min_value=-1000, max_value=1000, max_denominator=5000)
STEPS = st.sampled_from([Fraction(1), Fraction(1, 10), Fraction(1, 16), Fraction(1, 100)])


@given(NUMBERS, STEPS)
def test_down_and_up_enclose_a_value_within_one_step(value: Fraction, step: Fraction) -> None:
    """Also below zero."""
    assert down(value, step) <= value <= up(value, step)
    assert up(value, step) - down(value, step) in (0, step)
    assert abs(nearest(value, step) - value) * 2 <= step


@pytest.mark.parametrize(("value", "shown"), [("0.5", "1"), ("-0.5", "−1"), ("2.5", "3"), ("-0.4", "0"), ("0.49", "0")])
def test_halves_go_away_from_zero(value: str, shown: str) -> None:
    """And there is no minus zero."""
    assert decimal(Fraction(value), 0, True) == shown


def test_a_float_counts_as_the_decimal_it_prints() -> None:
    """1.005 in binary lies below 1.005, but a person rounds what is read."""
    assert decimal(exact(1.005), 2, False) == "1.01"
    assert decimal(exact(1e-7), 2, False) == "0.00"


@pytest.mark.parametrize(
    ("value", "text"), [("3/2", "1 1/2"), ("1/16", "1/16"), ("2", "2"), ("-3/2", "−1 1/2"), ("0", "0")]
)
def test_mixed_fractions(value: str, text: str) -> None:
    """As on a rule."""
    assert mixed(Fraction(value)) == text


def test_a_step_decides_how_a_number_is_written() -> None:
    """Fractions for sixteenths, decimals for tenths."""
    assert in_step(Fraction(3, 16), SIXTEENTH) == "3/16"
    assert in_step(Fraction(3, 10), Fraction(1, 10)) == "0.3"
    assert in_step(Fraction(3), Fraction(1, 10)) == "3"
