"""Tolerances."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.errors import TextFault
from builder.model.quantity import Quantity, parse_quantity
from builder.model.tolerance import Tolerance, parse_any_tolerance, parse_tolerance, parse_toleranced
from tests.model.faults import fault_offset


@pytest.mark.parametrize(
    ("text", "dimension", "low", "high", "form"),
    [
        ("2 in ± 1/16", "length", "49.2125", "52.3875", "around"),
        ("2 in +- 1/16", "length", "49.2125", "52.3875", "around"),
        ("2 in +/- 1/16 in", "length", "49.2125", "52.3875", "around"),
        ("2 in ± 1 mm", "length", "49.8", "51.8", "around"),
        ("3.2 ± 0.2 mm", "length", "3", "3.4", "around"),
        ("1/8 in +1/16 -0", "length", "3.175", "4.7625", "around"),
        ("1/8 in −0 +1/16", "length", "3.175", "4.7625", "around"),
        ("2 in + 1/16 - 1/8 in", "length", "47.625", "52.3875", "around"),
        ("25..27 mm", "length", "25", "27", "limits"),
        ("+1/16 -0 in", "length", "0", "1.5875", "band"),
        ("± 1 mm", "length", "-1", "1", "band"),
        ("0 mm ± 1", "length", "-1", "1", "around"),
        ("3.2 mm ± 0.2", "stitch length", "3", "3.4", "around"),
        ("8 st/in ± 1", "stitch length", "25.4/9", "25.4/7", "around"),
        ("190 °C ± 5", "temperature", "185", "195", "around"),
        ("212 °F ± 9 °F", "temperature", "95", "105", "around"),
        ("-5 °C +2 -1", "temperature", "-6", "-3", "around"),
        ("28 ± 2", "count", "26", "30", "around"),
        ("5 % ± 1", "share", "0.04", "0.06", "around"),
    ],
)
def test_a_tolerance_has_limits(text: str, dimension: str, low: str, high: str, form: str) -> None:
    """In base units; a reciprocal unit swaps its ends, an offset doesn't count in a difference."""
    tolerance = parse_tolerance(text, dimension)
    ends = [Fraction(above) / Fraction(below or 1) for above, _, below in (low.partition("/"), high.partition("/"))]
    assert [tolerance.low, tolerance.high] == ends
    assert tolerance.form == form
    assert tolerance.band == ends[1] - ends[0]
    assert all(tolerance.contains(end) for end in ends)
    assert not any(tolerance.contains(end) for end in (ends[0] - 1, ends[1] + 1))


@pytest.mark.parametrize(
    ("text", "dimension", "low", "high"),
    [
        ("max 3 mm", "length", None, 3),
        ("min 2 mm", "length", 2, None),
        ("max 10 st/in", "stitch length", Fraction("2.54"), None),
    ],
)
def test_one_limit_leaves_the_other_side_open(
    text: str, dimension: str, low: Fraction | None, high: Fraction | None
) -> None:
    """At most ten stitches an inch is a lowest stitch length."""
    tolerance = parse_tolerance(text, dimension)
    assert (tolerance.low, tolerance.high, tolerance.band) == (low, high, None)


def test_a_band_is_put_around_its_nominal() -> None:
    """The nominal stands elsewhere, in the geometry."""
    band = parse_tolerance("+1/16 -0 in", "length")
    around = band.around(parse_quantity("2 in", "length"))
    assert (around.low, around.high, around.form) == (Fraction("50.8"), Fraction("52.3875"), "around")
    assert around.around(parse_quantity("3 in", "length")) is around


@pytest.mark.parametrize(
    ("text", "dimension", "offset", "message", "remedy"),
    [
        ("2 in", "length", 4, "no tolerance", "2 in ±"),
        ("2 in +1/16", "length", 5, "only one side", "-0"),
        ("2 in -1/16", "length", 5, "only one side", "+0"),
        ("2 in ± 0", "length", 7, "tolerance of 0", "differ"),
        ("2 in +0 -0", "length", 5, "tolerance of 0", "differ"),
        ("2 in +1/16 +1/8", "length", 11, "two pluses", "25..27"),
        ("2 in ± -1", "length", 7, "two signs", "alone"),
        ("1/8 in ± 1/4", "length", 9, "below zero", "smaller"),
        ("3 mm max", "length", 5, "begins with max or min", "Write max 3 mm"),
        ("≤ 3 mm", "length", 0, "begins with max or min", "Write max 3 mm"),
        ("≥ 3 mm", "length", 0, "begins with max or min", "Write min 3 mm"),
        ("25..25 mm", "length", 0, "no room", "different"),
        ("27..25 mm", "length", 0, "backwards", "smaller"),
        ("½ in ± ⅛ foo", "length", 9, "unknown unit foo", "38 mm"),
        ("± 1 st/in", "stitch length", 4, "no width", "8 st/in ± 1"),
        ("8 st/in ± 1 mm", "stitch length", 12, "don't add up", "st/in"),
        ("2 ± 1/16", "length", 1, "which unit?", "2 mm"),
        ("3,2 mm ± 0.2", "length", 1, "decimal comma", "3.2"),
        ("8 st/in ± 8", "stitch length", 10, "below zero", "smaller"),
    ],
)
def test_a_text_that_is_no_tolerance_is_refused(
    text: str, dimension: str, offset: int, message: str, remedy: str
) -> None:
    """With the place, what is wrong and what to write."""
    with pytest.raises(TextFault) as caught:
        parse_tolerance(text, dimension)
    assert message in caught.value.message
    assert caught.value.offset == offset
    assert remedy in caught.value.remedy


def test_a_quantity_may_carry_a_tolerance() -> None:
    """Settings are typed with or without one."""
    assert isinstance(parse_toleranced("1.4 N", "force"), Quantity)
    assert isinstance(parse_toleranced("1.4 N ± 0.2", "force"), Tolerance)
    assert isinstance(parse_toleranced("max 2 N", "force"), Tolerance)
    assert parse_toleranced("½ in", "length").text == "½ in"


@pytest.mark.parametrize(
    ("text", "dimension"),
    [
        ("2 in ± 1/16", "length"),
        ('2" ± 1/16', "length"),
        ("8 st/in ± 1", "stitch length"),
        ("max 3 N", "force"),
        ("330 g/m² ± 10", "areal mass"),
        ("28 st ± 2", "count"),
        ("190 °C ± 5", "temperature"),
        ("3.2 ± 0.2 mm", "length"),
        ("25..27 mm", "length"),
    ],
)
def test_the_unit_says_what_a_tolerance_measures(text: str, dimension: str) -> None:
    """Where no dimension is asked for."""
    assert parse_any_tolerance(text).dimension == dimension


@pytest.mark.parametrize(("text", "message"), [("28 ± 2", "which unit?"), ("2 foo ± 1", "unknown unit foo")])
def test_a_tolerance_without_a_known_unit_is_refused(text: str, message: str) -> None:
    """A number alone is more likely a forgotten unit than a count."""
    with pytest.raises(TextFault) as caught:
        parse_any_tolerance(text)
    assert message in caught.value.message


@given(st.text(alphabet="0123456789 ./,-+½±minaxst…", max_size=16))
def test_any_text_is_read_or_refused(text: str) -> None:
    """No other exception, and the offset lies in the text."""
    assert 0 <= fault_offset(lambda typed: parse_tolerance(typed, "length"), text) <= len(text)
    assert 0 <= fault_offset(lambda typed: parse_toleranced(typed, "length"), text) <= len(text)
    assert 0 <= fault_offset(parse_any_tolerance, text) <= len(text)
