"""Allowances line by line, in both conventions."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.computing import StationAllowance, allowance_factor, station_allowance
from builder.model import Plant, Station

LAMP = {"monotony": "medium", "attention": "fine"}


def plant(allowances: dict[str, str], relaxation: dict[str, str] | None = None) -> Plant:
    """A plant with these allowances."""
    whole = {"convention": "share of basic time", "personal": "0", "fatigue": "0", "delays": "0", **allowances}
    base = {"plant": "A", "units": "mm", "paper": "A4", "shift": {"paid": "8 h", "breaks": "30 min"}, "batch": "1"}
    return Plant.model_validate({**base, "bundle": "1", "allowances": whole, "relaxation": relaxation or {}})


def station(relaxation: dict[str, str] | None = None) -> Station:
    """A bench with this relaxation."""
    typed = {"title": "A", "kind": "bench", "count": "1", "distance": "0.6 m", "attendance": "constant"}
    return Station.model_validate(typed if relaxation is None else {**typed, "relaxation": relaxation})


def test_each_allowance_is_a_line_with_its_source() -> None:
    """Plant first, then the station's factors in the order of the table."""
    typed = {"personal": "5 %", "fatigue": "4 %", "delays": "3 %", "contingency": "1 %"}
    found = station_allowance(plant(typed), station({"standing": "yes", **LAMP}))
    assert [(one.words, one.share * 100, one.source) for one in found.lines] == [
        ("personal", 5, "plant’s own"),
        ("fatigue", 4, "plant’s own"),
        ("delays", 3, "plant’s own"),
        ("contingency", 1, "plant’s own"),
        ("standing", 2, "published table"),
        ("attention, fine", 2, "published table"),
        ("monotony, medium", 1, "published table"),
    ]
    assert found.factor == Fraction(118, 100)


def test_rest_is_fatigue_and_strain_but_not_personal_needs_or_delays() -> None:
    """Only this may be taken while a machine runs."""
    typed = {"personal": "5 %", "fatigue": "4 %", "delays": "3 %", "contingency": "1 %"}
    assert station_allowance(plant(typed), station(LAMP)).rest == Fraction(7, 100)


def test_policy_is_a_rise_of_the_finished_standard() -> None:
    """1.10 × 1.05, not 1.15."""
    found = station_allowance(plant({"personal": "10 %", "policy": "5 %"}), station())
    assert found.factor == Fraction("1.155")
    assert found.work_factor == Fraction("1.1")


def test_relaxation_is_a_share_of_basic_time_under_the_convention_of_the_shift_too() -> None:
    """1 ÷ (1 − 0.2) is 1.25, and 3 % of basic time beside it 1.28; 1 ÷ (1 − 0.23) would be 1.30."""
    typed = {"convention": "share of the shift", "personal": "10 %", "fatigue": "5 %", "delays": "5 %"}
    assert station_allowance(plant(typed), station(LAMP)).factor == Fraction("1.28")


def test_a_plant_puts_its_own_figure_in_the_place_of_a_published_one() -> None:
    """By the name of the figure; the others stay published, 0 counts too."""
    own = {"monotony, medium": "3 %", "attention, fine": "0 %", "monotony, high": "9 %"}
    found = station_allowance(plant({}, own), station({"standing": "yes", **LAMP}))
    shares = {one.words: (one.share * 100, one.source) for one in found.lines[3:]}
    assert shares == {
        "standing": (2, "published table"),
        "attention, fine": (0, "plant’s own"),
        "monotony, medium": (3, "plant’s own"),
    }


def test_a_station_without_relaxation_has_the_plants_allowances_alone() -> None:
    """As before."""
    assert station_allowance(plant({"fatigue": "9 %"}), station()).factor == Fraction("1.09")
    assert StationAllowance().factor == 1


parts = st.lists(st.integers(0, 200), min_size=4, max_size=4)


@given(parts, st.integers(0, 300), st.booleans())
def test_both_conventions_agree_when_converted(permille: list[int], policy: int, strained: bool) -> None:
    """Shares p of the shift that add up to a are shares p ÷ (1 − a) of basic time, line by line and in the factor."""
    names = ("personal", "fatigue", "delays", "contingency")
    shift = {name: Fraction(one, 1000) for name, one in zip(names, permille, strict=True)}
    basic = {name: one / (1 - sum(shift.values())) for name, one in shift.items()}
    bench = station(LAMP if strained else None)
    raised = {"policy": f"{policy / 10} %"}
    one = plant({"convention": "share of the shift", **raised, **{name: str(part) for name, part in shift.items()}})
    plain = plant(raised)
    other = plain.model_copy(update={"allowances": plain.allowances.model_copy(update=basic)})
    assert station_allowance(one, bench) == station_allowance(other, bench)
    expected = allowance_factor(float(sum(shift.values())), "share of the shift") + (0.03 if strained else 0)
    assert float(station_allowance(one, bench).work_factor) == pytest.approx(expected, abs=1e-12)


@given(parts)
def test_the_lines_add_up_to_the_factor(permille: list[int]) -> None:
    """Σ p ÷ (1 − a) is 1 ÷ (1 − a) − 1."""
    names = ("personal", "fatigue", "delays", "contingency")
    typed = {name: str(Fraction(one, 1000)) for name, one in zip(names, permille, strict=True)}
    found = station_allowance(plant({"convention": "share of the shift", **typed}), station())
    total = allowance_factor(sum(permille) / 1000, "share of the shift")
    assert float(1 + sum(one.share for one in found.lines)) == pytest.approx(total, abs=1e-12)
