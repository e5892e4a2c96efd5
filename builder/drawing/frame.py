"""From the part's millimetres to the paper's: one scale for both directions, y turned, long parts broken.

A break takes a stretch with nothing on it out of a long thin part, so that its width can be seen. Only
straight lines along the part cross it.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from builder.drawing.box import Box
from builder.drawing.svg import XY
from builder.geometry import Line, Point, Segment
from builder.view import FigureView

Bounds = tuple[float, float, float, float]

# A part is broken when its short side would print under _THIN mm; the break then aims for _WANTED.
_THIN = 8.0
_WANTED = (15.0, 13.0, 11.0, 9.0, 7.0)
_MOST_BREAKS = 2
# A break more must be worth this many mm of printed width.
_PER_BREAK = 4.0
_MARGIN = 5.0
_KEPT = 8.0


@dataclass(frozen=True, slots=True)
class Break:
    """A stretch drawn shorter than it is.

    axis      : 0 along x, 1 along y
    low, high : the stretch in the part's mm
    kept      : the length it is drawn with, part's mm
    """

    axis: int
    low: float
    high: float
    kept: float

    def squeeze(self, value: float) -> float:
        """How far a coordinate moves back."""
        if value >= self.high:
            return self.high - self.low - self.kept
        if value <= self.low:
            return 0.0
        return (value - self.low) * (1 - self.kept / (self.high - self.low))


@dataclass(frozen=True, slots=True)
class Frame:
    """Where the part lies on paper.

    bounds    : of the part, its mm
    scale     : mm printed for a mm of the part
    left, top : where the upper left of the bounds is printed
    """

    bounds: Bounds
    scale: float
    left: float
    top: float
    breaks: tuple[Break, ...] = ()

    def at(self, point: Point) -> XY:
        """A point of the part on paper."""
        if not self.breaks:
            left, _, _, top = self.bounds
            return self.left + (point[0] - left) * self.scale, self.top + (top - point[1]) * self.scale
        x = self._along(0, point[0]) - self._along(0, self.bounds[0])
        y = self._along(1, self.bounds[3]) - self._along(1, point[1])
        return self.left + x * self.scale, self.top + y * self.scale

    def _along(self, axis: int, value: float) -> float:
        return value - sum(gap.squeeze(value) for gap in self.breaks if gap.axis == axis)

    @property
    def box(self) -> Box:
        """The part's box on paper."""
        left, top = self.at((self.bounds[0], self.bounds[3]))
        right, bottom = self.at((self.bounds[2], self.bounds[1]))
        return Box(left, top, right, bottom)


def way_on_paper(way: Point) -> XY:
    """A direction of the part on paper, length 1; to the right when it has no length."""
    size = math.hypot(*way)
    return (way[0] / size, -way[1] / size) if size > 1e-12 else (1.0, 0.0)


def fit(bounds: Bounds, breaks: tuple[Break, ...], area: Box) -> Frame:
    """The largest frame in an area of the paper, centred in it."""
    wide, tall = drawn_size(bounds, breaks)
    scale = min(area.width / wide, area.height / tall)
    left = area.x0 + (area.width - wide * scale) / 2
    top = area.y0 + (area.height - tall * scale) / 2
    return Frame(bounds, scale, left, top, breaks)


def drawn_size(bounds: Bounds, breaks: Iterable[Break]) -> tuple[float, float]:
    """Width and height of the part as drawn, part's mm, breaks taken out; never 0."""
    gone = [0.0, 0.0]
    for gap in breaks:
        gone[gap.axis] += gap.high - gap.low - gap.kept
    return max(bounds[2] - bounds[0] - gone[0], 1e-3), max(bounds[3] - bounds[1] - gone[1], 1e-3)


def breaks_for(figure: FigureView, width_mm: float, height_mm: float) -> tuple[Break, ...]:
    """The breaks a figure needs to be legible in the space, none for most."""
    size = (figure.bounds[2] - figure.bounds[0], figure.bounds[3] - figure.bounds[1])
    axis = 0 if size[0] >= size[1] else 1
    long, short = size[axis], size[1 - axis]
    room, across = (width_mm, height_mm) if axis == 0 else (height_mm, width_mm)
    if short <= 0 or short * min(room / long, across / short) >= min(_THIN, across * 0.9):
        return ()
    tries = [(wanted, count) for wanted in _WANTED if wanted <= across for count in range(1, _MOST_BREAKS + 1)]
    for wanted, count in sorted(tries, key=lambda one: (one[1] * _PER_BREAK - one[0], one)):
        scale = wanted / short
        found = _cut_out(_free_stretches(figure, axis, scale)[:count], long - room / scale, _KEPT / scale, axis)
        if found:
            return found
    return ()


def _cut_out(free: Sequence[tuple[float, float]], surplus: float, kept: float, axis: int) -> tuple[Break, ...]:
    """Breaks that take `surplus` mm out of the free stretches, in their order; () when it isn't there."""
    breaks: list[Break] = []
    for low, high in free:
        spare = high - low - kept
        if spare <= 0 or surplus <= 0:
            break
        gone = min(spare, surplus)
        # Only the middle is taken, so that what stands at the ends of the stretch keeps its distance.
        middle = (low + high) / 2
        half = (gone + kept) / 2
        breaks.append(Break(axis, middle - half, middle + half, kept))
        surplus -= gone
    return tuple(breaks) if surplus <= 1e-9 else ()


def _free_stretches(figure: FigureView, axis: int, scale: float) -> list[tuple[float, float]]:
    """Stretches along an axis where nothing is but straight lines along it, clear of everything; longest first."""
    margin = _MARGIN / scale
    taken = sorted((low - margin, high + margin) for low, high in _taken(figure, axis))
    free: list[tuple[float, float]] = []
    reached = figure.bounds[axis]
    for low, high in taken:
        if low > reached:
            free.append((reached, low))
        reached = max(reached, high)
    return sorted(free, key=lambda stretch: (stretch[0] - stretch[1], stretch[0]))


def _taken(figure: FigureView, axis: int) -> Iterable[tuple[float, float]]:
    for edge in (figure.bounds[axis], figure.bounds[axis + 2]):
        yield edge, edge
    segments = [segment for stroke in figure.strokes for segment in stroke.path]
    for segment in (*segments, *figure.route):
        yield from _taken_by(segment, axis)
    points = [*figure.ring, *(note.at for note in figure.callouts)]
    points += [point for line in figure.dimensions for point in (line.start, line.end)]
    points += [point for point in (figure.start, figure.end) if point is not None]
    for point in points:
        yield point[axis], point[axis]


def _taken_by(segment: Segment, axis: int) -> Iterable[tuple[float, float]]:
    low, high = sorted((segment.start[axis], segment.end[axis]))
    along = isinstance(segment, Line) and abs(segment.start[1 - axis] - segment.end[1 - axis]) < 1e-6
    if along:
        yield low, low
        yield high, high
    else:
        box = segment.bounds()
        yield box[axis], box[axis + 2]
