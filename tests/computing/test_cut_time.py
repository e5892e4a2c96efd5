"""Cutting: what each constant and setting does."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.computing import chop_time, contour_time, cycle_time, mark_time, raster_time, segment_time
from builder.geometry import Path, polyline, rectangle
from builder.model import Pace


def pace(**typed: str) -> Pace:
    """Constants as an engineer types them."""
    return Pace.model_validate({name.replace("_", " "): text for name, text in typed.items()})


LASER = pace(travel="800 mm/s", acceleration="3000 mm/s2", corner_speed="30 mm/s", pierce="0.1 s")


def test_chop_shares_its_lanes() -> None:
    """(300/600 + 0.8 + 1.2)/2."""
    cutter = pace(feed="600 mm/s", chop="0.8 s", dwell="1.2 s")
    assert chop_time(300, 2, cutter) == pytest.approx(1.25)


def test_press_by_cycles() -> None:
    """Four snaps of 2 s."""
    assert cycle_time(4, pace(cycle="2 s")) == 8


def test_contour_counts_pierce_and_corners() -> None:
    """A square: pierce, four sides slowed at corners; slower than its length at full speed."""
    laser = pace(travel="800 mm/s", acceleration="3000 mm/s2", corner_speed="30 mm/s", pierce="0.2 s")
    square = Path(rectangle(100, 100).segments)
    time = contour_time([square], 200, 1, laser)
    assert time > 0.2 + 400 / 200
    assert contour_time([square], 200, 2, laser) == pytest.approx(2 * time)
    smooth = Path(rectangle(100, 100, 20).segments)
    assert contour_time([smooth], 200, 1, laser) < time


def test_what_the_operation_sets_takes_the_place_of_the_stations_feed_and_dwell() -> None:
    """300 mm at 300 mm/s, 0.4 s to chop, 0.9 s to dwell, two lanes."""
    pace = Pace(feed="350 mm/s", chop="0.4 s", dwell="0.6 s")  # type: ignore[arg-type]
    assert chop_time(300, 2, pace, 300, 0.9) == pytest.approx((1 + 0.4 + 0.9) / 2)
    assert chop_time(350, 1, pace) == pytest.approx(1 + 0.4 + 0.6)


def test_half_a_stroke_a_piece_through_two_layers() -> None:
    """A press of 1.2 s: two pieces a stroke."""
    assert cycle_time(1 / 2, pace(cycle="1.2 s")) == pytest.approx(0.6)


def test_a_lead_in_is_cut_and_met_at_corner_speed() -> None:
    """5 mm before a straight cut of 100 mm, worked by the trapezoid of each."""
    line = polyline([(0, 0), (100, 0)])
    led = segment_time(5, 0, 30, 200, 3000, 3000) + segment_time(100, 30, 0, 200, 3000, 3000)
    assert contour_time([line], 200, 1, LASER, 5, head=(0, -5)) == pytest.approx(0.1 + led)


def test_the_head_travels_from_where_it_stands() -> None:
    """Home 300 and 400 mm away: 500 mm of travel more."""
    square = Path(rectangle(100, 100).segments)
    near, far = contour_time([square], 200, 1, LASER), contour_time([square], 200, 1, LASER, head=(-300, -400))
    assert far - near == pytest.approx(segment_time(500, 0, 0, 800, 3000, 3000))


def test_each_further_pass_over_an_open_cut_travels_back() -> None:
    """A slit of 100 mm twice: two cuts, two pierces, one way back."""
    slit = polyline([(0, 0), (100, 0)])
    once, twice = (contour_time([slit], 200, passes, LASER) for passes in (1, 2))
    assert twice == pytest.approx(2 * once + segment_time(100, 0, 0, 800, 3000, 3000))


@given(st.floats(0.2, 40))
def test_a_small_arc_is_followed_no_faster_than_its_radius_allows(radius: float) -> None:
    """At most the root of a·R: a full turn takes at least 2πR over it."""
    ring = Path(rectangle(2 * radius + 0.01, 2 * radius + 0.01, radius).segments)
    assert contour_time([ring], 400, 1, LASER) >= 0.1 + 2 * math.pi * radius / math.sqrt(3000 * radius)


@given(st.floats(1, 300), st.floats(1, 300), st.floats(0.1, 2), st.floats(50, 800))
def test_a_raster_takes_no_less_than_its_lines_at_speed(width: float, height: float, gap: float, speed: float) -> None:
    """And a closer spacing is never quicker."""
    time = raster_time(width, height, gap, speed, LASER)
    assert time >= height / gap * width / speed * (1 - 1e-9)
    assert raster_time(width, height, gap / 2, speed, LASER) >= time


def test_two_marks_are_travelled_between() -> None:
    """One line each: the first ends at its right, 70 mm before the second."""
    areas = [(0.0, 0.0, 30.0, 0.1), (100.0, 0.1, 130.0, 0.2)]
    lines = 2 * raster_time(30, 0.1, 0.2, 300, LASER)
    assert mark_time(areas, 0.2, 300, LASER) == pytest.approx(lines + segment_time(70, 0, 0, 800, 3000, 3000))


@given(st.lists(st.floats(1, 300), min_size=2, max_size=5), st.floats(0.1, 0.9))
def test_a_cut_split_where_it_goes_straight_on_takes_the_same(sides: list[float], share: float) -> None:
    """A staircase, its first step cut in two runs."""
    points, at = [(0.0, 0.0)], (0.0, 0.0)
    for number, side in enumerate(sides):
        at = (at[0] + side, at[1]) if number % 2 == 0 else (at[0], at[1] + side)
        points.append(at)
    split = [points[0], (sides[0] * share, 0.0), *points[1:]]
    whole = contour_time([polyline(points)], 250, 1, LASER)
    assert contour_time([polyline(split)], 250, 1, LASER) == pytest.approx(whole, rel=1e-9)
