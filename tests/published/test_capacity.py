"""Machines one person can tend, and what a shift gives, against published values."""

from __future__ import annotations

import pytest

from builder.computing import Crew, allowance_factor, capacity, interference

QUEUE = [(0.050, 0.989), (0.060, 0.983), (0.070, 0.977), (0.080, 0.969), (0.090, 0.960), (0.100, 0.950)]


@pytest.mark.parametrize(("factor", "printed"), QUEUE)
def test_finite_queuing_table(factor: float, printed: float) -> None:
    """Heizer and Render, module D slides, finite queuing table, N = 5, one server (read): efficiency factor F."""
    found = interference(5, factor, 1 - factor)
    assert 1 - found.interference == pytest.approx(printed, abs=0.0006)


def test_operator_efficiency() -> None:
    """onlineclothingstudy.com 2017/01 (read): 400 pieces of 30 s in 480 min earn 200 min, 41.67 percent."""
    earned = 400 * 30 / 60
    assert earned == 200
    share = earned / 480
    assert 100 * share == pytest.approx(41.67, abs=0.005)
    crew = Crew(people=1, machines=0, minutes=480, performance=share)
    assert capacity(crew, 0.5, 0.0).by_labour == pytest.approx(400)


def test_output_at_standard_and_at_125_percent() -> None:
    """M. P. Groover, Work Systems (2007), ch. 2, ex. 2.2 to 2.4 (6.956 h read, rest memory): 120, 150, 62.6 min."""
    standard = (3.23 + 1.25 / 5) * allowance_factor(0.15, "share of basic time")
    shift = Crew(people=1, machines=0, minutes=480)
    assert capacity(shift, standard, 0.0).pieces == pytest.approx(120, abs=0.5)
    worked = 480 / allowance_factor(0.15, "share of basic time")
    assert worked / 60 == pytest.approx(6.956, abs=0.001)
    assert 480 - worked == pytest.approx(62.6, abs=0.05)
    fast = Crew(people=1, machines=0, minutes=480, performance=1.25)
    assert capacity(fast, standard, 0.0).pieces == pytest.approx(150, abs=0.5)


def test_two_units_a_cycle() -> None:
    """M. P. Groover, Work Systems, ch. 2 problems (data read, results computed): 278.3, 185.2 units; 66.2 min."""
    factor = allowance_factor(0.15, "share of basic time")
    shift = Crew(people=1, machines=0, minutes=480)
    assert capacity(shift, 3.0 * factor / 2, 0.0).pieces == pytest.approx(278.3, abs=0.05)
    irregular = (4.25 + 1.75 / 8) * allowance_factor(0.16, "share of basic time") / 2
    assert irregular == pytest.approx(2.592, abs=0.0005)
    assert capacity(shift, irregular, 0.0).pieces == pytest.approx(185.2, abs=0.05)
    worked = 480 / allowance_factor(0.16, "share of basic time")
    assert worked == pytest.approx(413.8, abs=0.05)
    assert 480 - worked == pytest.approx(66.2, abs=0.05)


def test_two_products_with_a_setup_each() -> None:
    """A. Asef-Vaziri, Impact of setup time (slides 2022), Scribd 777740368 (read): 420 min are left, 14 pairs a day."""
    left = 480 - 30 - 30
    assert left == 420
    assert capacity(Crew(people=1, machines=1, minutes=left), 0.0, 10 + 20).pieces == 14


BATCHES = [(12, 0.0833), (60, 0.25), (120, 0.3333), (300, 0.4167)]


@pytest.mark.parametrize(("batch", "printed"), BATCHES)
def test_capacity_of_a_batch_resource(batch: int, printed: float) -> None:
    """Cachon and Terwiesch, Matching Supply with Demand, ch. on batching (data read, results memory): B/(S + B·p)."""
    minutes = 2 + 120 / batch  # set-up once a batch adds S/B to each piece
    assert capacity(Crew(people=1, machines=1, minutes=1), 0.0, minutes).pieces == pytest.approx(printed, abs=5e-5)
