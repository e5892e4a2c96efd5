"""Operations at machines that pace themselves, as one person with several sees them."""

from __future__ import annotations

import pytest

from builder.computing import tending_of
from builder.model import OperationTime, Station


def operation(outside: float, inside: float, run: float) -> OperationTime:
    """Times of one run in seconds; what they add up to with allowances doesn't matter here."""
    return OperationTime("cut", (), outside, inside, run, 0.0, 0.0, 0.0)


def station(**more: object) -> Station:
    typed = {"title": "Cutter", "kind": "knife cutter", "count": "3", "distance": "1 m", "attendance": "free", **more}
    return Station.model_validate(typed)


def test_what_is_owed_inside_a_run_is_no_time_for_another_machine() -> None:
    """60 s stopped, 180 s run, 35 % owed: (60 + 180) ÷ (60 + 63)."""
    found = tending_of(operation(60, 12, 180), station(tended="2"), 0.35)
    assert found is not None
    assert found.machines == pytest.approx(240 / 123)
    assert found.cycle_s == pytest.approx(246)
    assert 0 < found.interference < 1


def test_a_machine_that_is_owed_all_of_it_leaves_no_time_for_a_second() -> None:
    assert tending_of(operation(60, 0, 180), station(), 1.0) is None
    assert tending_of(operation(60, 0, 0), station(), 0.0) is None


def test_one_machine_loses_nothing() -> None:
    found = tending_of(operation(60, 0, 180), station(), 0.0)
    assert found is not None
    assert (found.tended, found.interference, found.cycle_s) == (1, 0.0, 240.0)
