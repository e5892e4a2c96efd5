"""The interval of a product's time: what errs together adds up, what errs apart partly cancels."""

from __future__ import annotations

import math
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.computing import AllowanceLine, StationAllowance, operation_time
from builder.computing.product_spread import RATINGS, RouteShare, labour_parts, product_spread
from builder.model import KINDS, Precision, SpreadPart, Station, StepTime, TimePart

PRECISION = Precision()


def line(name: str, *parts: tuple[str, float, float, bool], cycle: float = 1.0) -> RouteShare:
    """A line of a route from (source, minutes, error, estimated)."""
    found = tuple(SpreadPart(source, minutes, error, 0.0, estimated) for source, minutes, error, estimated in parts)
    return RouteShare(name, sum(part.minutes for part in found), cycle, found)


def test_a_shared_element_errs_in_both_operations() -> None:
    """One element in two operations (s 0.03 each), own s 0.02 each: 0.066, not 0.051 (definition of this project)."""
    route = [
        line("a", ("element:turn", 1, 0.03, False), ("study:a/x", 1, 0.02, False)),
        line("b", ("element:turn", 1, 0.03, False), ("study:b/x", 1, 0.02, False)),
    ]
    found = product_spread(route, {}, PRECISION)
    assert (found.high_min - found.low_min) / 2 / 1.959964 == pytest.approx(0.066, abs=0.0005)
    assert found.parts[0].source == "element:turn"
    assert sum(part.share for part in found.parts) == pytest.approx(1.0)


def test_width_from_estimates_is_what_exact_ones_would_take_away() -> None:
    """Errors 3 and 4: without the 4 the width falls from 5 to 3."""
    found = product_spread([line("a", ("study:a/x", 1, 3, False), ("estimate:a/y", 1, 4, True))], {}, PRECISION)
    assert found.estimates_width == pytest.approx(1 - 3 / 5)


def test_what_to_time_next_is_the_most_variance_a_minute() -> None:
    """The shorter of two equally unsure operations comes first; one well known is not named."""
    route = [
        line("long", ("estimate:long/x", 1, 0.2, True), cycle=4.0),
        line("short", ("estimate:short/x", 1, 0.2, True), cycle=1.0),
        line("known", ("study:known/x", 1, 0.001, False)),
    ]
    following = product_spread(route, {}, PRECISION).following
    assert [one.operation for one in following] == ["short", "long"]
    assert (following[0].cycles, following[0].minutes) == (30, 30.0)


def test_ratings_err_together_and_no_study_takes_that_away() -> None:
    route = [line(name, (f"study:{name}/x", 1, 0.0, False), (RATINGS, 0, 0.02, False)) for name in "abc"]
    found = product_spread(route, {}, PRECISION)
    assert found.parts[0].error_min == pytest.approx(0.06)
    assert found.following == ()


def test_a_product_of_exact_times_has_no_width() -> None:
    found = product_spread([line("a", ("study:a/x", 2, 0.0, False))], {}, PRECISION)
    assert (found.low_min, found.high_min, found.estimates_width) == (2.0, 2.0, 0.0)


def _station() -> Station:
    typed = {"title": "Press", "kind": "click press", "count": "1", "distance": "1 m", "attendance": "constant"}
    return Station.model_validate(typed)


@given(st.floats(0, 30), st.floats(0, 30), st.floats(0.1, 30), st.integers(1, 40))
def test_parts_add_up_to_the_labour(outside: float, inside: float, run: float, per: int) -> None:
    """Whatever is owed of a run, the parts are the operation's standard minutes."""
    steps = [
        StepTime("a", outside, 0, 0, 0, Fraction(1, per), "x", parts=(TimePart("e:a", outside, 1.0),)),
        StepTime("r", 0, run, 0, 0, Fraction(1), "x", parts=(TimePart("m:r", run, 1.0, run=True),)),
        StepTime("i", inside, 0, 0, 0, Fraction(1), "x", during="r", parts=(TimePart("e:i", inside, 1.0),)),
    ]
    kind = KINDS["click press"]
    allowed = StationAllowance((AllowanceLine("personal", Fraction(13, 100), "plant"),))
    time = operation_time("op", steps, _station(), kind, allowed)
    parts = labour_parts(time, _station(), kind, 2.0)
    assert math.fsum(part.minutes for part in parts) == pytest.approx(2 * time.labour_min)
