"""Machine time of cutting and marking: contours followed by a head, areas marked line by line, chops and strokes.

The equations are ours and rest on the station's `pace:` constants and the operation's settings. What the head
follows, and in which order, is cut_path.py. Lengths in mm, times in s, speeds in mm/s.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

from builder.computing.cut_path import lead_start, nearest_next
from builder.computing.motion import path_time, segment_time
from builder.computing.pace_value import pace_value
from builder.computing.sew_time import SMOOTH_CORNER_DEG
from builder.geometry import Arc, Bounds, Path, Point, Segment
from builder.model import Pace


def contour_time(
    contours: Sequence[Path],
    speed_mm_s: float,
    passes: int,
    pace: Pace,
    lead_mm: float = 0.0,
    head: Point | None = None,
) -> float:
    """Time to cut contours in the order given: travelled to, pierced, led in, cut with corners slowed.

    t = Σ travel + passes·(pierce + path) + (passes − 1)·travel back to the start

    Travel starts and ends at rest. On an arc of radius R speed is at most √(a·R); a corner, and the one where the
    lead-in meets its contour, is passed at the station's corner speed.

    lead_mm : straight lead-in before each contour, square to it; the head pierces at its start
    head    : where the head stands before, in the same coordinates; the lower left corner of all when unknown
    Source: kinematics (motion.py), ours.
    """
    a, travel, pierce = pace_value(pace.acceleration), pace_value(pace.travel), pace_value(pace.pierce)
    total, at = 0.0, head if head is not None else _lower_left([path.bounds() for path in contours])
    for path in contours:
        start = lead_start(path, lead_mm)
        total += _travel(at, start, travel, a)
        total += passes * (pierce + _followed(path, lead_mm, speed_mm_s, pace))
        total += (passes - 1) * _travel(path.end, start, travel, a)
        at = path.end
    return total


def _followed(path: Path, lead_mm: float, speed_mm_s: float, pace: Pace) -> float:
    """Time over a contour and its lead-in, from rest to rest."""
    a, corner = pace_value(pace.acceleration), pace_value(pace.corner_speed)
    lengths = [run.length for run in path.runs]
    caps = [min(speed_mm_s, _arc_cap(run, a)) for run in path.runs]
    bends = [
        min(c1, c2) if abs(angle) <= SMOOTH_CORNER_DEG else min(corner, c1, c2)
        for c1, c2, angle in zip(caps, caps[1:], path.corner_angles(), strict=False)
    ]
    if lead_mm > 0:
        lengths, bends, caps = [lead_mm, *lengths], [min(corner, caps[0]), *bends], [speed_mm_s, *caps]
    return path_time(lengths, bends, caps, a, a)


def _arc_cap(run: Segment, acceleration_mm_s2: float) -> float:
    return math.sqrt(acceleration_mm_s2 * run.radius) if isinstance(run, Arc) else math.inf


def _travel(start: Point, end: Point, travel_mm_s: float, acceleration_mm_s2: float) -> float:
    return segment_time(math.dist(start, end), 0.0, 0.0, travel_mm_s, acceleration_mm_s2, acceleration_mm_s2)


def _lower_left(boxes: Sequence[Bounds]) -> Point:
    return min((box[0] for box in boxes), default=0.0), min((box[1] for box in boxes), default=0.0)


def raster_lines(height_mm: float, spacing_mm: float) -> int:
    """Lines that cover a height, at least one.

    >>> raster_lines(10, 0.25), raster_lines(0.1, 0.25)
    (40, 1)
    """
    return max(1, math.ceil(height_mm / spacing_mm - 1e-9))


def raster_time(width_mm: float, height_mm: float, spacing_mm: float, speed_mm_s: float, pace: Pace) -> float:
    """Time to mark a rectangle line by line, to and fro.

    t = n·(w/v + 2·v/a), n lines

    The mark is even only at full speed, so the head gets up to speed before each line and brakes behind it; the step
    to the next line is over before the turn is. Source: kinematics, ours.
    """
    turn = 2 * speed_mm_s / pace_value(pace.acceleration)
    return raster_lines(height_mm, spacing_mm) * (width_mm / speed_mm_s + turn)


def mark_time(
    areas: Sequence[Bounds], spacing_mm: float, speed_mm_s: float, pace: Pace, head: Point | None = None
) -> float:
    """Time to mark areas, each a box, the nearest next: travelled to, then line by line from its lower left corner.

    head : where the head stands before; the lower left corner of all when unknown
    """
    at = head if head is not None else _lower_left(areas)
    total = 0.0
    for number in nearest_next([(box[0], box[1]) for box in areas], at):
        left, bottom, right, top = areas[number]
        total += _travel(at, (left, bottom), pace_value(pace.travel), pace_value(pace.acceleration))
        total += raster_time(right - left, top - bottom, spacing_mm, speed_mm_s, pace)
        at = (right if raster_lines(top - bottom, spacing_mm) % 2 else left, top)
    return total


def chop_time(
    length_mm: float, lanes: int, pace: Pace, feed_mm_s: float | None = None, dwell_s: float | None = None
) -> float:
    """Time of one piece cut to length from webbing: feed, chop and, for a hot blade, dwell; lanes share it.

    feed_mm_s, dwell_s : what the operation sets, in place of the station's constants
    t = (L/feed + chop + dwell)/lanes
    """
    feed = feed_mm_s if feed_mm_s is not None else pace_value(pace.feed)
    dwell = dwell_s if dwell_s is not None else pace_value(pace.dwell)
    return (length_mm / feed + pace_value(pace.chop) + dwell) / lanes


def cycle_time(count: float, pace: Pace) -> float:
    """Time of a press: count strokes. A stroke through two layers makes two pieces: half a stroke a piece."""
    return count * pace_value(pace.cycle)
