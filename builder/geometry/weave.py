"""Threads looked at from one side: their pieces in the order they lie on each other, the farthest first.

Where two threads cross in the picture the nearer one lies over the other. Each thread is cut midway between a crossing
it passes over and one it passes under, so that what passes under can be drawn first and what passes over last.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from itertools import pairwise

from builder.geometry.stitch_course import Space
from builder.geometry.vector import Point

Sight = Callable[[Space], Space]
"""A point in space to (right, up, nearness) in the picture."""

_ALONG = 1.5
"""Parts of one thread nearer along it than so many diameters don't cross: it only bends."""


@dataclass(frozen=True, slots=True)
class Piece:
    """A piece of a thread in the picture. `thread`: its number; `over`: it passes over what it crosses."""

    thread: int
    points: tuple[Point, ...]
    over: bool


@dataclass(slots=True)
class _Run:
    """A stretch of a thread that is seen: points, how far along each is, and its crossings (along, over)."""

    thread: int
    points: list[Space]
    along: list[float]
    crossings: list[tuple[float, bool]]


def woven(
    courses: Sequence[Sequence[Space]], diameter: float, sight: Sight, seen: Callable[[Space], bool]
) -> list[Piece]:
    """Pieces of the courses as seen, farthest first.

    diameter : of the threads, mm; detail under a twentieth of it is left out
    seen     : is a point of space in sight? Points in sight are drawn to the last one
    """
    runs = [run for number, course in enumerate(courses) for run in _seen_runs(number, course, diameter, sight, seen)]
    for index, run in enumerate(runs):
        for other in runs[index:]:
            _cross(run, other, diameter)
    pieces = [(piece, nearness) for run in runs for piece, nearness in _pieces(run)]
    pieces.sort(key=lambda one: (one[0].over, one[1]))
    return [piece for piece, _ in pieces]


def _seen_runs(
    number: int, course: Sequence[Space], diameter: float, sight: Sight, seen: Callable[[Space], bool]
) -> list[_Run]:
    found: list[list[Space]] = [[]]
    for point in course:
        if seen(point):
            found[-1].append(sight(point))
        elif found[-1]:
            found.append([])
    runs = []
    for points in found:
        if len(points) > 1:
            kept = simpler(points, diameter / 20)
            along = [0.0]
            for a, b in pairwise(kept):
                along.append(along[-1] + math.dist(a, b))
            runs.append(_Run(number, kept, along, []))
    return runs


def simpler(points: Sequence[Space], tolerance: float) -> list[Space]:
    """The points that keep the curve within the tolerance, mm; ends included."""
    if len(points) < 3:
        return list(points)
    first, last = points[0], points[-1]
    away = [_off(point, first, last) for point in points[1:-1]]
    farthest = max(range(len(away)), key=away.__getitem__)
    if away[farthest] <= tolerance:
        return [first, last]
    middle = farthest + 1
    return simpler(points[: middle + 1], tolerance)[:-1] + simpler(points[middle:], tolerance)


def _off(point: Space, start: Space, end: Space) -> float:
    """Distance of a point from the straight line between two others, as a piece."""
    way = [b - a for a, b in zip(start, end, strict=True)]
    size = sum(part * part for part in way)
    from_start = [b - a for a, b in zip(start, point, strict=True)]
    share = 0.0 if size == 0 else sum(a * b for a, b in zip(way, from_start, strict=True)) / size
    share = min(max(share, 0.0), 1.0)
    return math.dist(point, [a + share * part for a, part in zip(start, way, strict=True)])


def _cross(run: _Run, other: _Run, diameter: float) -> None:
    """Note every crossing of two runs, or of one with itself, with both."""
    boxes = [_box(a, b) for a, b in pairwise(other.points)]
    for i, (a, b) in enumerate(pairwise(run.points)):
        left, low, right, high = _box(a, b)
        for j in range(i + 2 if run is other else 0, len(boxes)):
            box = boxes[j]
            if box[0] > right or box[2] < left or box[1] > high or box[3] < low:
                continue
            shares = _meet(a, b, other.points[j], other.points[j + 1])
            if shares is None:
                continue
            here = run.along[i] + shares[0] * (run.along[i + 1] - run.along[i])
            there = other.along[j] + shares[1] * (other.along[j + 1] - other.along[j])
            if run is other and abs(here - there) < _ALONG * diameter:
                continue
            mine = a[2] + shares[0] * (b[2] - a[2])
            its = other.points[j][2] + shares[1] * (other.points[j + 1][2] - other.points[j][2])
            run.crossings.append((here, mine > its))
            other.crossings.append((there, mine <= its))


def _box(a: Space, b: Space) -> tuple[float, float, float, float]:
    return min(a[0], b[0]), min(a[1], b[1]), max(a[0], b[0]), max(a[1], b[1])


def _meet(a: Space, b: Space, c: Space, d: Space) -> tuple[float, float] | None:
    """Shares at which two pieces cross in the picture, None when they don't."""
    ux, uy, vx, vy = b[0] - a[0], b[1] - a[1], d[0] - c[0], d[1] - c[1]
    turn = ux * vy - uy * vx
    if abs(turn) < 1e-12:
        return None
    wx, wy = c[0] - a[0], c[1] - a[1]
    here, there = (wx * vy - wy * vx) / turn, (wx * uy - wy * ux) / turn
    return (here, there) if 0 <= here < 1 and 0 <= there < 1 else None


def _pieces(run: _Run) -> list[tuple[Piece, float]]:
    """A run cut where it changes from over to under, each piece with its mean nearness."""
    crossings = sorted(run.crossings)
    cuts = [(a + b) / 2 for (a, over), (b, under) in pairwise(crossings) if over != under]
    levels = [crossings[0][1]] if crossings else [False]
    for (_, over), (_, under) in pairwise(crossings):
        if over != under:
            levels.append(under)
    ends = [0.0, *cuts, run.along[-1]]
    found = []
    for (start, end), over in zip(pairwise(ends), levels, strict=True):
        points = _between(run, start, end)
        nearness = sum(point[2] for point in points) / len(points)
        found.append((Piece(run.thread, tuple((x, y) for x, y, _ in points), over), nearness))
    return found


def _between(run: _Run, start: float, end: float) -> list[Space]:
    inner = [p for p, along in zip(run.points, run.along, strict=True) if start + 1e-9 < along < end - 1e-9]
    return [_at(run, start), *inner, _at(run, end)]


def _at(run: _Run, along: float) -> Space:
    for (a, b), (low, high) in zip(pairwise(run.points), pairwise(run.along), strict=True):
        if along <= high + 1e-12:
            share = 0.0 if high == low else (along - low) / (high - low)
            return (a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1]), a[2] + share * (b[2] - a[2]))
    return run.points[-1]
