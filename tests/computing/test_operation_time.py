"""Labour and machine minutes apart."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.computing import labour, operation_time
from builder.model import KINDS, Station, StepTime


def station(**typed: object) -> Station:
    """A station as typed."""
    base = {"title": "A", "kind": "laser", "count": "1", "distance": "0.6 m", "attendance": "constant"}
    return Station.model_validate({**base, **typed})


def step(name: str, hand: float, run: float = 0.0, share: Fraction = Fraction(1), during: str = "") -> StepTime:
    """A step without estimates."""
    return StepTime(name, hand, run, 0.0, 0.0, share, "study", 1, during)


seconds = st.floats(0, 500)


@given(seconds, seconds, seconds, st.floats(0, 1))
def test_a_machine_paced_minute_is_labour_up_to_its_share(
    outside: float, inside: float, run: float, share: float
) -> None:
    """Labour is never above outside + share of the run, unless the inside work itself is more."""
    found = labour(outside, [(inside, run)], share)
    assert found <= outside + max(inside, share * run) * (1 + 1e-12)
    assert found >= outside + inside - 1e-9


@given(seconds, seconds, st.floats(0, 1))
def test_inside_work_that_fits_adds_no_labour(outside: float, run: float, share: float) -> None:
    """What the operator does inside the attended share is already counted."""
    assert labour(outside, [(share * run, run)], share) == labour(outside, [(0.0, run)], share)


def test_attendance_changes_labour_and_not_machine() -> None:
    """Outside 18 s, inside 24 s, run 120 s: labour 1.00 min in sight at 35 %, machine 2.30 either way."""
    steps = [step("load", 18), step("cut", 0, 120), step("sort", 24, during="cut")]
    kind = KINDS["laser"]
    in_sight = operation_time("a", steps, station(attendance="in sight", share="35 %"), kind, 1.0)
    constant = operation_time("a", steps, station(), kind, 1.0)
    assert in_sight.labour_min == pytest.approx(1.0)
    assert constant.labour_min == pytest.approx(2.3)
    assert in_sight.machine_min == constant.machine_min == pytest.approx(2.3)


def test_machine_that_does_not_wait_is_free_meanwhile() -> None:
    """Outside work holds the machine only where it waits."""
    steps = [step("load", 18), step("cut", 0, 120)]
    held = operation_time("a", steps, station(**{"machine waits": "no"}), KINDS["laser"], 1.0)
    assert held.machine_min == pytest.approx(2.0)


def test_bench_holds_no_machine() -> None:
    """Handwork at a bench has labour only."""
    time = operation_time("a", [step("look", 30)], station(kind="bench"), KINDS["bench"], 1.2)
    assert time.labour_min == pytest.approx(0.6)
    assert time.machine_min == 0


def test_once_in_twenty_adds_a_twentieth() -> None:
    """A frequency of once per N adds exactly t/N."""
    without = operation_time("a", [step("look", 30)], station(kind="bench"), KINDS["bench"], 1.0)
    with_it = operation_time(
        "a", [step("look", 30), step("band", 40, share=Fraction(1, 20))], station(kind="bench"), KINDS["bench"], 1.0
    )
    assert with_it.labour_min - without.labour_min == pytest.approx(40 / 20 / 60, abs=1e-12)


def test_share_of_estimates() -> None:
    """Half of the labour is estimated."""
    estimated = StepTime("guess", 10, 0, 10, 0, Fraction(1), "estimate")
    time = operation_time("a", [step("look", 10), estimated], station(kind="bench"), KINDS["bench"], 1.0)
    assert time.estimate_share == pytest.approx(0.5)
