"""Text made plain before it is read."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.errors import TextFault
from builder.model.plain_text import plain_number, read_number, read_tidy, tidy


@pytest.mark.parametrize(
    ("typed", "plain"),
    [
        ("2 in", "2 in"),
        ("1½ in", "1 1/2 in"),
        ("½ in", "1/2 in"),
        ("−3 mm", "-3 mm"),
        ("1–2", "1-2"),
        ("330 g/m²", "330 g/m2"),
        ("38\N{NO-BREAK SPACE}mm", "38 mm"),
        ("38\N{THIN SPACE}mm", "38 mm"),
        ("25…27 mm", "25..27 mm"),
        ("2″", '2"'),
        ("2 ± 1/16", "2 ± 1/16"),
        ("1\t2", "1 2"),
        ("3⁄4", "3/4"),
    ],
)
def test_characters_are_made_plain(typed: str, plain: str) -> None:
    """One spelling for each sign."""
    assert tidy(typed)[0] == plain


@given(st.text())
def test_every_plain_character_knows_where_it_came_from(typed: str) -> None:
    """Origins never run backwards or past the end."""
    plain, origins = tidy(typed)
    if origins is None:
        assert len(plain) == len(typed)
    else:
        assert len(origins) == len(plain)
        assert list(origins) == sorted(origins)
        assert all(0 <= origin < len(typed) for origin in origins)


def test_a_fault_points_into_the_text_as_typed() -> None:
    """½ becomes three characters; a fault behind it still points at the typed one."""

    def read(plain: str) -> None:
        raise TextFault("x", plain.index("q"), "y")

    with pytest.raises(TextFault) as caught:
        read_tidy("½ q", read)
    assert caught.value.offset == 2


def test_nothing_written_is_a_fault() -> None:
    """Not an empty value."""
    with pytest.raises(TextFault, match="nothing is written"):
        read_tidy(" \t", str)


@given(st.fractions(min_value=-1000, max_value=1000, max_denominator=64))
def test_a_plain_number_reads_back(number: Fraction) -> None:
    """Nothing is rounded."""
    text = plain_number(number)
    assert read_number(text.lstrip("-"), 0) == abs(number)
    assert text.startswith("-") == (number < 0)


def test_zero_under_the_line_is_a_fault() -> None:
    """It points at the zero."""
    with pytest.raises(TextFault, match="over 0") as caught:
        read_number("1 1/0", 3)
    assert caught.value.offset == 7


def test_endless_digits_are_a_fault() -> None:
    """Not an error of Python's."""
    with pytest.raises(TextFault, match="too many digits"):
        read_number("1" * 5000, 0)
