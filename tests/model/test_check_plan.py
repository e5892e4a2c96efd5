"""A tolerance's `every:`."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.errors import TextFault
from builder.model.check_plan import ordinal, parse_check_plan
from tests.model.faults import fault_offset


@pytest.mark.parametrize(
    ("text", "words", "checks"),
    [
        ("first piece", "first piece", 1),
        ("first 5 pieces", "first 5 pieces", 5),
        ("last piece", "last piece", 1),
        ("first piece, then 20th", "first piece, then every 20th", 16),
        ("first piece then every 20th", "first piece, then every 20th", 16),
        ("first piece, every 20 pieces, last piece", "first piece, then every 20th, then last piece", 16),
        ("each piece", "each piece", 300),
        ("1st", "each piece", 300),
        ("every 22nd piece", "every 22nd", 13),
        ("batch", "each batch", 1),
        ("bundle", "each bundle", 12),
        ("first piece, bundle", "first piece, then each bundle", 13),
        ("hourly", "every hour", None),
        ("2 h", "every 2 h", None),
        ("every 30 min", "every 30 min", None),
        ("90 min", "every 90 min", None),
        ("shift start", "at shift start", None),
        ("first piece, after needle change", "first piece, then after needle change", None),
    ],
)
def test_a_plan_is_read(text: str, words: str, checks: int | None) -> None:
    """With the checks it makes in a batch of 300 in bundles of 25; the 300th is a 20th and counts once."""
    plan = parse_check_plan(text)
    assert plan.words() == words
    assert plan.checks(300, 25) == checks
    assert plan.per_piece(300, 25) == (None if checks is None else Fraction(checks, 300))


def test_a_plan_by_bundles_needs_to_know_their_size() -> None:
    """Without it nothing is guessed."""
    assert parse_check_plan("bundle").checks(300) is None


def test_a_batch_smaller_than_the_plan_is_checked_whole() -> None:
    """First five of three are three."""
    assert parse_check_plan("first 5 pieces, last 2 pieces").checks(3) == 3
    assert parse_check_plan("20th").checks(10) == 0


def test_words_read_back_to_the_same_plan() -> None:
    """What a sheet prints can be typed."""
    for text in (
        "first 5 pieces, 20th, last piece",
        "hourly",
        "2 h, shift start",
        "after needle change, bundle",
    ):
        plan = parse_check_plan(text)
        assert parse_check_plan(plan.words()).parts == plan.parts


@pytest.mark.parametrize(
    ("text", "offset", "message", "remedy"),
    [
        ("every 0th", 0, "never comes", "leave it out"),
        ("first 0 pieces", 0, "never comes", "leave it out"),
        ("0 h", 0, "never comes", "leave it out"),
        ("20", 0, "20 of what?", "20th"),
        ("5 %", 0, "share", "20th"),
        ("each piece, 20th", 12, "says it all", "each piece"),
        ("every piece, first piece", 13, "says it all", "each piece"),
        ("sometimes", 0, "no time for a check", "20th"),
        ("first piece, first piece", 13, "twice", "Leave one out"),
        ("frist piece", 0, "unknown word frist", "Write first piece"),
        ("first piece,, 20th", 12, "beside a separator", "Leave it out"),
        (", 20th", 0, "beside a separator", "Leave it out"),
        ("first piece,", 11, "beside a separator", "Leave it out"),
    ],
)
def test_the_refusals_of_the_reference_page(text: str, offset: int, message: str, remedy: str) -> None:
    """Each with place and remedy."""
    with pytest.raises(TextFault) as caught:
        parse_check_plan(text)
    assert message in caught.value.message
    assert caught.value.offset == offset
    assert remedy in caught.value.remedy


def test_ordinals() -> None:
    """English ones."""
    assert [ordinal(n) for n in (1, 2, 3, 4, 11, 12, 13, 21, 102, 111)] == (
        ["1st", "2nd", "3rd", "4th", "11th", "12th", "13th", "21st", "102nd", "111th"]
    )


@given(st.text(max_size=14) | st.text(alphabet="0123456789 firstlapecevyhn,%", max_size=24))
def test_any_text_is_read_or_refused(text: str) -> None:
    """No other exception, and the offset lies in the text."""
    assert 0 <= fault_offset(parse_check_plan, text) <= len(text)


def test_endless_digits_are_refused() -> None:
    """Not an error of Python's."""
    with pytest.raises(TextFault):
        parse_check_plan("1" * 5000 + "th")
