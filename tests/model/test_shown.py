"""Rounding for show."""

import re
from fractions import Fraction

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from builder.model.quantity import Quantity, parse_quantity, parse_range
from builder.model.shown import (
    show_interval,
    show_mass,
    show_minutes,
    show_number,
    show_percent,
    show_quantity,
    show_range,
    show_seconds,
    show_tolerance,
)
from builder.model.shown_units import First
from builder.model.tolerance import Tolerance, parse_tolerance


@pytest.mark.parametrize(
    ("text", "dimension", "shown"),
    [
        ("2 in", "length", "50.8 mm (2 in)"),
        ("38 mm", "length", "38 mm (1 1/2 in)"),
        ("3.2mm", "length", "3.2 mm (1/8 in)"),
        ("1½ in", "length", "38.1 mm (1 1/2 in)"),
        ("1/16 in", "length", "1.6 mm (1/16 in)"),
        ("5 mil", "length", "0.13 mm (5 mil)"),
        ("3200 mm", "length", "3200 mm (125.98 in)"),
        ("1 mm", "length", "1 mm (0.039 in)"),
        ("8 st/in", "stitch length", "3.2 mm (8 st/in)"),
        ("3.2 mm", "stitch length", "3.2 mm (7.9 st/in)"),
        ("330 g/m2", "areal mass", "330 g/m² (9.7 oz/yd²)"),
        ("375 °F", "temperature", "191 °C (375 °F)"),
        ("−5 °C", "temperature", "−5 °C (23 °F)"),
        ("tkt 40", "linear density", "75 tex (tkt 40)"),
        ("70 tex", "linear density", "70 tex"),
        ("2400 st/min", "stitch rate", "2400 st/min"),
        ("45 deg", "angle", "45°"),
        ("5%", "share", "5 %"),
        ("1.4 N", "force", "1.4 N (0.31 lbf)"),
    ],
)
def test_a_quantity_is_shown_as_typed_with_the_other_family(text: str, dimension: str, shown: str) -> None:
    """Metric first here; kinds of one family stand alone."""
    assert show_quantity(parse_quantity(text, dimension)) == shown


def test_the_plant_says_which_family_comes_first() -> None:
    """Or stands alone."""
    two = parse_quantity("2 in", "length")
    assert show_quantity(two, "in") == "2 in (50.8 mm)"
    assert show_quantity(two, "mm", both=False) == "50.8 mm"
    assert show_quantity(two, "in", both=False) == "2 in"
    assert show_quantity(parse_quantity("38 mm", "length"), "in") == "1 1/2 in (38 mm)"


def test_a_calculated_quantity_is_rounded() -> None:
    """Nobody typed its digits."""
    assert show_quantity(Quantity.of(Fraction(100, 3), "length")) == "33.3 mm (1 5/16 in)"
    assert show_quantity(Quantity(Fraction(254, 15), "length", "in", "=2 in/3")) == "16.9 mm (0.67 in)"
    assert show_quantity(Quantity.of(0, "length")) == "0 mm (0 in)"


@pytest.mark.parametrize(
    ("text", "dimension", "shown"),
    [
        ("1/8 in +1/16 -0", "length", "3.2 mm +1.5 −0 (1/8 in +1/16 −0)"),
        ("2 in ± 1/16", "length", "50.8 mm ± 1.5 (2 in ± 1/16)"),
        ("2 in +- 1/16", "length", "50.8 mm ± 1.5 (2 in ± 1/16)"),
        ("32 mm ± 1", "length", "32 mm ± 1 (1.26 in ± 0.03)"),
        ("3.2 ± 0.2mm", "length", "3.2 ± 0.2 mm (0.126 in ± 0.007)"),
        ("25..27 mm", "length", "25…27 mm (0.99…1.06 in)"),
        ("max 3 mm", "length", "max 3 mm (max 0.11 in)"),
        ("min 1/8 in", "length", "min 3.2 mm (min 1/8 in)"),
        ("+1/16 -0 in", "length", "+1.5 −0 mm (+1/16 −0 in)"),
        ("± 1/16 in", "length", "± 1.5 mm (± 1/16 in)"),
        ("8 st/in ± 1", "stitch length", "3.2 mm +0.4 −0.3 (8 st/in ± 1)"),
        ("max 3 st/in", "stitch length", "min 8.5 mm (max 3 st/in)"),
        ("375 °F ± 9", "temperature", "191 °C ± 4 (375 °F ± 9)"),
        ("28 st ± 2", "count", "28 st ± 2"),
        ("45° ± 5", "angle", "45° ± 5"),
    ],
)
def test_a_tolerance_is_shown_in_both_families(text: str, dimension: str, shown: str) -> None:
    """The first of these is the design's own example."""
    assert show_tolerance(parse_tolerance(text, dimension)) == shown


def test_sixteenths_are_used_where_the_nominal_is_near_one() -> None:
    """38 mm is a rule's 1 1/2 in."""
    assert show_tolerance(parse_tolerance("38 mm ± 5", "length"), "in") == "1 1/2 in ± 3/16 (38 mm ± 5)"


SIDES = st.tuples(
    st.integers(0, 400), st.integers(0, 40), st.integers(0, 40), st.sampled_from([1, 2, 4, 8, 10, 16, 32, 64])
)
CASES = st.sampled_from(
    [
        ("in", "length"),
        ("mm", "length"),
        ("N", "force"),
        ("lbf", "force"),
        ("°F", "temperature"),
        ("st/in", "stitch length"),
        ("mm", "stitch length"),
        ("oz/yd2", "areal mass"),
    ]
)


def fraction_text(top: int, below: int) -> str:
    """A number as an engineer types it."""
    whole, rest = divmod(top, below)
    return f"{whole} {rest}/{below}" if rest and whole else f"{rest}/{below}" if rest else str(whole)


def other_side(shown: str) -> str:
    """The text in brackets when the family typed comes first."""
    found = re.fullmatch(r".* \((.*)\)", shown)
    assert found is not None, shown
    return found[1]


def inside(shown: Tolerance, true: Tolerance) -> bool:
    """Whether the shown limits lie in the true ones."""
    low = true.low is None or (shown.low is not None and shown.low >= true.low)
    return low and (true.high is None or (shown.high is not None and shown.high <= true.high))


@given(SIDES, CASES, st.sampled_from(["± {p}", "+{p} -{m}", "..", "max", "min", "band"]))
def test_shown_limits_lie_inside_the_true_ones(
    sides: tuple[int, int, int, int], case: tuple[str, str], form: str
) -> None:
    """Whatever is typed: reading the other family's text back never widens what is allowed."""
    nominal, plus, minus, below = sides
    unit, dimension = case
    p, m = fraction_text(plus, below), fraction_text(minus, below)
    middle = fraction_text(nominal, below)
    texts = {
        "..": f"{middle}..{fraction_text(nominal + plus, below)} {unit}",
        "max": f"max {middle} {unit}",
        "min": f"min {middle} {unit}",
        "band": f"+{p} -{m} {unit}",
    }
    text = texts.get(form, f"{middle} {unit} {form.format(p=p, m=m)}")
    reciprocal = unit == "st/in"
    assume(plus and (minus or form in ("..", "± {p}")) and not (dimension == "stitch length" and form == "band"))
    spread = plus if form.startswith("±") else minus
    assume(nominal > spread or form == "band")
    true = parse_tolerance(text, dimension)
    first: First = "mm" if unit in ("mm", "N") else "in"
    back = parse_tolerance(other_side(show_tolerance(true, first)), dimension)
    assert inside(back, true), (text, show_tolerance(true, first))
    if true.band is not None and back.band is not None and not reciprocal and dimension != "stitch length":
        assert back.band >= true.band * Fraction(3, 4)


@given(st.integers(1, 4000), st.integers(1, 200))
def test_a_shown_range_lies_inside_the_true_one(low: int, width: int) -> None:
    """A station's limits are not widened by rounding."""
    true = parse_range(f"{low}/16..{low + width}/16 in", "length")
    back = parse_range(show_range(true, "mm", both=False), "length")
    assert true.low.value <= back.low.value <= back.high.value <= true.high.value


@given(st.integers(1, 100_000))
def test_a_shown_length_is_near_the_true_one(sixty_fourths: int) -> None:
    """Within half a tenth of a millimetre, or half of the second digit of a small one."""
    quantity = parse_quantity(f"{sixty_fourths}/64 in", "length")
    back = parse_quantity(show_quantity(quantity, "mm", both=False), "length")
    assert abs(back.value - quantity.value) <= Fraction(1, 20)


def test_plain_numbers() -> None:
    """Each with its own usual digits."""
    assert show_minutes(0.446) == "0.45 min"
    assert show_minutes(2) == "2.00 min"
    assert show_seconds(3.55) == "3.6 s"
    assert show_percent(0.128) == "12.8 %"
    assert show_percent(Fraction(1, 3)) == "33.3 %"
    assert show_number(-2.675) == "−2.68"
    assert show_number(3.10) == "3.1"
    with pytest.raises(ValueError, match="nan"):
        show_number(float("nan"))


def test_masses() -> None:
    """Grams, and kilograms from one up."""
    assert show_mass(287) == "287 g (10.1 oz)"
    assert show_mass(1250.4) == "1.25 kg (2.76 lb)"
    assert show_mass(4.25, "in") == "0.15 oz (4.25 g)"


def test_an_estimates_interval_is_rounded_outwards() -> None:
    """It must not look narrower than it is."""
    assert show_interval(14.21, 16.25, 1, "mm") == "14.2…16.3 mm"
    assert show_interval(-0.05, 0.05, 1) == "−0.1…0.1"
