"""Strain of a station, factor by factor."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.computing import strain_factors
from builder.model import PUBLISHED_PERCENT, Relaxation


def total(typed: dict[str, str], own: dict[str, Fraction] | None = None) -> Fraction:
    """Percent of basic time that a station's strain adds."""
    return 100 * sum((one.share for one in strain_factors(Relaxation.model_validate(typed), own or {})), Fraction(0))


def test_all_factors_of_a_station_add_up() -> None:
    """2 + 2 + 1 + 2 + 2 + 2 + 1 + 1 + 2 of the table and 3 for the air."""
    typed = {
        "standing": "yes",
        "position": "awkward bending",
        "force": "4.5 kg",
        "light": "well below",
        "attention": "fine",
        "noise": "intermittent loud",
        "mental": "fairly complex",
        "monotony": "medium",
        "tedium": "tedious",
        "air": "3 %",
    }
    assert total(typed) == 18


def test_nothing_typed_adds_nothing() -> None:
    """An empty block, `standing: no` and no block at all."""
    assert total({}) == total({"standing": "no"}) == 0
    assert list(strain_factors(None, {})) == []


def test_air_is_the_plants_own_judgement() -> None:
    """The table has a range for it, no rows."""
    (air,) = strain_factors(Relaxation.model_validate({"air": "7 %"}), {})
    assert (air.words, air.share, air.source) == ("air", Fraction(7, 100), "plant’s own")


@pytest.mark.parametrize(
    ("typed", "percent"),
    [
        ("0 kg", 0),
        ("5 lb", 0),
        ("5.01 lb", 1),
        ("10 lbf", 1),
        ("4.5 kg", 1),
        ("4.6 kg", 2),
        ("40 N", 1),
        ("45 N", 2),
        ("51 lb", 17),
        ("60.5 lb", 22),
        ("70 lb", 22),
        ("31.75 kg", 22),
    ],
)
def test_force_takes_the_next_higher_row(typed: str, percent: int) -> None:
    """Nothing is interpolated; a row's own weight is in it. 5 lb 2.268 kg, 10 lb 4.536 kg or 44.48 N."""
    assert total({"force": typed}) == percent


@given(st.fractions(0, 70), st.fractions(0, 70))
def test_a_heavier_load_never_earns_less(one: Fraction, other: Fraction) -> None:
    """The force table rises."""
    light, heavy = sorted((one, other))
    assert total({"force": f"{float(light):.4f} lb"}) <= total({"force": f"{float(heavy):.4f} lb"})


@pytest.mark.parametrize("figure", PUBLISHED_PERCENT)
def test_every_figure_of_the_table_can_be_typed_and_replaced(figure: str) -> None:
    """Each name in the table is what one fact of a station is called."""
    factor, _, word = figure.partition(", ")
    typed = {factor: word or "yes"}
    (found,) = strain_factors(Relaxation.model_validate(typed), {})
    assert (found.words, found.share, found.source) == (
        figure,
        Fraction(PUBLISHED_PERCENT[figure], 100),
        "published table",
    )
    (own,) = strain_factors(Relaxation.model_validate(typed), {figure: Fraction(1, 3)})
    assert (own.share, own.source) == (Fraction(1, 3), "plant’s own")
