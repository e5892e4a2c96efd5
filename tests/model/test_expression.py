"""Expressions on named dimensions."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.errors import TextFault
from builder.model.expression import parse_expression
from builder.model.quantity import Quantity, parse_quantity
from tests.model.faults import fault_offset

ENVIRONMENT = {
    "margin": parse_quantity("10 mm", "length"),
    "row.pitch": parse_quantity("1 1/2 in", "length"),
    "handle-box.width": parse_quantity("38 mm", "length"),
    "panel/row.count": parse_quantity("4", "count"),
    "panel.area": parse_quantity("600 mm2", "area"),
    "weight": parse_quantity("250 g", "mass"),
    "heat": parse_quantity("190 °C", "temperature"),
    "waste": parse_quantity("5 %", "share"),
}


def value(text: str, dimension: str = "length") -> Quantity:
    """The expression's value among the names above."""
    return parse_expression(text).evaluate(lambda name: ENVIRONMENT[name], dimension)


@pytest.mark.parametrize(
    ("text", "expected", "unit"),
    [
        ("=row.pitch * 4 + 2 * margin", "172.4", "in"),
        ("=handle-box.width", "38", "mm"),
        ("=handle-box.width - margin", "28", "mm"),
        ("=margin - 1 mm - 2 mm", "7", "mm"),
        ("=margin / 2 / 5", "1", "mm"),
        ("=1 1/2 in", "38.1", "in"),
        ("=1½ in × 2", "76.2", "in"),
        ("=1 1/2 * margin", "15", "mm"),
        ("=margin/2 + margin*3", "35", "mm"),
        ("=margin*panel/row.count", "40", "mm"),
        ("=2 in/4", "12.7", "in"),
        ("=-margin + 12 mm", "2", "mm"),
        ("=-(margin - 12 mm)", "2", "mm"),
        ("=margin*-2", "-20", "mm"),
        ("=max(margin, row.pitch, 2 in)", "50.8", "mm"),
        ("=min(margin, max(1 mm, 2 mm) * 2) + 1 mm", "5", "mm"),
        ("=margin * (margin / row.pitch) * (row.pitch / margin)", "10", "mm"),
        ("=panel.area / margin", "60", "mm"),
        ("=margin * (1 + waste)", "10.5", "mm"),
        ("=margin * 5 %", "0.5", "mm"),
    ],
)
def test_arithmetic_is_exact_and_keeps_the_first_unit(text: str, expected: str, unit: str) -> None:
    """In base units."""
    result = value(text)
    assert (result.value, result.unit, result.text) == (Fraction(expected), unit, text)


def test_other_kinds_can_be_asked_for() -> None:
    """An area of two lengths, a plain number of one by the other, a whole number where it is whole."""
    assert value("=margin * margin", "area") == Quantity(Fraction(100), "area", "mm2", "=margin * margin")
    assert value("=row.pitch * margin", "area").unit == "in2"
    assert value("=handle-box.width / margin", "number").value == Fraction("3.8")
    assert value("=panel/row.count * 2", "count").value == 8
    assert value("=margin / (2 * margin)", "share").value == Fraction(1, 2)
    assert value("=heat", "temperature").value == 190


@pytest.mark.parametrize(
    ("text", "offset", "message", "remedy"),
    [
        ("margin", 0, "begins with =", "Write =margin"),
        ("=", 0, "ends too early", "missing"),
        ("=margin +", 8, "ends too early", "missing"),
        ("=(margin", 1, "isn't closed", ")"),
        ("=max(margin", 1, "isn't closed", ")"),
        ("=margin)", 7, "none opened", "("),
        ("=margin margin", 8, "an operator is missing", "+ - * or /"),
        ("=2 margin", 3, "an operator is missing", "+ - * or /"),
        ("=2 x margin", 3, "an operator is missing", "*"),
        ("=2 inch", 3, "unknown unit inch", "Write in"),
        ("=margin * * 2", 10, "a value is missing before *", "name"),
        ("=margin -1 mm", 8, "minus without blanks", "both sides"),
        ("=margin- 1 mm", 7, "minus without blanks", "both sides"),
        ("=margin +1 mm", 8, "added, or a tolerance", "blank behind"),
        ("=3,2 mm", 2, "a comma outside", "3.2"),
        ("=sqrt(margin)", 1, "no function sqrt", "max"),
        ("=margin @ 2", 8, "@ has no meaning", "names"),
        ("=1/0 in", 3, "over 0", "above 0"),
        ("=__import__('os')", 1, "no function __import__", "max"),
        ("=margin.x[0]", 9, "[ has no meaning", "names"),
    ],
)
def test_grammar_faults(text: str, offset: int, message: str, remedy: str) -> None:
    """Found without knowing any name."""
    with pytest.raises(TextFault) as caught:
        parse_expression(text)
    assert message in caught.value.message
    assert caught.value.offset == offset
    assert remedy in caught.value.remedy


@pytest.mark.parametrize(
    ("text", "dimension", "offset", "message", "remedy"),
    [
        ("=margin + 2", "length", 8, "a length and a plain number", "unit"),
        ("=max(margin, 2)", "length", 1, "don't go together", "unit"),
        ("=margin + weight", "length", 8, "a length and a mass", "one kind"),
        ("=margin * margin", "length", 8, "is not a length", "number"),
        ("=2 / margin", "length", 3, "a plain number by a length", "divide"),
        ("=margin / row.pitch", "length", 1, "the result is a plain number", "a length"),
        ("=2 kg", "length", 1, "the result is a mass", "a length"),
        ("=margin / 0", "length", 8, "division by zero", "zero"),
        ("=heat + 5 °C", "temperature", 6, "temperatures", "itself"),
        ("=panel/row.count / 3", "count", 1, "not a whole number", "rest"),
        ("=margin + widht", "length", 10, "unknown name widht", "exists"),
        ("=½ in + widht", "length", 8, "unknown name widht", "exists"),
        ("=row.pitch-margin", "length", 1, "unknown name row.pitch-margin", "row.pitch - margin"),
    ],
)
def test_faults_of_kind(text: str, dimension: str, offset: int, message: str, remedy: str) -> None:
    """Found when the names are known; the offset points into the text as typed."""
    with pytest.raises(TextFault) as caught:
        value(text, dimension)
    assert message in caught.value.message
    assert caught.value.offset == offset
    assert remedy.lower() in caught.value.remedy.lower()


def test_names_are_listed_as_typed_with_their_places() -> None:
    """A hyphen belongs to the name, a slash only to the full form."""
    expression = parse_expression("=½ in + handle-box.width * panel/row.count / margin2")
    assert [(name.text, name.offset) for name in expression.names] == [
        ("handle-box.width", 8),
        ("panel/row.count", 27),
        ("margin2", 45),
    ]


@pytest.mark.parametrize(
    ("text", "tolerance", "offset", "low", "high"),
    [
        ("=margin ± 1 mm", "± 1 mm", 8, "-1", "1"),
        ("=½ in ± ½ mm", "± 1/2 mm", 6, "-0.5", "0.5"),
        ("=margin * 2 +1/16 -0 in", "+1/16 -0 in", 12, "0", "1.5875"),
        ("=margin -1 mm +2 mm", "-1 mm +2 mm", 8, "-1", "2"),
    ],
)
def test_a_tolerance_may_follow(text: str, tolerance: str, offset: int, low: str, high: str) -> None:
    """Signs right before their numbers make a tolerance; with blanks they are arithmetic."""
    expression = parse_expression(text)
    band = expression.band("length")
    assert (expression.tolerance, expression.tolerance_offset) == (tolerance, offset)
    assert band is not None
    assert (band.low, band.high) == (Fraction(low), Fraction(high))


def test_without_a_tolerance_there_is_no_band() -> None:
    """A sum is not a tolerance."""
    expression = parse_expression("=margin + 1/16 in - 0 in")
    assert expression.band("length") is None
    assert value("=margin + 1/16 in - 0 in").value == Fraction("11.5875")


def test_a_fault_in_the_tolerance_points_into_the_expression() -> None:
    """Not into the tolerance alone."""
    with pytest.raises(TextFault, match="unknown unit foo") as caught:
        parse_expression("=margin ± 1 foo").band("length")
    assert caught.value.offset == 12


def test_deep_brackets_and_long_sums_do_not_overflow() -> None:
    """No recursion anywhere."""
    deep = "=" + "(" * 20_000 + "margin" + ")" * 20_000
    assert value(deep).value == 10
    assert value("=margin" + " + 1 mm" * 20_000).value == 20_010
    assert value("=" + "-" * 10_001 + "margin").value == -10


@given(st.text(alphabet="=maxmin(), +-*/×.½±1230 gpr#", max_size=20))
def test_any_text_is_read_or_refused(text: str) -> None:
    """No other exception, and the offset lies in the text."""

    def read(typed: str) -> Quantity:
        return parse_expression(typed).evaluate(lambda name: ENVIRONMENT["margin"], "length")

    assert 0 <= fault_offset(read, "=" + text) <= len(text) + 1


OPERANDS = st.integers(1, 30)


@given(st.lists(st.tuples(st.sampled_from("+-*/"), OPERANDS), max_size=8), OPERANDS)
def test_precedence_is_that_of_arithmetic(rest: list[tuple[str, int]], first: int) -> None:
    """Compared with Python's own on exact fractions."""
    text = str(first) + "".join(f" {sign} {number}" for sign, number in rest)
    python = f"F({first})" + "".join(f" {sign} F({number})" for sign, number in rest)
    expected = eval(python, {"F": Fraction})
    assert value("=" + text, "number").value == expected
