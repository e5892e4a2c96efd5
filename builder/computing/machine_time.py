"""Machine time from geometry: what one run of a machine takes, by its kind of model.

The equations are ours and rest on the station's `pace:` constants. A model whose constants were never measured in
the plant counts as an estimate. Lengths in mm, times in s.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

from builder.computing.motion import path_time, segment_time
from builder.geometry import Arc, FeatureShape, PartShape, Path, Segment, stitches_per_run
from builder.model import Pace, Quantity

SMOOTH_CORNER_DEG = 5.0
"""Runs that meet at a flatter angle are sewn and cut through without slowing down."""


def seam_time(
    path: Path, stitch_mm: float, tack_stitches: int, tack_ends: int, pace: Pace, speed_st_s: float = math.inf
) -> float:
    """Time to sew along a path: start, each run up to speed and down again, corners, tacks, finish.

    Each run that ends at a corner ends with the needle down, so speed is taken off there and `corner stop` added.
    A tack of n stitches is sewn back and forth again: 2·n stitches at the speed reached over n stitches.

    speed_st_s : speed the operation sets, if slower than the station's top speed
    stitch_mm : stitch length; tack_stitches, tack_ends : stitches of a tack, number of ends that have one
    Source: kinematics of formulas above, ours; constants of the station.
    """
    v = min(_value(pace.top_speed), speed_st_s) * stitch_mm
    a, d = _value(pace.acceleration), _value(pace.braking)
    legs = _legs(path)
    counts = stitches_per_run(path, stitch_mm)
    sewn = [n * stitch_mm for n in counts] if len(legs) == len(counts) else [sum(r.length for r in leg) for leg in legs]
    run = sum(segment_time(length, 0.0, 0.0, v, a, d) for length in sewn)
    tack = tack_ends * 2 * segment_time(tack_stitches * stitch_mm, 0.0, 0.0, v, a, d) if tack_stitches else 0.0
    corners = (len(legs) - 1) * _value(pace.corner_stop)
    return _value(pace.start) + run + corners + tack + _value(pace.finish)


def _legs(path: Path) -> list[list[Segment]]:
    """Runs joined where the path goes on smoothly."""
    legs: list[list[Segment]] = [[path.runs[0]]]
    for run, angle in zip(path.runs[1:], path.corner_angles(), strict=True):
        if abs(angle) <= SMOOTH_CORNER_DEG:
            legs[-1].append(run)
        else:
            legs.append([run])
    return legs


def tack_time(stitches: int, count: int, pace: Pace, speed_st_s: float = math.inf) -> float:
    """Time of a row of bartacks: n stitches each at the cycle's speed, start and finish each, moves between.

    t = c·(start + n/speed + finish) + (c − 1)·reposition
    """
    one = _value(pace.start) + stitches / min(_value(pace.top_speed), speed_st_s) + _value(pace.finish)
    return count * one + (count - 1) * _value(pace.reposition)


def contour_time(contours: Sequence[Path], speed_mm_s: float, passes: int, pace: Pace) -> float:
    """Time to cut contours: each pierced, cut with corners slowed, and travelled to from the one before.

    On an arc of radius R speed is at most √(a·R). Travel starts and ends at rest, from the end of one contour to the
    start of the next, the first from the lower left corner of all.
    """
    a, corner = _value(pace.acceleration), _value(pace.corner_speed)
    travel, pierce = _value(pace.travel), _value(pace.pierce)
    total = 0.0
    at = (min(p.bounds()[0] for p in contours), min(p.bounds()[1] for p in contours)) if contours else (0.0, 0.0)
    for path in contours:
        total += segment_time(math.dist(at, path.start), 0.0, 0.0, travel, a, a)
        caps = [min(speed_mm_s, _arc_cap(run, a)) for run in path.runs]
        bends = [
            min(c1, c2) if abs(angle) <= SMOOTH_CORNER_DEG else min(corner, c1, c2)
            for c1, c2, angle in zip(caps, caps[1:], path.corner_angles(), strict=False)
        ]
        once = path_time([run.length for run in path.runs], bends, caps, a, a)
        total += passes * (pierce + once)
        at = path.end
    return total


def _arc_cap(run: Segment, acceleration_mm_s2: float) -> float:
    return math.sqrt(acceleration_mm_s2 * run.radius) if isinstance(run, Arc) else math.inf


def chop_time(
    length_mm: float, lanes: int, pace: Pace, feed_mm_s: float | None = None, dwell_s: float | None = None
) -> float:
    """Time of one piece cut to length from webbing: feed, chop and, for a hot blade, dwell; lanes share it.

    feed_mm_s, dwell_s : what the operation sets, in place of the station's constants
    t = (L/feed + chop + dwell)/lanes
    """
    feed = feed_mm_s if feed_mm_s is not None else _value(pace.feed)
    dwell = dwell_s if dwell_s is not None else _value(pace.dwell)
    return (length_mm / feed + _value(pace.chop) + dwell) / lanes


def cycle_time(count: int, pace: Pace) -> float:
    """Time of a press: count cycles."""
    return count * _value(pace.cycle)


def cut_contours(shape: PartShape, cut: Sequence[FeatureShape]) -> list[Path]:
    """What a cutter follows for a part: holes first, then the outline with its notches cut into it.

    Holes come first because a freed piece moves. A notch is followed as part of its own small path.
    """
    holes = [_circle(point, one.size[0] / 2) for one in cut if one.kind == "hole" for point in one.points]
    notches = [path for one in cut if one.kind == "notch" for path in one.paths]
    return [*holes, *notches, Path(shape.outline.segments)]


def _circle(centre: tuple[float, float], radius: float) -> Path:
    x, y = centre
    east, west = (x + radius, y), (x - radius, y)
    return Path((Arc(east, west, centre, False), Arc(west, east, centre, False)))


def _value(quantity: Quantity | None) -> float:
    return float(quantity.value) if quantity is not None else 0.0
