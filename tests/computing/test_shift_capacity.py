"""People and machines of a shift, and machines one person tends."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.computing import Crew, capacity, crew_of, cycle_in_step, interference, machines_in_step
from builder.model import Plant, Station


def test_the_lesser_of_labour_and_machines_counts() -> None:
    found = capacity(Crew(people=4, machines=1, minutes=450, performance=0.9, off_standard=0.1), 2.0, 0.5)
    assert found.by_labour == pytest.approx(4 * 450 * 0.9 * 0.9 / 2)
    assert found.by_machine == pytest.approx(900)
    assert (found.pieces, found.limit) == (found.by_labour, "labour")


def test_what_takes_no_machine_is_held_by_labour_alone() -> None:
    assert capacity(Crew(1, 0, 450), 1.0, 0.0).limit == "labour"
    assert capacity(Crew(1, 1, 450), 0.0, 1.0).limit == "machine"
    assert capacity(Crew(1, 1, 450), 0.0, 0.0).pieces is None


def plant(**more: str) -> Plant:
    """A plant that pays 8 h with 30 min of breaks."""
    allowances = {"convention": "share of basic time", "personal": "5 %", "fatigue": "4 %", "delays": "2 %"}
    typed = {"plant": "Shop", "units": "mm", "paper": "A4", "batch": "100", "bundle": "20", "allowances": allowances}
    return Plant.model_validate({**typed, "shift": {"paid": "8 h", "breaks": "30 min"}, **more})


def station(**more: str) -> Station:
    typed = {"title": "Press", "kind": "setting press", "count": "3", "distance": "1 m", "attendance": "constant"}
    return Station.model_validate({**typed, **more})


def test_what_nobody_typed_counts_as_all_of_it() -> None:
    """One person a place, standard performance, all time on standard, machines that always run; breaks are no work."""
    assert crew_of(plant(), station(), has_machine=True) == Crew(3, 3, 450.0, 1.0, 0.0, 1.0)


def test_what_plant_and_station_type_counts() -> None:
    found = crew_of(
        plant(performance="88 %", **{"off standard": "7 %"}), station(people="2", availability="94 %"), has_machine=True
    )
    assert found == Crew(2, 3, 450.0, 0.88, 0.07, 0.94)


def test_a_station_without_a_machine_has_none_to_hold_it_up() -> None:
    assert crew_of(plant(), station(), has_machine=False).machines == 0


@given(st.floats(0.1, 10), st.floats(0.1, 100), st.floats(0, 5))
def test_as_many_machines_as_one_can_serve_lose_nothing(service: float, run: float, other: float) -> None:
    """Up to the whole number below n nobody waits; one more and the person sets the pace."""
    n = int(machines_in_step(service, run, other) + 1e-9)
    if n:
        assert cycle_in_step(n, service, run, other) == pytest.approx(service + run)
    assert cycle_in_step(n + 2, service, run, other) > service + run


@given(st.integers(1, 12), st.floats(0.1, 5), st.floats(0.1, 50))
def test_time_of_machines_adds_up(machines: int, service: float, run: float) -> None:
    """Running, being served and waiting are all a machine does; one machine never waits."""
    found = interference(machines, service, run)
    running = found.served * run / machines
    serving = found.served * service / machines
    assert running + serving + found.interference == pytest.approx(1)
    if machines == 1:
        assert found.interference == pytest.approx(0, abs=1e-12)
