"""Machine models: what each constant does."""

from __future__ import annotations

import pytest

from builder.computing import chop_time, contour_time, cycle_time, seam_time, tack_time
from builder.geometry import Path, box_and_cross, polyline, rectangle
from builder.model import Pace


def pace(**typed: str) -> Pace:
    """Constants as an engineer types them."""
    return Pace.model_validate({name.replace("_", " "): text for name, text in typed.items()})


SEWING = pace(
    top_speed="2400 st/min",
    acceleration="400 mm/s2",
    braking="800 mm/s2",
    start="1 s",
    corner_stop="0.5 s",
    finish="1.2 s",
)


def test_straight_seam() -> None:
    """Start, 300 mm in 94 whole stitches of 3.2 mm, finish."""
    time = seam_time(polyline([(0, 0), (300, 0)]), 3.2, 0, 0, SEWING)
    assert time == pytest.approx(1 + 2.584 + 1.2, abs=0.01)


def test_each_corner_costs_a_stop() -> None:
    """The same length with one corner: at least the corner stop more."""
    straight = seam_time(polyline([(0, 0), (320, 0)]), 3.2, 0, 0, SEWING)
    bent = seam_time(polyline([(0, 0), (160, 0), (160, 160)]), 3.2, 0, 0, SEWING)
    assert bent >= straight + 0.5


def test_tacks_are_sewn_twice_over() -> None:
    """A tack at both ends costs more than at one, and both more than none."""
    path = polyline([(0, 0), (300, 0)])
    none, one, both = (seam_time(path, 3.2, 3, ends, SEWING) for ends in (0, 1, 2))
    assert both - one == pytest.approx(one - none)
    assert one > none


def test_box_and_cross_is_timed_as_sewn_not_as_drawn() -> None:
    """Seven runs, six corners: one side is gone over twice."""
    path = box_and_cross(38.1, 30)
    assert path.length == pytest.approx(263.2, abs=0.1)
    assert seam_time(path, 3.2, 0, 0, SEWING) > 1 + 1.2 + (len(path.runs) - 1) * 0.5


def test_bartacks_by_stitch_count() -> None:
    """5 tacks of 28 stitches at 2800 a minute: 5·(0.5 + 0.6 + 0.4) + 4·1.5."""
    bartacker = pace(top_speed="2800 st/min", start="0.5 s", finish="0.4 s", reposition="1.5 s")
    assert tack_time(28, 5, bartacker) == pytest.approx(5 * 1.5 + 4 * 1.5)


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
