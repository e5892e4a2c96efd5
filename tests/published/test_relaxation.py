"""Relaxation allowances against the published table, percent by percent, and the rule of rest inside machine time.

Table: variable-allowance table after the ILO, as printed in W. J. Stevenson, Operations Management, 14th ed. (2021),
ch. 7, table 7.4 (its source there: B. Niebel, Motion and Time Study, 8th ed., 1988); text read at
https://nursingexpertshelp.com/data/.
All figures are percent of normal (basic) time, whole numbers as printed.
"""

from __future__ import annotations

from fractions import Fraction

import pytest

from builder.computing import rest_in_spell, station_allowance, strain_factors
from builder.model import FORCE_ROWS_LB, PUBLISHED_PERCENT, Plant, Relaxation, Station

STANDING_POSTURE = [
    ({"standing": "yes"}, 2),
    ({"position": "slightly awkward"}, 0),
    ({"position": "awkward bending"}, 2),
    ({"position": "very awkward"}, 7),
]
FORCE_LB = {5: 0, 10: 1, 15: 2, 20: 3, 25: 4, 30: 5, 35: 7, 40: 9, 45: 11, 50: 13, 60: 17, 70: 22}
LIGHT = [({"light": "slightly below"}, 0), ({"light": "well below"}, 2), ({"light": "very inadequate"}, 5)]
AIR = [({"air": "0 %"}, 0), ({"air": "10 %"}, 10)]
ATTENTION_NOISE = [
    ({"attention": "fairly fine"}, 0),
    ({"attention": "fine"}, 2),
    ({"attention": "very fine"}, 5),
    ({"noise": "continuous"}, 0),
    ({"noise": "intermittent loud"}, 2),
    ({"noise": "intermittent very loud"}, 5),
    ({"noise": "high-pitched loud"}, 5),
]
MENTAL_MONOTONY = [
    ({"mental": "fairly complex"}, 1),
    ({"mental": "complex"}, 4),
    ({"mental": "very complex"}, 8),
    ({"monotony": "low"}, 0),
    ({"monotony": "medium"}, 1),
    ({"monotony": "high"}, 4),
    ({"tedium": "rather tedious"}, 0),
    ({"tedium": "tedious"}, 2),
    ({"tedium": "very tedious"}, 5),
]
ROWS = [*STANDING_POSTURE, *LIGHT, *AIR, *ATTENTION_NOISE, *MENTAL_MONOTONY]


@pytest.mark.parametrize(("typed", "printed"), ROWS, ids=lambda one: str(one))
def test_a_row_of_the_table(typed: dict[str, str], printed: int) -> None:
    """Stevenson, table 7.4 (read): the percent as printed."""
    assert sum(one.share for one in strain_factors(Relaxation.model_validate(typed), {})) == Fraction(printed, 100)


@pytest.mark.parametrize(("pounds", "printed"), FORCE_LB.items())
def test_a_row_of_the_force_table(pounds: int, printed: int) -> None:
    """Stevenson, table 7.4 (read), use of force: the percent as printed for each weight."""
    found = strain_factors(Relaxation.model_validate({"force": f"{pounds} lb"}), {})
    assert sum(one.share for one in found) == Fraction(printed, 100)


def test_no_row_is_left_out_and_none_invented() -> None:
    """Every figure the tool knows is one of those above."""
    assert dict(FORCE_ROWS_LB) == FORCE_LB
    assert len(PUBLISHED_PERCENT) == len(ROWS) - len(AIR) + len(FORCE_LB)


def plant() -> Plant:
    """A plant with the constant allowances of the table (Stevenson, table 7.4, read): personal 5, basic fatigue 4."""
    return Plant.model_validate(
        {
            "plant": "A",
            "units": "in",
            "paper": "Letter",
            "shift": {"paid": "8 h", "breaks": "30 min"},
            "allowances": {"convention": "share of basic time", "personal": "5 %", "fatigue": "4 %", "delays": "0 %"},
            "batch": "1",
            "bundle": "1",
        }
    )


def test_sum_for_one_element() -> None:
    """Stevenson, ch. 7, problem 6, p. 332 (problem and table read, the sum computed here, the printed answer not seen).

    10 lb, slightly awkward standing, light slightly below, noise intermittent loud, monotony high: 18 percent.
    """
    element = {
        "standing": "yes",
        "position": "slightly awkward",
        "force": "10 lb",
        "light": "slightly below",
        "noise": "intermittent loud",
        "monotony": "high",
    }
    typed = {"title": "A", "kind": "bench", "count": "1", "distance": "0.6 m", "attendance": "constant"}
    station = Station.model_validate({**typed, "relaxation": element})
    assert station_allowance(plant(), station).factor == Fraction(118, 100)


def test_rest_in_unoccupied_spells() -> None:
    """ILO, Introduction to Work Study (memory; the example is ours): spells of 0.4, 1.0 and 2.0 min give 2.75 min."""
    assert sum(rest_in_spell(60 * spell) for spell in (0.4, 1.0, 2.0)) / 60 == pytest.approx(2.75, abs=1e-12)
