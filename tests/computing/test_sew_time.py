"""Seams and rows of bartacks: what each constant does, and what must hold for any seam."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.computing import seam_time, tack_time
from builder.computing.sew_time import leg_lengths, whole_stitches_mm
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


lengths, shares = st.floats(5, 2000), st.floats(0.05, 0.95)


@given(lengths, lengths, st.floats(5, 80))
def test_a_longer_seam_is_never_quicker(one: float, two: float, speed: float) -> None:
    """At any speed set."""
    short, long = (seam_time(polyline([(0, 0), (x, 0)]), 3.2, 3, 2, SEWING, speed) for x in sorted((one, two)))
    assert short <= long + 1e-9


@given(lengths, st.floats(5, 80), st.floats(5, 80))
def test_a_higher_speed_is_never_slower(length: float, one: float, two: float) -> None:
    """Up to the station's own top speed, beyond which it changes nothing."""
    slow, fast = (seam_time(polyline([(0, 0), (length, 90)]), 3.2, 3, 2, SEWING, speed) for speed in sorted((one, two)))
    assert fast <= slow + 1e-9
    assert seam_time(polyline([(0, 0), (length, 90)]), 3.2, 3, 2, SEWING, 80) == pytest.approx(
        seam_time(polyline([(0, 0), (length, 90)]), 3.2, 3, 2, SEWING, 40)
    )


@given(lengths, lengths, shares)
def test_a_run_split_where_it_goes_straight_on_changes_nothing(one: float, two: float, share: float) -> None:
    """With a corner after it, too: the legs stay the same."""
    whole = polyline([(0, 0), (one, 0), (one, two)])
    split = polyline([(0, 0), (one * share, 0), (one, 0), (one, two)])
    assert leg_lengths(split) == pytest.approx(leg_lengths(whole))
    assert seam_time(split, 3.2, 3, 2, SEWING) == pytest.approx(seam_time(whole, 3.2, 3, 2, SEWING), abs=0.03)


def test_smooth_curves_are_one_leg() -> None:
    """A rectangle with rounded corners is sewn in one go; with square ones it has four legs."""
    assert len(leg_lengths(Path(rectangle(100, 60, 10).segments))) == 1
    assert len(leg_lengths(Path(rectangle(100, 60).segments))) == 4


def test_a_leg_takes_whole_stitches() -> None:
    """300 mm at 3.2 mm: 94 stitches; 320 mm: exactly 100; a dot: one."""
    assert whole_stitches_mm(300, 3.2) == pytest.approx(300.8)
    assert whole_stitches_mm(320, 3.2) == pytest.approx(320)
    assert whole_stitches_mm(0.1, 3.2) == pytest.approx(3.2)
