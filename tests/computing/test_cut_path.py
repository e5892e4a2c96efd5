"""What a cutter follows, in which order, and what a raster takes."""

from __future__ import annotations

import math
import random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.computing import contour_time, mark_time, nearest_next, raster_time, seam_time
from builder.computing.cut_path import lead_start
from builder.computing.cut_time import raster_lines
from builder.geometry import Path, inset_outline, polyline, rectangle
from builder.model import Pace

LASER = Pace.model_validate(
    {"travel": "800 mm/s", "acceleration": "3000 mm/s2", "corner speed": "30 mm/s", "pierce": "0.1 s"}
)
SEWING = Pace.model_validate(
    {
        "top speed": "2400 st/min",
        "acceleration": "400 mm/s2",
        "braking": "800 mm/s2",
        "start": "1 s",
        "corner stop": "0.5 s",
        "finish": "1 s",
    }
)
POINTS = st.lists(st.tuples(st.floats(-500, 500), st.floats(-500, 500)), max_size=25)


@given(POINTS, st.tuples(st.floats(-500, 500), st.floats(-500, 500)))
def test_the_nearest_is_always_next(points: list[tuple[float, float]], at: tuple[float, float]) -> None:
    """Every point once, and each time none that is left lies nearer."""
    order = nearest_next(points, at)
    assert sorted(order) == list(range(len(points)))
    left = set(order)
    for number in order:
        assert math.dist(points[number], at) <= min(math.dist(points[one], at) for one in left) + 1e-9
        left.remove(number)
        at = points[number]


def test_a_sheet_of_ten_thousand_holes_is_ordered_without_looking_at_all_pairs() -> None:
    rolls = random.Random(1)
    points = [(rolls.uniform(0, 2000), rolls.uniform(0, 1000)) for _ in range(10_000)]
    assert len(set(nearest_next(points, (0, 0)))) == len(points)


def test_a_kerf_makes_the_path_longer_outside() -> None:
    """100 × 50 mm with 0.4 mm kerf: half of it outside each side, rounded or square at the corners."""
    outline = rectangle(100, 50)
    wider = Path(inset_outline(outline, -0.2).segments)
    assert wider.length > Path(outline.segments).length
    assert wider.length == pytest.approx(300.8 + 0.8, abs=0.9)


def test_a_lead_in_starts_in_the_waste_and_costs_time() -> None:
    path = Path(rectangle(100, 50).segments)
    start = lead_start(path, 3)
    assert math.dist(start, path.start) == pytest.approx(3)
    assert contour_time([path], 300, 1, LASER, 3) > contour_time([path], 300, 1, LASER)


def test_each_pass_pierces_and_follows_again() -> None:
    path = Path(rectangle(100, 50).segments)
    one, two = (contour_time([path], 300, passes, LASER) for passes in (1, 2))
    assert two == pytest.approx(2 * one)


def test_a_raster_takes_its_lines_at_speed_and_a_turn_each() -> None:
    """10 mm high at 0.25 mm: 40 lines of 20 mm at 200 mm/s, 2·v/a a turn (worked by hand)."""
    assert raster_lines(10, 0.25) == 40
    assert raster_time(20, 10, 0.25, 200, LASER) == pytest.approx(40 * (20 / 200 + 2 * 200 / 3000))
    assert mark_time([(0, 0, 20, 10)], 0.25, 200, LASER) == pytest.approx(raster_time(20, 10, 0.25, 200, LASER))


@given(st.floats(5, 800), st.floats(5, 800), st.floats(20, 400))
def test_a_longer_cut_is_never_quicker_and_a_higher_speed_never_slower(one: float, two: float, speed: float) -> None:
    short, long = sorted((one, two))
    lines = [polyline([(0, 0), (length, 0)]) for length in (short, long)]
    assert contour_time([lines[0]], speed, 1, LASER) <= contour_time([lines[1]], speed, 1, LASER) + 1e-9
    assert contour_time([lines[1]], speed * 1.5, 1, LASER) <= contour_time([lines[1]], speed, 1, LASER) + 1e-9


@given(st.floats(10, 400), st.floats(0.1, 0.9))
def test_a_straight_seam_split_without_a_corner_takes_the_same(length: float, share: float) -> None:
    whole = seam_time(polyline([(0, 0), (length, 0)]), 3.2, 3, 2, SEWING)
    split = seam_time(polyline([(0, 0), (length * share, 0), (length, 0)]), 3.2, 3, 2, SEWING)
    assert split == pytest.approx(whole)
