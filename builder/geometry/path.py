"""A path as it is sewn: runs in sewing order, repeats included, the needle down at the end of each run.

Also the usual paths: box, box and cross, polyline, the zigzag of a bartack. Where a path lies on a part is
no matter of this file (offset.py, placing.py), nor how long it takes.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Literal

from builder.geometry.measure import bounds_union
from builder.geometry.segment import Arc, Bounds, Line, Segment
from builder.geometry.vector import TOUCH, GeometryFault, Point, distance, said, turn_deg

StartCorner = Literal["bottom-left", "bottom-right", "top-right", "top-left"]
_CORNER_ORDER: tuple[StartCorner, ...] = ("bottom-left", "bottom-right", "top-right", "top-left")

# Two runs whose ends lie this near to each other are one line sewn twice, mm.
_SAME_RUN = 1e-6


@dataclass(frozen=True, slots=True)
class Path:
    """Runs sewn one after the other without lifting. GeometryFault when there is none, or one doesn't begin
    where the one before ends."""

    runs: tuple[Segment, ...]

    def __post_init__(self) -> None:
        if not self.runs:
            raise GeometryFault("A path needs at least one run.")
        for before, after in pairwise(self.runs):
            if distance(before.end, after.start) > TOUCH:
                raise GeometryFault(
                    f"The path breaks: one run ends at {said(before.end)}, the next starts at {said(after.start)}.",
                    before.end,
                )

    @property
    def length(self) -> float:
        """Length sewn, mm, what is gone over twice counted twice."""
        return math.fsum(self.run_lengths)

    @property
    def run_lengths(self) -> tuple[float, ...]:
        """Length of each run, mm, in sewing order."""
        return tuple(run.length for run in self.runs)

    @property
    def start(self) -> Point:
        """Where sewing starts."""
        return self.runs[0].start

    @property
    def end(self) -> Point:
        """Where sewing ends."""
        return self.runs[-1].end

    @property
    def closed(self) -> bool:
        """Does it end where it starts?"""
        return distance(self.start, self.end) <= TOUCH

    def bounds(self) -> Bounds:
        """Box around it: left, bottom, right, top in mm."""
        return bounds_union(run.bounds() for run in self.runs)

    def reversed(self) -> Path:
        """The same path sewn from its end."""
        return Path(tuple(run.reversed() for run in reversed(self.runs)))

    def corner_angles(self) -> tuple[float, ...]:
        """Turn between each run and the next in degrees, left positive, straight back 180."""
        return tuple(turn_deg(a.tangent_at(1), b.tangent_at(0)) for a, b in pairwise(self.runs))

    def distinct(self) -> tuple[tuple[Segment, tuple[int, ...]], ...]:
        """Each run once, as first sewn, with the numbers (from 1) of all the times it is sewn, either way."""
        found: list[tuple[Segment, list[int]]] = []
        for number, run in enumerate(self.runs, start=1):
            orders = next((orders for other, orders in found if _same_run(run, other)), None)
            if orders is None:
                found.append((run, [number]))
            else:
                orders.append(number)
        return tuple((run, tuple(orders)) for run, orders in found)

    @property
    def drawn_length(self) -> float:
        """Length of what is seen, mm: each distinct run counted once."""
        return math.fsum(run.length for run, _ in self.distinct())

    def to_polyline(self, tolerance: float) -> list[Point]:
        """The path as points; chords leave arcs by at most `tolerance` mm."""
        return [self.start, *(point for run in self.runs for point in run.to_polyline(tolerance)[1:])]

    def shortened(self, start_gap: float, end_gap: float) -> Path:
        """The path without its first `start_gap` and its last `end_gap` mm.

        GeometryFault for a gap below 0, or when nothing is left.
        """
        if not (start_gap >= 0 and end_gap >= 0):
            raise GeometryFault(f"A gap can't be below 0 mm: {start_gap:g} and {end_gap:g}.")
        if start_gap + end_gap >= self.length - TOUCH:
            raise GeometryFault(
                f"Gaps of {start_gap:.10g} and {end_gap:.10g} mm leave nothing of a path of {self.length:.6g} mm."
            )
        return Path(_cut_start(Path(_cut_start(self, start_gap)).reversed(), end_gap)).reversed()


def _cut_start(path: Path, gap: float) -> tuple[Segment, ...]:
    """The runs left when the first `gap` mm of a longer path are cut away."""
    if gap == 0:
        return path.runs
    for index, run in enumerate(path.runs):
        # A scrap no longer than a point would be a run without a direction.
        if run.length > gap + TOUCH:
            return run.part(max(0.0, gap) / run.length, 1), *path.runs[index + 1 :]
        gap -= run.length
    raise GeometryFault("The gap is longer than the path.")


def _same_run(a: Segment, b: Segment) -> bool:
    """Do two runs lie on each other end to end, whichever way they are sewn?"""
    if isinstance(a, Arc):
        return isinstance(b, Arc) and (_same_arc(a, b) or _same_arc(a, b.reversed()))
    if not isinstance(b, Line):
        return False
    return (_near(a.start, b.start) and _near(a.end, b.end)) or (_near(a.start, b.end) and _near(a.end, b.start))


def _same_arc(a: Arc, b: Arc) -> bool:
    ends_meet = _near(a.start, b.start) and _near(a.end, b.end)
    return a.clockwise == b.clockwise and ends_meet and _near(a.centre, b.centre)


def _near(a: Point, b: Point) -> bool:
    return abs(a[0] - b[0]) <= _SAME_RUN and abs(a[1] - b[1]) <= _SAME_RUN


def polyline(points: Sequence[Point]) -> Path:
    """Straight runs through points in order. GeometryFault for fewer than 2, or a point twice running."""
    if len(points) < 2:
        raise GeometryFault(f"A path needs at least 2 points, not {len(points)}.")
    return Path(tuple(Line(a, b) for a, b in pairwise(points)))


def box(width: float, height: float, start_corner: StartCorner = "bottom-left") -> Path:
    """A rectangle sewn once round, counter-clockwise, its lower left corner at the origin."""
    corners = _box_corners(width, height, start_corner)
    return polyline([*corners, corners[0]])


def box_and_cross(width: float, height: float, start_corner: StartCorner = "bottom-left") -> Path:
    """A rectangle and both its diagonals, sewn without lifting; its lower left corner at the origin.

    Four corners where three lines meet can't be sewn in one go with each line once: one is gone over twice.
    Round the box, along one diagonal, back over a short side, along the other diagonal. Sewn length =
    2(w + h) + 2√(w² + h²) + min(w, h).
    """
    corners = _box_corners(width, height, start_corner)
    start, second, opposite, fourth = corners
    # From the far end of the first diagonal both other corners are next door; take the nearer.
    over = second if distance(opposite, second) <= distance(opposite, fourth) else fourth
    last = fourth if over is second else second
    return polyline([*corners, start, opposite, over, last])


def _box_corners(width: float, height: float, start_corner: StartCorner) -> tuple[Point, Point, Point, Point]:
    """The corners counter-clockwise from the start corner."""
    if not (width > 0 and height > 0):
        raise GeometryFault(f"A box of {width:.10g} × {height:.10g} mm can't be sewn.")
    if start_corner not in _CORNER_ORDER:
        raise GeometryFault(f"A box has no corner {start_corner}; it has {', '.join(_CORNER_ORDER)}.")
    places: list[Point] = [(0.0, 0.0), (width, 0.0), (width, height), (0.0, height)]
    first = _CORNER_ORDER.index(start_corner)
    a, b, c, d = places[first:] + places[:first]
    return a, b, c, d


def bartack_zigzag(length: float, width: float, stitches: int) -> list[Point]:
    """Needle points of the cover of a bartack, for drawing: from (0, −width/2) to x = length, side to side.

    stitches + 1 points, evenly spread along the length. The straight stitches beneath aren't shown.
    """
    if not (length > 0 and width > 0 and stitches >= 1):
        raise GeometryFault(f"A bartack of {length:g} × {width:g} mm with {stitches} stitches can't be drawn.")
    half = width / 2
    return [(length * index / stitches, half if index % 2 else -half) for index in range(stitches + 1)]


def stitches_per_run(path: Path, stitch_length: float) -> tuple[int, ...]:
    """Whole stitches in each run: n = ⌈run ÷ stitch length⌉, because the needle is down at every run's end.

    A run that is a multiple of the stitch length but for rounding (1e-9 of it) gets no extra stitch.
    stitch_length : mm, > 0
    """
    if not stitch_length > 0:
        raise GeometryFault(f"A stitch length must be above 0 mm, not {stitch_length:g}.")
    return tuple(_whole_stitches(run / stitch_length) for run in path.run_lengths)


def _whole_stitches(exact: float) -> int:
    nearest = round(exact)
    return max(1, nearest if abs(exact - nearest) <= 1e-9 * max(1.0, exact) else math.ceil(exact))


def needle_points(path: Path, stitch_length: float) -> list[Point]:
    """Every point the needle goes down, for drawing: the start, then each run in equal whole stitches."""
    points = [path.start]
    for run, count in zip(path.runs, stitches_per_run(path, stitch_length), strict=True):
        points += [run.point_at(index / count) for index in range(1, count + 1)]
    return points
