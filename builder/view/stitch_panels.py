"""A row of stitches seen from its face, from its back and cut: goods, needle holes and threads as strokes.

Where the panels stand beside each other is for stitch_sheet.py, what is written to them for stitch.py.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from typing import Literal

from builder.geometry import Bounds, Line, Piece, Point, Space, StitchSize, StitchThreads, woven
from builder.model import say
from builder.view.figure import Stroke

Look = Literal["face", "back", "cut along", "cut across"]
_BESIDE = 2.6
"""Goods drawn beside the outermost needle row, in thread diameters."""
_BACK = 0.5
"""Two pieces of a thread that leave their common end within 60° of each other are one thread that turns back."""


@dataclass(frozen=True, slots=True)
class Panel:
    """One look at the stitches, in its own mm.

    word   : what stands beside it
    goods  : areas of the goods, lowest first, each with its fill: face, back, cut
    holes  : centres of needle holes
    pieces : of the threads, farthest first
    bounds : of everything in it
    """

    look: Look
    word: str
    size: StitchSize
    goods: tuple[tuple[Bounds, str], ...]
    holes: tuple[Point, ...]
    pieces: tuple[Piece, ...]
    bounds: Bounds


def panel(look: Look, row: StitchThreads, size: StitchSize, window: tuple[float, float], word: str = "") -> Panel:
    """One look at a row of stitches. window : from where to where along the seam, mm; word : '' for the look's own"""
    first, last = window
    sight = _SIGHTS[look]
    courses = [_clipped(thread.course, window) for thread in row.threads]
    pieces = [
        replace(piece, thread=number_of[piece.thread])
        for courses_flat, number_of in [_flat(courses)]
        for piece in woven(courses_flat, size.thread, sight, _seen(look, row, size))
    ]
    goods = tuple(_goods(look, row, size, window))
    holes = [hole for hole in row.holes if first <= hole[0] <= last] if look in ("face", "back") else []
    drawn = [sight((x, y, 0.0)) for x, y in holes]
    return Panel(
        look,
        say(word or look.split(" ")[0]),
        size,
        goods,
        tuple((x, y) for x, y, _ in drawn),
        tuple(pieces),
        _bounds(goods, pieces, size),
    )


def _flat(courses: Sequence[Sequence[tuple[Space, ...]]]) -> tuple[list[tuple[Space, ...]], list[int]]:
    """All stretches in one list, with the thread each is of."""
    flat = [(stretch, number) for number, stretches in enumerate(courses) for stretch in stretches]
    return [stretch for stretch, _ in flat], [number for _, number in flat]


def _clipped(course: Sequence[Space], window: tuple[float, float]) -> list[tuple[Space, ...]]:
    """The stretches of a course between two places along the seam, cut exactly there."""
    first, last = window
    found: list[list[Space]] = [[]]
    for a, b in pairwise(course):
        shares = sorted({0.0, 1.0, *(s for s in (_share(a, b, first), _share(a, b, last)) if s is not None)})
        for low, high in pairwise(shares):
            start, end = _on(a, b, low), _on(a, b, high)
            if first <= (start[0] + end[0]) / 2 <= last:
                if not found[-1]:
                    found[-1].append(start)
                found[-1].append(end)
            elif found[-1]:
                found.append([])
    return [tuple(one) for one in found if len(one) > 1]


def _share(a: Space, b: Space, x: float) -> float | None:
    return (x - a[0]) / (b[0] - a[0]) if min(a[0], b[0]) < x < max(a[0], b[0]) else None


def _on(a: Space, b: Space, share: float) -> Space:
    return (a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share, a[2] + (b[2] - a[2]) * share)


_SIGHTS: dict[Look, Callable[[Space], Space]] = {
    "face": lambda p: (p[0], p[1], p[2]),
    # Turned over about the seam: what was on the left of it comes to the right.
    "back": lambda p: (p[0], -p[1], -p[2]),
    "cut along": lambda p: (p[0], p[2], -p[1]),
    # Looked at along the seam, the way it was sewn.
    "cut across": lambda p: (-p[1], p[2], -p[0]),
}


def _seen(look: Look, row: StitchThreads, size: StitchSize) -> Callable[[Space], bool]:
    """What is in sight: on a side all that the goods don't hide, in a cut everything."""
    up = {"face": 1.0, "back": -1.0}.get(look)
    if up is None:
        return lambda point: True
    into = size.face - 0.25 * size.thread
    return lambda point: up * point[2] > into or point[1] < row.edge


def _goods(
    look: Look, row: StitchThreads, size: StitchSize, window: tuple[float, float]
) -> Iterator[tuple[Bounds, str]]:
    low, high = _across(row, size)
    first, last = window
    if look in ("face", "back"):
        yield ((first, low, last, high) if look == "face" else (first, -high, last, -low)), look
        return
    left, right = (first, last) if look == "cut along" else (-high, -low)
    for bottom, top in ((-size.face, 0.0), (0.0, size.face)):
        yield (left, bottom, right, top), "cut"


def _across(row: StitchThreads, size: StitchSize) -> tuple[float, float]:
    """From where to where the goods are drawn across the seam."""
    low, high = min(y for _, y in row.holes), max(y for _, y in row.holes)
    beside = _BESIDE * size.thread
    return (row.edge if row.edge > -math.inf else low - beside), high + beside


def _bounds(goods: Sequence[tuple[Bounds, str]], pieces: Sequence[Piece], size: StitchSize) -> Bounds:
    half = size.thread / 2
    boxes = [box for box, _ in goods]
    boxes += [(x - half, y - half, x + half, y + half) for piece in pieces for x, y in piece.points]
    left, right = min(b[0] for b, _ in goods), max(b[2] for b, _ in goods)
    xs = (min(b[0] for b in boxes), max(b[2] for b in boxes))
    # Threads end with the goods they run along; only beyond an edge they need room of their own.
    wide = (left, right) if abs(xs[0] - left) <= half * 1.01 and abs(xs[1] - right) <= half * 1.01 else xs
    return wide[0], min(b[1] for b in boxes), wide[1], max(b[3] for b in boxes)


def strokes(one: Panel, roles: Sequence[str], at: Point) -> Iterator[Stroke]:
    """The panel's strokes, moved by `at`. roles : of the threads, by number"""
    dx, dy = at
    for (left, bottom, right, top), fill in one.goods:
        corners = ((left, bottom), (right, bottom), (right, top), (left, top))
        ring = [(x + dx, y + dy) for x, y in corners]
        sides = tuple(Line(a, b) for a, b in zip(ring, (*ring[1:], ring[0]), strict=True))
        yield Stroke("goods", "part", sides, closed=True, fill=fill)
    for x, y in one.holes:
        yield Stroke("puncture", "part", _across_hole((x + dx, y + dy), 0.75 * one.size.thread), width=one.size.thread)
    for piece in one.pieces:
        for points in (*_turns(piece, one), piece.points):
            path = _path([(x + dx, y + dy) for x, y in points], one.size.thread)
            yield Stroke("thread", "part", path, fill=roles[piece.thread], width=one.size.thread)


def _turns(piece: Piece, one: Panel) -> Iterator[tuple[Point, ...]]:
    """Ends of a piece where its thread turns back on itself, towards the eye or away: round, not cut off.

    Each is a point, to be drawn as a disc under the piece: of the disc only its round end is seen.
    """
    others = [other for other in one.pieces if other is not piece and other.thread == piece.thread]
    ends = [end for other in others for end in _ends(other, one.size.thread)]
    for end, way in _ends(piece, one.size.thread):
        met = [way[0] * x + way[1] * y for far, (x, y) in ends if math.dist(far, end) < 1e-9]
        # Where any of it goes straight on, the thread doesn't end in the picture.
        if any(along > _BACK for along in met) and all(along > -_BACK for along in met):
            yield (end, end)


def _ends(piece: Piece, thread: float) -> Iterator[tuple[Point, Point]]:
    """Both ends of a piece, each with the direction from it into the piece."""
    for points in (piece.points, piece.points[::-1]):
        start = points[0]
        inner = next((point for point in points if math.dist(point, start) > thread / 2), points[-1])
        far = math.dist(start, inner)
        yield start, ((inner[0] - start[0]) / far, (inner[1] - start[1]) / far) if far else (0.0, 0.0)


def _path(points: Sequence[Point], thread: float) -> tuple[Line, ...]:
    """Lines through the points; a thread that runs towards the eye keeps a dot's length."""
    kept = [points[0]]
    for point in points[1:]:
        if math.dist(point, kept[-1]) > thread / 100:
            kept.append(point)
    if len(kept) == 1:
        kept.append((kept[0][0] + thread / 50, kept[0][1]))
    return tuple(Line(a, b) for a, b in pairwise(kept))


def _across_hole(centre: Point, half: float) -> tuple[Line, ...]:
    """A needle hole, drawn open along the seam by the threads in it: its middle line."""
    return (Line((centre[0] - half, centre[1]), (centre[0] + half, centre[1])),)
