"""Notches cut into the edge: the outline is opened and the cut put in, drawn large enough to be seen.

A notch is a few millimetres deep and would vanish at most scales, so it is drawn at least NOTCH_DEPTH deep on
paper. Where the edge is curved or too near a corner, the V is laid over the edge instead.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from builder.drawing import look
from builder.drawing.nearness import distance
from builder.drawing.run import Run, points_of
from builder.drawing.svg import XY
from builder.drawing.symbol import notch_points, way_between

_ON_EDGE = 0.7
_FLARE = 0.75


@dataclass(frozen=True, slots=True)
class Cut:
    """A notch on paper, and when it is cut.

    v : its lines from lip to lip: of a V three points, of a castle four, of a slit in and out again
    """

    v: tuple[XY, ...]
    when: str

    @property
    def lips(self) -> tuple[XY, XY]:
        """Where it begins and ends on the edge."""
        return self.v[0], self.v[-1]

    @property
    def mouth(self) -> XY:
        """The middle between its lips."""
        return (self.v[0][0] + self.v[-1][0]) / 2, (self.v[0][1] + self.v[-1][1]) / 2


def cut_of(chain: Sequence[Run], when: str, edges: Sequence[Run], kind: str = "") -> Cut:
    """The cut a notch's line work stands for: its mouth lies on the nearest edge, its tip farthest from it.

    kind : slit | castle, '' for a V
    """
    points = points_of(chain)
    if kind:
        return _slit(points, when) if kind == "slit" else _castle(points, when)
    if math.dist(points[0], points[-1]) < 0.02:
        points = points[:-1]
    far = [_off(point, edges) for point in points]
    if len(points) == 3 and max(far[0], far[2]) <= _ON_EDGE:
        # Lip, tip, lip as the geometry gives them: another layer's edge may run through the tip.
        tip, lips = points[1], [points[0], points[2]]
    else:
        tip = points[far.index(max(far))]
        lips = [point for _, point in sorted(zip(far, points, strict=True))[: 2 if len(points) > 2 else 1]]
    mouth = (sum(x for x, _ in lips) / len(lips), sum(y for _, y in lips) / len(lips))
    inward = way_between(mouth, tip)
    depth = max(math.dist(mouth, tip), look.NOTCH_DEPTH)
    half = max(math.dist(lips[0], lips[-1]) / 2, depth * _FLARE)
    return Cut(notch_points(mouth, inward, half, depth), when)


def _slit(points: Sequence[XY], when: str) -> Cut:
    mouth, inward = points[0], way_between(points[0], points[-1])
    depth = max(math.dist(points[0], points[-1]), look.NOTCH_DEPTH)
    return Cut((mouth, _stepped(mouth, inward, depth), mouth), when)


def _castle(points: Sequence[XY], when: str) -> Cut:
    first, inner, _, last = points
    inward, along = way_between(first, inner), way_between(first, last)
    depth = max(math.dist(first, inner), look.NOTCH_DEPTH)
    half = max(math.dist(first, last), look.NOTCH_DEPTH) / 2
    mouth = (first[0] + last[0]) / 2, (first[1] + last[1]) / 2
    lips = _stepped(mouth, along, -half), _stepped(mouth, along, half)
    return Cut((lips[0], _stepped(lips[0], inward, depth), _stepped(lips[1], inward, depth), lips[1]), when)


def _stepped(point: XY, way: XY, step: float) -> XY:
    return point[0] + way[0] * step, point[1] + way[1] * step


def _off(point: XY, edges: Sequence[Run]) -> float:
    """Distance of a point from the nearest edge, 0 when there is none."""
    return min([distance(point, edge.pieces) for edge in edges], default=0.0)


def notched(run: Run, cuts: Sequence[Cut]) -> tuple[list[Run], list[Cut]]:
    """An edge with the notches that lie on it cut in, and the notches that were."""
    if not run.straight or not cuts:
        return [run], []
    way, length = way_between(run.start, run.end), run.length
    found: list[tuple[float, Cut]] = []
    for cut in cuts:
        shares = [(lip[0] - run.start[0]) * way[0] + (lip[1] - run.start[1]) * way[1] for lip in cut.lips]
        on_edge = all(distance(lip, run.pieces) <= _ON_EDGE for lip in cut.lips)
        if on_edge and min(shares) > 0.3 and max(shares) < length - 0.3:
            found.append((min(shares), cut))
    found.sort(key=lambda item: item[0])
    return _with_cuts(run, way, [cut for _, cut in found]), [cut for _, cut in found]


def _with_cuts(run: Run, way: XY, cuts: Sequence[Cut]) -> list[Run]:
    points = [run.start]
    for cut in cuts:
        ahead = (cut.v[-1][0] - cut.v[0][0]) * way[0] + (cut.v[-1][1] - cut.v[0][1]) * way[1] > 0
        points += cut.v if ahead else cut.v[::-1]
    points.append(run.end)
    return [Run((a, b), straight=True) for a, b in pairwise(points) if math.dist(a, b) > 1e-6]
