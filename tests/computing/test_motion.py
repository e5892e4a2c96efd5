"""The speed trapezoid against closed forms and its own limits."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.computing import corner_speeds, path_time, segment_time

lengths = st.floats(0.1, 5000)
speeds = st.floats(5, 800)
rates = st.floats(50, 5000)


def test_long_seam_reaches_top_speed() -> None:
    """300 mm at 128 mm/s, 400 up and 800 down: 2.584 s; L/v alone is 2.344 (project's formula page)."""
    assert segment_time(300, 0, 0, 128, 400, 800) == pytest.approx(2.584, abs=5e-4)


def test_short_seam_never_does() -> None:
    """20 mm: 0.387 s; L/v alone is 0.156 (project's formula page)."""
    assert segment_time(20, 0, 0, 128, 400, 800) == pytest.approx(0.387, abs=5e-4)


def test_laser_segment_between_corners() -> None:
    """40 mm at 300 mm/s between corners at 30 mm/s: 0.214 s (project's formula page)."""
    assert segment_time(40, 30, 30, 300, 3000, 3000) == pytest.approx(0.214, abs=5e-4)


@given(lengths, speeds, rates, rates)
def test_never_faster_than_top_speed(length: float, cap: float, up: float, down: float) -> None:
    """No seam takes less than L/v."""
    assert segment_time(length, 0, 0, cap, up, down) >= length / cap * (1 - 1e-9)


@given(lengths, lengths, speeds, rates, rates)
def test_stopping_on_the_way_costs_time(a: float, b: float, cap: float, up: float, down: float) -> None:
    """Two runs with a stop between take at least as long as one run through."""
    through = segment_time(a + b, 0, 0, cap, up, down)
    assert segment_time(a, 0, 0, cap, up, down) + segment_time(b, 0, 0, cap, up, down) >= through * (1 - 1e-9)


@given(st.lists(lengths, min_size=1, max_size=8), speeds, rates, st.data())
def test_corner_speeds_are_reachable(parts: list[float], cap: float, rate: float, data: st.DataObject) -> None:
    """Over each segment the change of v² is at most 2·a·L, and no corner is passed faster than allowed."""
    corners = data.draw(st.lists(st.floats(0, cap), min_size=len(parts) - 1, max_size=len(parts) - 1))
    found = corner_speeds(parts, corners, rate, rate)
    assert found[0] == found[-1] == 0
    for i, length in enumerate(parts):
        assert abs(found[i + 1] ** 2 - found[i] ** 2) <= 2 * rate * length * (1 + 1e-9)
    assert all(speed <= allowed for speed, allowed in zip(found[1:-1], corners, strict=True))


def test_path_without_corners_is_one_segment() -> None:
    """Two segments with an open corner between take as long as their sum."""
    split = path_time([100, 200], [1e9], [128, 128], 400, 800)
    assert split == pytest.approx(segment_time(300, 0, 0, 128, 400, 800), rel=1e-9)
