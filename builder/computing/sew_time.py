"""Machine time of sewing, from the path: seams that run up to speed and down again, and rows of bartacks.

The equations are ours and rest on the station's `pace:` constants. A model whose constants were never measured in
the plant counts as an estimate. Lengths in mm, times in s. Which speed a seam is sewn at is machine_run.py.
"""

from __future__ import annotations

import math
from collections.abc import Iterable

from builder.computing.motion import segment_time
from builder.computing.pace_value import pace_value
from builder.geometry import Path
from builder.model import Pace

SMOOTH_CORNER_DEG = 5.0
"""Runs that meet at a flatter angle are sewn and cut through without slowing down."""


def seam_time(
    path: Path, stitch_mm: float, tack_stitches: int, tack_ends: int, pace: Pace, speed_st_s: float = math.inf
) -> float:
    """Time to sew along a path: start, each leg up to speed and down again, corners, tacks, finish.

    t = start + Σ legs + (legs − 1)·corner stop + ends·2·tack + finish

    A leg goes from corner to corner and takes whole stitches, because the needle is down at a corner; runs that meet
    smoothly are one leg. A tack of n stitches is sewn back and forth again, each way from rest to rest.

    stitch_mm  : stitch length > 0; tack_stitches, tack_ends : stitches of a tack, number of ends that have one
    speed_st_s : speed the operation sets or the plant measured, if slower than the station's top speed
    Source: kinematics (motion.py), ours; constants of the station.
    """
    legs = [whole_stitches_mm(length, stitch_mm) for length in leg_lengths(path)]
    v = min(pace_value(pace.top_speed), speed_st_s) * stitch_mm
    tacks = [tack_stitches * stitch_mm] * (2 * tack_ends)
    run = running_time([*legs, *tacks], v, pace_value(pace.acceleration), pace_value(pace.braking))
    corners = (len(legs) - 1) * pace_value(pace.corner_stop)
    return pace_value(pace.start) + run + corners + pace_value(pace.finish)


def running_time(runs_mm: Iterable[float], top_mm_s: float, up_mm_s2: float, down_mm_s2: float) -> float:
    """Time of runs that each start and end at rest. Source: kinematics (motion.py), ours.

    >>> round(running_time([300, 20], 128, 400, 800), 3)
    2.971
    """
    return sum(segment_time(one, 0.0, 0.0, top_mm_s, up_mm_s2, down_mm_s2) for one in runs_mm)


def whole_stitches_mm(leg_mm: float, stitch_mm: float) -> float:
    """Length sewn over a leg in whole stitches; a leg that is a multiple but for rounding gets no stitch more.

    >>> round(whole_stitches_mm(300, 3.2), 6)
    300.8
    """
    exact = leg_mm / stitch_mm
    return max(1, math.ceil(exact - 1e-9 * max(1.0, exact))) * stitch_mm


def leg_lengths(path: Path) -> list[float]:
    """Lengths from corner to corner, mm: runs are joined where the path goes on smoothly."""
    legs = [path.runs[0].length]
    for run, angle in zip(path.runs[1:], path.corner_angles(), strict=True):
        if abs(angle) <= SMOOTH_CORNER_DEG:
            legs[-1] += run.length
        else:
            legs.append(run.length)
    return legs


def tack_time(stitches: int, count: int, pace: Pace, speed_st_s: float = math.inf) -> float:
    """Time of a row of bartacks: n stitches each at the cycle's speed, start and finish each, moves between.

    t = c·(start + n/speed + finish) + (c − 1)·reposition
    """
    speed = min(pace_value(pace.top_speed), speed_st_s)
    one = pace_value(pace.start) + stitches / speed + pace_value(pace.finish)
    return count * one + (count - 1) * pace_value(pace.reposition)
