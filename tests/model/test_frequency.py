"""A step's `per:`."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.errors import TextFault
from builder.model.frequency import EACH_PIECE, Per, parse_frequency
from tests.model.faults import fault_offset

LOTS: dict[Per, Fraction] = {
    "bundle": Fraction(25),
    "batch": Fraction(300),
    "bobbin": Fraction(27, 2),
    "cone": Fraction(900),
    "needle": Fraction(400),
    "sheet": Fraction(22),
}


@pytest.mark.parametrize(
    ("text", "share"),
    [
        ("piece", Fraction(1)),
        ("20 pieces", Fraction(1, 20)),
        ("1 pieces", Fraction(1)),
        ("bundle", Fraction(1, 25)),
        ("batch", Fraction(1, 300)),
        ("bobbin", Fraction(2, 27)),
        ("cone", Fraction(1, 900)),
        ("needle", Fraction(1, 400)),
        ("sheet", Fraction(1, 22)),
        ("3 times a piece", Fraction(3)),
        ("2 times per 20 pieces", Fraction(1, 10)),
        ("2 times a bundle", Fraction(2, 25)),
        ("2 times a bobbin", Fraction(4, 27)),
    ],
)
def test_how_often_a_step_is_done(text: str, share: Fraction) -> None:
    """Per piece, in a batch of 300 in bundles of 25, with 13.5 pieces a bobbin and so on."""
    assert parse_frequency(text).share(LOTS) == share


def test_a_lot_nobody_knows_counts_nothing() -> None:
    """And is a finding, elsewhere."""
    assert parse_frequency("bobbin").share({"bundle": Fraction(25)}) == 0


def test_a_step_without_per_is_done_once_a_piece() -> None:
    """The default reads like the text."""
    assert parse_frequency("piece") == EACH_PIECE


@pytest.mark.parametrize(
    ("text", "message", "remedy"),
    [
        ("0 pieces", "never done", "leave the step out"),
        ("0 times a piece", "never done", "leave the step out"),
        ("-5 pieces", "negative", "minus"),
        ("2.5 pieces", "whole numbers", "2 pieces"),
        ("2,5 pieces", "whole numbers", "2 pieces"),
        ("1/2 piece", "whole numbers", "2 pieces"),
        ("20", "20 of what?", "20 pieces"),
        ("pieces", "how often", "Write piece"),
        ("20 piece", "how often", "Write 20 pieces"),
        ("20 bundles", "how often", "Write bundle"),
        ("bundel", "how often", "Write bundle"),
        ("2 bobbins", "how often", "Write bobbin"),
        ("cones", "how often", "Write cone"),
        ("nedle", "how often", "Write needle"),
        ("sheets", "how often", "Write sheet"),
        ("hour", "time of day", "piece"),
        ("once in a while", "how often", "20 pieces"),
    ],
)
def test_the_refusals_of_the_reference_page(text: str, message: str, remedy: str) -> None:
    """Each with a remedy."""
    with pytest.raises(TextFault) as caught:
        parse_frequency(text)
    assert message in caught.value.message
    assert remedy in caught.value.remedy


@given(st.text(max_size=14) | st.text(alphabet="0123456789 piecestmaburndl.-,", max_size=20))
def test_any_text_is_read_or_refused(text: str) -> None:
    """No other exception, and the offset lies in the text."""
    assert 0 <= fault_offset(parse_frequency, text) <= len(text)


def test_endless_digits_are_refused() -> None:
    """Not an error of Python's."""
    with pytest.raises(TextFault):
        parse_frequency("1" * 5000 + " pieces")
