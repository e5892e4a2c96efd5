"""Segments on paper: each a run with its path data and its polyline, joined to chains and smooth stretches."""

from __future__ import annotations

import bisect
import math
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from functools import cached_property, partial
from itertools import accumulate, pairwise

from builder.drawing.frame import Frame
from builder.drawing.look import CHORD
from builder.drawing.nearness import Pieces, pieces_of
from builder.drawing.svg import XY, num, pair
from builder.geometry import Arc, Segment

_JOINED = 0.02
# Runs meeting under less than this angle are one smooth line, sewn and dashed without a corner.
_SMOOTH_COS = math.cos(math.radians(20))


@dataclass
class Run:
    """One segment, or several as one, on paper. Not to be changed; it isn't frozen because that makes it slow to make.

    points : its polyline, ends included
    curve  : writes the SVG path data that goes on from its start, where that is not the polyline
    """

    points: tuple[XY, ...]
    curve: Callable[[], str] | None = None
    straight: bool = False

    @property
    def start(self) -> XY:
        """Where it begins."""
        return self.points[0]

    @property
    def end(self) -> XY:
        """Where it ends."""
        return self.points[-1]

    @property
    def data(self) -> str:
        """SVG path data that goes on from its start."""
        if self.curve is not None:
            return self.curve()
        return "".join([f"L{pair(point)}" for point in self.points[1:]])

    @cached_property
    def walk(self) -> Walk:
        """The run to be walked along."""
        return Walk(self.points)

    @cached_property
    def pieces(self) -> Pieces:
        """The run to be measured from."""
        return pieces_of(self.points)

    @property
    def length(self) -> float:
        """Its length, mm printed."""
        return self.walk.length

    def at(self, share: float) -> tuple[XY, XY]:
        """Point and direction at a share of the length."""
        return self.walk.at(share * self.walk.length)


class Walk:
    """A polyline measured once, to be walked along many times."""

    def __init__(self, points: Sequence[XY]) -> None:
        steps = [math.dist(a, b) for a, b in pairwise(points)]
        if min(steps, default=1.0) <= 1e-9:
            points = [points[0], *(b for b, step in zip(points[1:], steps, strict=True) if step > 1e-9)]
            steps = [math.dist(a, b) for a, b in pairwise(points)]
        self.points = points
        self.reached = [0.0, *accumulate(steps)]
        self.length = self.reached[-1]

    def at(self, gone: float) -> tuple[XY, XY]:
        """The point after `gone` mm and the direction there; beyond the ends the end piece goes on."""
        if len(self.points) < 2:
            return self.points[0], (1.0, 0.0)
        index = min(max(bisect.bisect_right(self.reached, gone) - 1, 0), len(self.points) - 2)
        (ax, ay), (bx, by) = self.points[index], self.points[index + 1]
        size = self.reached[index + 1] - self.reached[index]
        way = ((bx - ax) / size, (by - ay) / size)
        rest = gone - self.reached[index]
        return (ax + way[0] * rest, ay + way[1] * rest), way


def run_of(segment: Segment, frame: Frame) -> Run:
    """A segment on paper."""
    if isinstance(segment, Arc):
        points = tuple(frame.at(point) for point in segment.to_polyline(CHORD / frame.scale))
        return Run(points, partial(_arc_data, segment, frame))
    return Run((frame.at(segment.start), frame.at(segment.end)), straight=True)


def _arc_data(arc: Arc, frame: Frame) -> str:
    """Path data of an arc: two halves, because one SVG arc can't be a whole circle."""
    radius = num(arc.radius * frame.scale)
    # Turning y over turns the picture, not what is clockwise to the eye; SVG's sweep 1 is clockwise.
    sweep = 1 if arc.clockwise else 0
    return "".join(f"A{radius} {radius} 0 0 {sweep} {pair(frame.at(arc.point_at(share)))}" for share in (0.5, 1.0))


def chains(runs: Iterable[Run]) -> list[list[Run]]:
    """Runs in the order given, split where one doesn't begin at the end of the one before."""
    found: list[list[Run]] = []
    for run in runs:
        if found and math.dist(found[-1][-1].end, run.start) <= _JOINED:
            found[-1].append(run)
        else:
            found.append([run])
    return found


def is_ring(chain: Sequence[Run]) -> bool:
    """Does a chain end where it began?"""
    return math.dist(chain[0].start, chain[-1].end) <= _JOINED


def chain_d(chain: Sequence[Run], closed: bool = False) -> str:
    """Path data of one chain."""
    return f"M{pair(chain[0].start)}" + "".join(run.data for run in chain) + ("Z" if closed else "")


def path_d(runs: Sequence[Run]) -> str:
    """Path data of all runs, rings closed so that their corners join."""
    return "".join(chain_d(chain, is_ring(chain)) for chain in chains(runs))


def points_of(chain: Sequence[Run]) -> list[XY]:
    """The polyline of a chain."""
    return [chain[0].start, *(point for run in chain for point in run.points[1:])]


def smooth_stretches(runs: Sequence[Run]) -> list[Run]:
    """Chains cut at their corners only: an edge with rounded corners is one stretch, a box four."""
    return [_joined(group) for chain in chains(runs) for group in _smooth_groups(chain)]


def _smooth_groups(chain: Sequence[Run]) -> list[list[Run]]:
    groups = [[chain[0]]]
    for before, after in pairwise(chain):
        if _smooth(before, after):
            groups[-1].append(after)
        else:
            groups.append([after])
    if len(groups) > 1 and is_ring(chain) and _smooth(chain[-1], chain[0]):
        groups[0] = groups.pop() + groups[0]
    return groups


def _smooth(before: Run, after: Run) -> bool:
    (ax, ay), (bx, by) = before.points[-2:]
    (cx, cy), (dx, dy) = after.points[:2]
    size = math.dist((ax, ay), (bx, by)) * math.dist((cx, cy), (dx, dy))
    if size < 1e-12:
        return True
    # Half a chord's turn is lost at either end of a curve, hence a generous angle.
    return ((bx - ax) * (dx - cx) + (by - ay) * (dy - cy)) / size >= _SMOOTH_COS


def _joined(group: Sequence[Run]) -> Run:
    if len(group) == 1:
        return group[0]
    return Run(tuple(points_of(group)), lambda: "".join([run.data for run in group]))


def offset_points(points: Sequence[XY], aside: float, closed: bool) -> list[XY]:
    """A polyline `aside` mm to the right on paper of its direction (negative: left), corners mitred.

    A miter longer than three times the offset is cut. Meant for a narrow band along an edge.
    """
    clean = list(Walk(points).points)
    if closed and len(clean) > 2 and math.dist(clean[0], clean[-1]) <= _JOINED:
        clean.pop()
    count = len(clean)
    ways = [_way(clean[i], clean[(i + 1) % count]) for i in range(count if closed else count - 1)]
    found: list[XY] = []
    for index, (x, y) in enumerate(clean):
        before = ways[index - 1] if closed or index else ways[0]
        after = ways[index] if closed or index < count - 1 else ways[-1]
        normal = (-before[1] - after[1], before[0] + after[0])
        size = normal[0] ** 2 + normal[1] ** 2
        factor = min(2 / size, 1.5) * aside if size > 1e-9 else 0.0
        found.append((x + normal[0] * factor, y + normal[1] * factor))
    return found


def _way(a: XY, b: XY) -> XY:
    size = math.dist(a, b) or 1.0
    return (b[0] - a[0]) / size, (b[1] - a[1]) / size
