"""Quantities, ranges and counts."""

from fractions import Fraction
from time import perf_counter

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.errors import TextFault
from builder.model.quantity import Quantity, parse_count, parse_quantity, parse_range
from builder.model.units import DIMENSIONS
from tests.model.faults import fault_offset


@pytest.mark.parametrize(
    ("text", "dimension", "value", "unit"),
    [
        ("2 in", "length", "50.8", "in"),
        ("1 1/2 in", "length", "38.1", "in"),
        ("1½ in", "length", "38.1", "in"),
        ("1/8 in", "length", "3.175", "in"),
        ("½″", "length", "12.7", "in"),
        ('2"', "length", "50.8", "in"),
        ("38 mm", "length", "38", "mm"),
        ("3.2mm", "length", "3.2", "mm"),
        (".5 in", "length", "12.7", "in"),
        ("8 st/in", "stitch length", "3.175", "st/in"),
        ("4 st/cm", "stitch length", "2.5", "st/cm"),
        ("3.2 mm/st", "stitch length", "3.2", "mm/st"),
        ("3.2 mm", "stitch length", "3.2", "mm"),
        ("250 den", "linear density", "250/9", "den"),
        ("tkt 40", "linear density", "75", "tkt"),
        ("Nm 80/2", "linear density", "25", "Nm"),
        ("2400 st/min", "stitch rate", "40", "st/min"),
        ("5 %", "share", "0.05", "%"),
        ("0.05", "share", "0.05", ""),
        ("1", "share", "1", ""),
        ("150 %", "share", "1.5", "%"),
        ("330 g/m²", "areal mass", "330", "g/m2"),
        ("-5 °C", "temperature", "-5", "°C"),
        ("−40 °F", "temperature", "-40", "°F"),
        ("45°", "angle", "45", "deg"),
        ("12 pieces", "count", "12", "pieces"),
        ("0.06 min", "time", "3.6", "min"),
    ],
)
def test_a_quantity_is_read_exactly(text: str, dimension: str, value: str, unit: str) -> None:
    """In base units, with the unit typed."""
    quantity = parse_quantity(text, dimension)
    assert (quantity.value, quantity.unit, quantity.dimension) == (Fraction(value), unit, dimension)


@pytest.mark.parametrize(
    ("text", "dimension", "offset", "message", "remedy"),
    [
        ("3,2 mm", "length", 1, "decimal comma", "Write 3.2, not 3,2"),
        ("2,400 st/min", "stitch rate", 1, "a comma inside a number", "2400 st/min"),
        ("1 500 mm", "length", 1, "a blank inside a number", "without a blank"),
        ("38", "length", 2, "which unit?", "Write 38 mm or 38 in"),
        ("38 kg", "length", 3, "this asks for a length; kg is a mass", "38 mm"),
        ("38 lb", "force", 3, "lb is a mass", "lbf"),
        ("38 inch", "length", 3, "unknown unit inch", "Write in"),
        ("38 MM", "length", 3, "unknown unit MM", "Write mm"),
        ("½ inch", "length", 2, "unknown unit inch", "Write in"),
        ("8 spi", "stitch length", 2, "unknown unit spi", "Write st/in"),
        ("330 gsm", "areal mass", 4, "unknown unit gsm", "Write g/m2"),
        ("-3 mm", "length", 0, "can't be negative", "minus"),
        ("1/0 in", "length", 2, "a fraction over 0", "above 0"),
        ("2 in 3 in", "length", 5, "more than one quantity", "one"),
        ("0 st/in", "stitch length", 0, "can't be 0", "above 0"),
        ("mm", "length", 0, "this asks for a length", "38 mm"),
        ("wide", "length", 0, "this asks for a length", "38 mm"),
        ("3.2.1 mm", "length", 3, "can't be read", "38 mm"),
        ("5", "share", 0, "5 without a unit is 500 %", "Write 5 %"),
        ("1.5", "count", 0, "whole number", "12"),
        ("", "length", 0, "nothing is written", "leave the line out"),
    ],
)
def test_a_text_that_is_no_quantity_is_refused(
    text: str, dimension: str, offset: int, message: str, remedy: str
) -> None:
    """With the place, what is wrong and what to write."""
    with pytest.raises(TextFault) as caught:
        parse_quantity(text, dimension)
    assert message in caught.value.message
    assert caught.value.offset == offset
    assert remedy in caught.value.remedy


def test_a_negative_length_is_read_where_it_is_asked_for() -> None:
    """Positions may lie left of a centre line."""
    assert parse_quantity("-3 mm", "length", True).value == -3


@pytest.mark.parametrize("name", [name for name in DIMENSIONS if name != "number"])
def test_the_examples_of_a_dimension_are_good(name: str) -> None:
    """They stand in remedies."""
    for example in DIMENSIONS[name].examples:
        assert parse_quantity(example, name).value > 0


@given(st.text(max_size=12), st.sampled_from(sorted(DIMENSIONS)))
def test_any_text_is_read_or_refused(text: str, dimension: str) -> None:
    """No other exception, and the offset lies in the text."""
    assert 0 <= fault_offset(lambda typed: parse_quantity(typed, dimension), text) <= len(text)


@given(st.text(alphabet='0123456789 ./,-+½±mingst²%"', max_size=12))
def test_any_text_of_likely_characters_is_read_or_refused(text: str) -> None:
    """The same, where faults are likelier."""
    assert 0 <= fault_offset(lambda typed: parse_quantity(typed, "length"), text) <= len(text)
    assert 0 <= fault_offset(lambda typed: parse_range(typed, "length"), text) <= len(text)


def test_a_quantity_gives_its_number_in_units() -> None:
    """Its own and others of its kind."""
    quantity = parse_quantity("2 in", "length")
    assert quantity.number == 2
    assert quantity.in_unit("mm") == Fraction("50.8")
    assert Quantity.of(10, "length").unit == "mm"
    with pytest.raises(KeyError):
        quantity.in_unit("kg")


@pytest.mark.parametrize(
    ("text", "dimension", "low", "high"),
    [
        ("1.5..5 mm", "length", "1.5", "5"),
        ("1.5 mm .. 5 mm", "length", "1.5", "5"),
        ("1.5…5 mm", "length", "1.5", "5"),
        ("1/2..1 1/2 in", "length", "12.7", "38.1"),
        ("5..8 st/in", "stitch length", "3.175", "5.08"),
        ("3..3 mm", "length", "3", "3"),
    ],
)
def test_a_range_is_read(text: str, dimension: str, low: str, high: str) -> None:
    """Low is the lower one in base units, so 8 st/in comes before 5."""
    limits = parse_range(text, dimension)
    assert (limits.low.value, limits.high.value) == (Fraction(low), Fraction(high))
    assert limits.contains(Fraction(low))
    assert limits.contains(limits.high)
    assert not limits.contains(Fraction(high) + Fraction(1, 1000))


@pytest.mark.parametrize(
    ("text", "message", "remedy"),
    [
        ("5..1 mm", "backwards", "smaller"),
        ("5 mm", "asks for a range", "two points"),
        ("1.5-5 mm", "asks for a range", "Write 1.5..5 mm"),
        ("1.5 to 5 mm", "asks for a range", "Write 1.5..5 mm"),
        ("..5 mm", "two ends", "missing"),
        ("5 mm..", "two ends", "missing"),
        ("1..5", "which unit?", "5 mm"),
        ("1..5 kg", "kg is a mass", "mm"),
    ],
)
def test_a_text_that_is_no_range_is_refused(text: str, message: str, remedy: str) -> None:
    """With a remedy that works."""
    with pytest.raises(TextFault) as caught:
        parse_range(text, "length")
    assert message in caught.value.message
    assert remedy in caught.value.remedy


def test_a_count_is_a_whole_number() -> None:
    """Alone, or with its word."""
    assert (parse_count("28"), parse_count("12 pieces"), parse_count("0")) == (28, 12, 0)
    for text in ("2.5", "-1", "12 mm", "1/2"):
        with pytest.raises(TextFault):
            parse_count(text)


def test_reading_is_fast() -> None:
    """Twenty thousand different texts in a fraction of the time a build may take."""
    start = perf_counter()
    for number in range(20_000):
        parse_quantity(f"{number} 1/16 in", "length")
    assert perf_counter() - start < 2
