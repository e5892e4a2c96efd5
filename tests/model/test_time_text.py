"""A step's `time:`."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.errors import TextFault
from builder.model.time_text import Element, Estimate, parse_time
from tests.model.faults import fault_offset


@pytest.mark.parametrize(
    ("text", "seconds", "low", "high"),
    [
        ("3.5 s", "3.5", None, None),
        ("0.06 min", "3.6", None, None),
        ("3..4 s", "3.5", 3, 4),
        ("3.5 s ± 0.5", "3.5", 3, 4),
        ("3.5 s +- 0.5", "3.5", 3, 4),
    ],
)
def test_an_estimate_may_have_a_range(text: str, seconds: str, low: int | None, high: int | None) -> None:
    """The middle counts."""
    assert parse_time(text) == Estimate(
        Fraction(seconds),
        None if low is None else Fraction(low),
        None if high is None else Fraction(high),
        text,
    )


@pytest.mark.parametrize(
    ("text", "name", "count", "offset"),
    [
        ("pick-up-small", "pick-up-small", 1, 0),
        ("2 x pick-up", "pick-up", 2, 4),
        ("2 × pick-up", "pick-up", 2, 4),
        ("2× pick-up", "pick-up", 2, 3),
        ("xylo", "xylo", 1, 0),
    ],
)
def test_an_element_is_named_with_its_count(text: str, name: str, count: int, offset: int) -> None:
    """A name that begins with x is a name."""
    assert parse_time(text) == Element(name, count, text, offset)


@pytest.mark.parametrize(
    ("text", "offset", "message", "remedy"),
    [
        ("3.5", 3, "which unit?", "3.5 s"),
        ("0 s", 0, "a step takes time", "leave the line out"),
        ("0..0 s", 0, "no room", "different"),
        ("-2 s", 0, "negative", "minus"),
        ("0 x name", 0, "whole number of times", "per: 2 pieces"),
        ("1.5 x name", 0, "whole number of times", "per: 2 pieces"),
        ("1/2 x name", 0, "whole number of times", "per: 2 pieces"),
        ("reach + grasp", 6, "one element a step", "two steps"),
        ("reach, grasp", 5, "one element a step", "two steps"),
        ("2 x reach + grasp", 10, "one element a step", "two steps"),
        ("Pick up", 0, "lower-case", "Write pick-up"),
        ("2 x Reach", 4, "lower-case", "Write reach"),
        ("max 4 s", 0, "a value or a range", "3..4 s"),
        ("4 s +1 -0", 4, "a value or a range", "3..4 s"),
        ("± 1 s", 0, "a value or a range", "3..4 s"),
        ("3,5 s", 1, "decimal comma", "3.5"),
        ("3.5 mm", 4, "mm is a length", "3.5 s"),
    ],
)
def test_the_refusals_of_the_reference_page(text: str, offset: int, message: str, remedy: str) -> None:
    """Each with place and remedy."""
    with pytest.raises(TextFault) as caught:
        parse_time(text)
    assert message in caught.value.message
    assert caught.value.offset == offset
    assert remedy in caught.value.remedy


@given(st.text(max_size=14) | st.text(alphabet="0123456789 x×.smin-+±,", max_size=14))
def test_any_text_is_read_or_refused(text: str) -> None:
    """No other exception, and the offset lies in the text."""
    assert 0 <= fault_offset(parse_time, text) <= len(text)


def test_endless_digits_are_refused() -> None:
    """Not an error of Python's."""
    with pytest.raises(TextFault):
        parse_time("1" * 5000 + " x reach")
