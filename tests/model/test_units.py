"""The table of units."""

from fractions import Fraction

import pytest

from builder.model.units import (
    ALIASES,
    DIMENSIONS,
    MEANT,
    UNITS,
    UNITS_OF,
    convert,
    tex_of_cotton_ticket,
    tex_of_metric_ticket,
)


@pytest.mark.parametrize("name", UNITS)
def test_a_unit_converts_there_and_back_exactly(name: str) -> None:
    """Exact fractions, so nothing is lost."""
    unit = UNITS[name]
    assert isinstance(unit.factor, Fraction)
    assert unit.from_base(unit.to_base(Fraction(7, 3))) == Fraction(7, 3)


@pytest.mark.parametrize("name", DIMENSIONS)
def test_a_base_unit_has_the_factor_1(name: str) -> None:
    """Values in base units are what the formulas take."""
    base = DIMENSIONS[name].base
    assert UNITS_OF[name][base].factor == 1 or base == ""
    assert UNITS_OF[name][base].offset == 0


def test_aliases_and_words_meant_name_units_that_exist() -> None:
    """A remedy must work."""
    assert set(ALIASES.values()) | set(MEANT.values()) <= set(UNITS)
    assert not set(MEANT) & set(UNITS)


def test_conversion_between_kinds_is_refused() -> None:
    """A mass is not a length."""
    with pytest.raises(ValueError, match="kg is a mass"):
        convert(1, "kg", "mm")


def test_zero_stitches_per_inch_have_no_length() -> None:
    """A reciprocal unit has no zero."""
    with pytest.raises(ZeroDivisionError):
        UNITS["st/in"].to_base(Fraction(0))


def test_tickets_turn_into_tex_and_back() -> None:
    """The formula is its own inverse."""
    assert tex_of_metric_ticket(tex_of_metric_ticket(40)) == 40
    assert tex_of_cotton_ticket(tex_of_cotton_ticket(40)) == 40


@pytest.mark.parametrize(("celsius", "fahrenheit"), [(0, 32), (100, 212), (-40, -40), (190, 374)])
def test_temperatures_have_an_offset(celsius: int, fahrenheit: int) -> None:
    """Definition of the scale."""
    assert convert(celsius, "°C", "°F") == fahrenheit
