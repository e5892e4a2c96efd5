"""Vector helpers: exact where they promise to be, and the identities of the plane."""

from __future__ import annotations

import math
import pickle

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.geometry.vector import (
    GeometryFault,
    add,
    angle_deg,
    cross,
    distance,
    dot,
    left,
    length,
    lerp,
    rotate,
    said,
    scale,
    sub,
    turn_deg,
    unit,
)

numbers = st.floats(-1000, 1000, allow_nan=False)
points = st.tuples(numbers, numbers)
long_enough = points.filter(lambda p: math.hypot(*p) > 1e-3)


def test_sums_and_products_of_a_known_pair() -> None:
    assert add((1, 2), (3, -5)) == (4, -3)
    assert sub((1, 2), (3, -5)) == (-2, 7)
    assert scale((1, -2), 3) == (3, -6)
    assert dot((1, 2), (3, -5)) == -7
    assert cross((1, 2), (3, -5)) == -11
    assert length((3, 4)) == 5
    assert distance((1, 1), (4, 5)) == 5
    assert unit((0, -7)) == (0, -1)
    assert angle_deg((0, 2)) == pytest.approx(90)


def test_cross_is_positive_when_the_second_points_left() -> None:
    assert cross((1, 0), left((1, 0))) > 0


@pytest.mark.parametrize(
    ("turn", "expected"),
    [(0, (3, 1)), (90, (-1, 3)), (180, (-3, -1)), (270, (1, -3)), (-90, (1, -3)), (720, (3, 1))],
)
def test_quarter_turns_are_exact(turn: float, expected: tuple[float, float]) -> None:
    assert rotate((3, 1), turn) == expected


def test_a_turn_by_60_degrees_is_counter_clockwise() -> None:
    assert rotate((2, 0), 60) == pytest.approx((1, math.sqrt(3)))


@given(long_enough, st.floats(-720, 720))
def test_rotating_keeps_the_length_and_adds_the_angle(point: tuple[float, float], turn: float) -> None:
    turned = rotate(point, turn)
    assert length(turned) == pytest.approx(length(point))
    assert math.remainder(turn_deg(point, turned) - turn, 360) == pytest.approx(0, abs=1e-6)


@given(points, points)
def test_lerp_gives_both_ends_exactly(a: tuple[float, float], b: tuple[float, float]) -> None:
    assert lerp(a, b, 0) == a
    assert lerp(a, b, 1) == b


def test_lerp_goes_on_beyond_its_ends() -> None:
    assert lerp((0, 0), (10, 4), 1.5) == (15, 6)


def test_straight_back_is_a_turn_of_plus_180() -> None:
    assert turn_deg((1, 0), (-1, 0)) == 180
    assert turn_deg((1, 0), (-1, -0.0)) == 180
    assert turn_deg((0, 1), (1, 0)) == pytest.approx(-90)


def test_nothing_has_no_direction() -> None:
    with pytest.raises(GeometryFault, match="no direction"):
        unit((0.0, 0.0))


def test_a_fault_carries_its_place_even_through_pickle() -> None:
    fault = pickle.loads(pickle.dumps(GeometryFault("Broken.", (1.0, 2.0))))
    assert isinstance(fault, ValueError)
    assert (str(fault), fault.message, fault.at) == ("Broken.", "Broken.", (1.0, 2.0))


def test_a_point_is_said_without_rounding_noise_or_minus_zero() -> None:
    assert said((12.500000001, -0.00001)) == "(12.5, 0)"
