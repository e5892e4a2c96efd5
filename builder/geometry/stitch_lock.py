"""Lockstitches: needle and bobbin thread hook into each other in every hole, midway in the goods.

301 on a line, 304 and 308 from side to side, and the lockstitch bartack over its underlay.
Source of the interlacing: ISO 4915 type 301 as described in apparelscience.com, "Stitch classes 300-400" (read): a
loop of the needle thread passes through the goods, is interlaced with the bobbin thread, and is drawn back until the
interlacing lies midway between the surfaces. Where in the hole each leg lies is ours.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

from builder.geometry.stitch_course import Cord, Hold, Space, StitchSize, StitchThreads
from builder.geometry.vector import Point

_TURN = math.radians(27)
"""Half the angle between the planes of the two hooks, so that their legs pass each other."""
_LEG, _OPEN, _NECK, _RUN_IN = 1.65, 1.6, 0.85, 0.75


def lock_row(count: int, size: StitchSize, steps: Sequence[float] = (0.0,)) -> StitchThreads:
    """A row of lockstitches: 301 with one step, 304 and 308 with the places across the needle goes through in turn.

    steps : places across, shares of the width from −0.5 to 0.5
    """
    return lockstitches([(i * size.length, steps[i % len(steps)] * size.width) for i in range(count + 1)], size)


def bartack_lock(length: float, width: float, cover: int, underlay: int, size: StitchSize) -> StitchThreads:
    """A lockstitch bartack: straight stitches there, under a zigzag that comes back over them.

    cover, underlay : holes of the zigzag, at least 2, and of the row beneath it
    """
    there = [(length * (i + 0.5) / underlay, 0.0) for i in range(underlay)]
    # The zigzag begins beyond the last stitch of the underlay and has no hole in its row; its outermost holes are as
    # far apart as the tack is long.
    back = [(length * (1 - i / (cover - 1)), width / 2 * (-1 if i % 2 else 1)) for i in range(cover)]
    return lockstitches([*there, *back], size, lift_from=underlay)


def lockstitches(holes: Sequence[Point], size: StitchSize, lift_from: int | None = None) -> StitchThreads:
    """Needle and bobbin thread through a row of holes.

    lift_from : from this hole on the threads lie over what was sewn before, not beside it
    """
    needle, bobbin = Cord("needle"), Cord("bobbin")
    holds = []
    for index in range(len(holes)):
        lifted = lift_from is not None and index >= lift_from
        _hook(needle, index, holes, size, 1.0, lifted)
        _hook(bobbin, index, holes, size, -1.0, lifted)
        holds.append(Hold(("needle", f"loop {index}"), ("bobbin", f"loop {index}")))
    return StitchThreads((needle.laid(), bobbin.laid()), tuple(holds), tuple(holes))


def _hook(cord: Cord, index: int, holes: Sequence[Point], size: StitchSize, up: float, lifted: bool) -> None:
    """A thread comes to a hole on its own side of the goods, hooks round the other thread, and goes on.

    up : 1 for the needle thread, which lies above, −1 for the bobbin thread
    """
    d, hole = size.thread, holes[index]
    way = _way(holes, index)
    plane = _turned(way, _TURN * up)
    surface = size.face + d * (1.45 if lifted else 0.5)
    # The lock never leaves a thread without its own surface: drawn up as far as it goes, it lies on it.
    middle = min(max(size.lock, -size.face), size.face) * up
    room = surface - middle
    before, after = _unit(holes, index - 1, index), _unit(holes, index, index + 1)

    def at(along: float, height: float, direction: Point) -> Space:
        return hole[0] + direction[0] * along * d, hole[1] + direction[1] * along * d, up * height

    if index:
        cord.lead(_mid_way(holes[index - 1], hole, up * surface))
    # A thread drawn up to its own surface only dips there; others open into a loop the other goes through.
    wide = _LEG * size.hook
    open_by = min(_OPEN * size.hook, 0.5 * (room / d - 1.4))
    low = middle - open_by * d
    neck = _NECK * size.hook
    entering = [_aside(at(-neck, surface, way), before, -_RUN_IN * d)] if index else []
    leaving = [_aside(at(neck, surface, way), after, _RUN_IN * d)] if index < len(holes) - 1 else []
    loop = [
        at(-wide, middle + 0.55 * open_by * d, plane),
        at(-0.78 * wide, middle - 0.3 * open_by * d, plane),
        at(0.0, low, plane),
        at(0.78 * wide, middle - 0.3 * open_by * d, plane),
        at(wide, middle + 0.55 * open_by * d, plane),
    ]
    if room > 2.0 * d and len(holes) > 1:
        entering.append(at(-neck, surface - 0.8 * d, way))
        leaving.insert(0, at(neck, surface - 0.8 * d, way))
    cord.lead(*entering, *loop, *leaving, name=f"loop {index}")


def _aside(point: Space, way: Point, far: float) -> Space:
    return point[0] + way[0] * far, point[1] + way[1] * far, point[2]


def _mid_way(a: Point, b: Point, height: float) -> Space:
    return (a[0] + b[0]) / 2, (a[1] + b[1]) / 2, height


def _unit(holes: Sequence[Point], first: int, last: int) -> Point:
    """Direction from one hole to another; at the ends of the row the one beside goes on."""
    first, last = max(first, 0), min(last, len(holes) - 1)
    if first == last:
        first, last = (0, 1) if last == 0 else (last - 1, last)
    (ax, ay), (bx, by) = holes[first], holes[last]
    size = math.dist((ax, ay), (bx, by)) or 1.0
    return (bx - ax) / size, (by - ay) / size


def _way(holes: Sequence[Point], index: int) -> Point:
    """Direction of the row at a hole: from the one before to the one after."""
    return _unit(holes, index - 1, index + 1)


def _turned(way: Point, angle: float) -> Point:
    cos, sin = math.cos(angle), math.sin(angle)
    return way[0] * cos - way[1] * sin, way[0] * sin + way[1] * cos
