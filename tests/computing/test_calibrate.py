"""Constants of a sewing station from timed seams: those that made the times come back."""

from __future__ import annotations

import random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from builder.computing import Calibration, TimedSeam, calibrate, running_time, seam_time
from builder.computing.sew_time import leg_lengths, whole_stitches_mm
from builder.geometry import polyline
from builder.model import Pace

UP, DOWN = 400.0, 800.0


def timed(
    legs: tuple[float, ...], speed_st_s: float, fixed: float, stop: float, stitch: float = 3.2, noise: float = 0.0
) -> TimedSeam:
    """A seam with tacks of three stitches at both ends and a stop between its legs."""
    tacks = (3 * stitch,) * 4
    seconds = fixed + running_time([*legs, *tacks], speed_st_s * stitch, UP, DOWN) + (len(legs) - 1) * stop
    return TimedSeam(legs, len(legs) - 1, tacks, stitch, seconds + noise)


LEGS = ((150.0,), (300.0,), (600.0,), (900.0, 40.0), (200.0, 200.0), (250.0, 60.0, 250.0), (90.0, 90.0, 90.0, 90.0))


def found_in(seams: list[TimedSeam]) -> Calibration:
    """The fit; a refusal fails the test with its words."""
    found, words = calibrate(seams, UP, DOWN)
    assert found is not None, words
    assert words == ""
    return found


@settings(max_examples=30)
@given(st.floats(15, 60), st.floats(0.5, 4), st.floats(0.1, 1.5))
def test_constants_that_made_the_times_come_back(speed: float, fixed: float, stop: float) -> None:
    """Without noise, to six digits, and with errors near 0."""
    found = found_in([timed(legs, speed, fixed, stop) for legs in LEGS])
    assert found.top_speed_st_s.value == pytest.approx(speed, rel=1e-4)
    assert found.fixed_s.value == pytest.approx(fixed, rel=1e-3)
    assert found.corner_s is not None
    assert found.corner_s.value == pytest.approx(stop, rel=1e-3)
    assert found.residual_s < 1e-3


def test_with_noise_the_truth_lies_within_three_standard_errors() -> None:
    """Ten times seven seams, 0.1 s of noise: true 40 st/s, 2.2 s, 0.5 s."""
    rolls = random.Random(7)
    found = found_in([timed(legs, 40, 2.2, 0.5, noise=rolls.gauss(0, 0.1)) for legs in LEGS * 10])
    assert found.corner_s is not None
    for one, true in ((found.top_speed_st_s, 40), (found.fixed_s, 2.2), (found.corner_s, 0.5)):
        assert 0 < one.error < 0.1 * true
        assert abs(one.value - true) < 3 * one.error
    assert found.residual_s == pytest.approx(0.1, rel=0.3)
    assert found.seams == 70


def test_errors_shrink_with_the_root_of_the_seams() -> None:
    """Four times as many seams with the same scatter: half the error."""
    few = [timed(legs, 40, 2.2, 0.5, noise=0.1 if number % 2 else -0.1) for number, legs in enumerate(LEGS * 2)]
    one, four = found_in(few), found_in(few * 4)
    assert four.top_speed_st_s.value == pytest.approx(one.top_speed_st_s.value, rel=1e-4)
    assert four.top_speed_st_s.error == pytest.approx(one.top_speed_st_s.error * ((14 - 3) / (56 - 3)) ** 0.5, rel=1e-3)


def test_corner_stops_that_no_seam_tells_apart_are_in_the_fixed_time() -> None:
    """One corner each: 2 s and a stop of 0.5 s are 2.5 s."""
    found = found_in([timed((length, 100.0), 40, 2.0, 0.5) for length in (100.0, 200.0, 400.0, 800.0)])
    assert found.corner_s is None
    assert found.fixed_s.value == pytest.approx(2.5, rel=1e-3)


def test_constants_come_back_through_the_seam_model() -> None:
    """Timed by `seam_time` itself: 2,400 st/min, start 1 and finish 1.2 s, corner stop 0.5 s."""
    typed = {"top speed": "2400 st/min", "acceleration": "400 mm/s2", "braking": "800 mm/s2"}
    pace = Pace.model_validate({**typed, "start": "1 s", "corner stop": "0.5 s", "finish": "1.2 s"})
    seams = []
    for points in (
        [(0, 0), (200, 0)],
        [(0, 0), (600, 0)],
        [(0, 0), (300, 0), (300, 200)],
        [(0, 0), (900, 0), (900, 90)],
    ):
        path = polyline(points)
        legs = tuple(whole_stitches_mm(leg, 3.2) for leg in leg_lengths(path))
        seams.append(TimedSeam(legs, len(legs) - 1, (9.6,) * 4, 3.2, seam_time(path, 3.2, 3, 2, pace)))
    found = found_in(seams)
    assert found.top_speed_st_s.value == pytest.approx(40, rel=1e-4)
    assert found.fixed_s.value == pytest.approx(2.2, rel=1e-3)
    assert found.corner_s is not None
    assert found.corner_s.value == pytest.approx(0.5, rel=1e-3)


@pytest.mark.parametrize(
    ("seams", "words"),
    [
        ([timed(legs, 40, 2, 0.5) for legs in LEGS[:3]], "4 timed seams are needed, there are 3"),
        ([timed((300.0 + step,), 40, 2, 0.5) for step in range(6)], "lengths hardly differ"),
        ([timed((float(step),), 40, 2, 0.5) for step in range(4, 12)], "too few seams reach top speed"),
    ],
)
def test_refused_with_words(seams: list[TimedSeam], words: str) -> None:
    """Too few, too alike, too short."""
    found, said = calibrate(seams, UP, DOWN)
    assert found is None
    assert words in said


def test_refused_where_each_corner_comes_with_the_same_leg() -> None:
    """One to eight legs of 300 mm: a slower machine and a longer stop look alike."""
    found, said = calibrate([timed((300.0,) * count, 40, 2, 0.5) for count in range(1, 9)], UP, DOWN)
    assert found is None
    assert "corners and lengths grow together" in said
