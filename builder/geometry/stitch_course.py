"""The course of a sewing thread as a curve in space, with the stretches of it that hold, or are held.

x runs along the seam as it is sewn, y to its left, z up through the goods, whose middle is z = 0; all in mm.
Knows no stitch type: those are in stitch_lock.py, stitch_chain.py, stitch_overedge.py and stitch_cover.py.
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Sequence
from dataclasses import dataclass, field

Space = tuple[float, float, float]

_STEPS = 6
"""Points of the curve for each stretch between two points it is led through."""


@dataclass(frozen=True, slots=True)
class StitchSize:
    """What a stitch is drawn by, mm.

    length    : stitch length, > 0
    thread    : diameter of every thread, > 0
    thickness : of the goods, at least 4 threads, so that a lock finds room in them
    width     : bight of a zigzag, or of an overedge from its edge to the innermost needle
    gauge     : between two rows of needles
    lock      : of a lockstitch: how far above the middle of the goods the threads lock; 0 is right
    hook      : how far the hooks of a lock stand open, from 1, to be looked into, to 0.6, where stitches are dense
    """

    length: float
    thread: float
    thickness: float
    width: float = 0.0
    gauge: float = 0.0
    lock: float = 0.0
    hook: float = 1.0

    @property
    def face(self) -> float:
        """Height of the face; the back lies as far below 0."""
        return self.thickness / 2


@dataclass(frozen=True, slots=True)
class Thread:
    """One thread.

    role   : needle, needle 2 …, bobbin, looper, looper 2, looper 3, cover
    course : points of its curve, in the order it is sewn
    spans  : name → first and last index in `course` of a stretch that holds or is held (`loop 2`, `bight 2 out`)
    """

    role: str
    course: tuple[Space, ...]
    spans: dict[str, tuple[int, int]]

    def span(self, name: str) -> tuple[Space, ...]:
        """The points of a named stretch. KeyError when it has none of this name."""
        first, last = self.spans[name]
        return self.course[first : last + 1]


@dataclass(frozen=True, slots=True)
class Hold:
    """A fact of a stitch: a loop of one thread, closed by the straight line between its ends, has a strand through it.

    loop, strand : (role of the thread, name of the stretch); the strand passes the loop once
    """

    loop: tuple[str, str]
    strand: tuple[str, str]


@dataclass(frozen=True, slots=True)
class StitchThreads:
    """All threads of a row of stitches.

    goods : lowest y of the goods, −inf where they go on: an overedge has their edge at 0
    """

    threads: tuple[Thread, ...]
    holds: tuple[Hold, ...]
    holes: tuple[tuple[float, float], ...]
    edge: float = -math.inf

    def thread(self, role: str) -> Thread:
        """The thread of a role. KeyError when the stitch has none."""
        for one in self.threads:
            if one.role == role:
                return one
        raise KeyError(role)


@dataclass(slots=True)
class Cord:
    """A thread being laid: the points it is led through, one after the other."""

    role: str
    led: list[Space] = field(default_factory=list)
    spans: dict[str, tuple[int, int]] = field(default_factory=dict)

    def lead(self, *points: Space, name: str = "") -> None:
        """Lead it through more points; a name makes a span of them."""
        if name:
            self.spans[name] = len(self.led), len(self.led) + len(points) - 1
        self.led += points

    def laid(self) -> Thread:
        """The thread as a smooth curve through all points."""
        spans = {name: (first * _STEPS, last * _STEPS) for name, (first, last) in self.spans.items()}
        return Thread(self.role, tuple(smooth(self.led, _STEPS)), spans)


def straight(start: Space, end: Space, longest: float) -> list[Space]:
    """Points of a straight way, ends included, none farther apart than `longest`: a curve led through them keeps it."""
    pieces = max(1, math.ceil(math.dist(start, end) / longest))
    return [_between(start, end, 0.0, float(pieces), float(piece)) for piece in range(pieces + 1)]


def smooth(points: Sequence[Space], steps: int) -> list[Space]:
    """A centripetal Catmull-Rom curve through the points, `steps` pieces between two of them.

    The curve goes through every point and, being centripetal, makes no loops of its own between them. Consecutive
    points must differ. Source: Barry and Goldman, recursive evaluation of Catmull-Rom splines (memory).
    """
    ends = [_beyond(points[1], points[0]), *points, _beyond(points[-2], points[-1])]
    curve = [points[0]]
    for index in range(len(points) - 1):
        curve += _piece(ends[index : index + 4], steps)
    return curve


def _beyond(inner: Space, outer: Space) -> Space:
    return (2 * outer[0] - inner[0], 2 * outer[1] - inner[1], 2 * outer[2] - inner[2])


def _piece(four: Sequence[Space], steps: int) -> list[Space]:
    """The curve between the two middle ones of four points, its first point left out."""
    knots = [0.0]
    for a, b in itertools.pairwise(four):
        knots.append(knots[-1] + math.sqrt(math.dist(a, b)))
    found = []
    for step in range(1, steps + 1):
        t = knots[1] + (knots[2] - knots[1]) * step / steps
        row = list(four)
        for level in range(1, 4):
            # Barycentric steps: the first on neighbouring knots, the second on spans of two, the last on the middle.
            low = (0, 0, 1)[level - 1]
            high = (1, 2, 2)[level - 1]
            row = [_between(row[i], row[i + 1], knots[i + low], knots[i + high], t) for i in range(len(row) - 1)]
        found.append(row[0])
    return found


def _between(a: Space, b: Space, first: float, last: float, t: float) -> Space:
    share = (t - first) / (last - first)
    return (a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share, a[2] + (b[2] - a[2]) * share)
