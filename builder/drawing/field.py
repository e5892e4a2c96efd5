"""The paper labels are placed on: its border, its symbols and its line work, kept so that it can be asked quickly.

Says what lies where. What that costs a label is label_cost.py's.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Sequence
from functools import cached_property
from math import floor

from builder.drawing.box import Box, Trace

# Clear space between two texts, and between a text and the middle of a line, mm printed.
TEXT_GAP = 0.9
LINE_GAP = 0.8
# Side of the squares traces are looked up in, mm. Small ones, of 1 mm, only remember whether any trace is there.
_LARGE = 6.0
# So few traces are gone through faster than looked up.
_FEW = 48
# Room kept beyond the border, so that a box that has grown a little is still on the small squares.
_BEYOND = 3.0

Boxed = tuple[Box, Trace]
"""A trace with the box round it."""


class Field:
    """The paper labels are placed on.

    frame   : nothing leaves it
    blocked : places no text and no line of a label may touch (symbols, arrowheads)
    traces  : the line work
    crossed : what the lines of labels cost here, by their identity, with the lines themselves
    """

    def __init__(self, frame: Box, blocked: Sequence[Box], traces: Sequence[Trace]) -> None:
        self.frame = frame
        self.blocked = blocked
        self.traces = traces
        self.crossed: dict[int, tuple[Sequence[Trace], float]] = {}
        self._left, self._top = frame.x0 - _BEYOND, frame.y0 - _BEYOND
        self._closed = [box.grown(TEXT_GAP / 2) for box in blocked]

    def allows(self, box: Box) -> bool:
        """May a text stand here: is it on the paper and off all symbols?"""
        x0, y0, x1, y1 = box
        left, top, right, bottom = self.frame
        if x0 < left or y0 < top or x1 > right or y1 > bottom:
            return False
        for left, top, right, bottom in self._closed:
            if x0 < right and left < x1 and y0 < bottom and top < y1:
                return False
        return True

    def under(self, box: Box, gap: float) -> float:
        """The least weight of a trace, if one comes nearer than `gap` to a box on the paper, else 0."""
        x0, y0, x1, y1 = box
        x0, y0, x1, y1 = x0 - gap, y0 - gap, x1 + gap, y1 + gap
        left, top, right, bottom = x0 - self._left, y0 - self._top, x1 - self._left, y1 - self._top
        # Line work in a square that lies wholly in the space passes it, line work that passes it touches its squares.
        rows, first, last = self._rows, int(top), int(bottom)
        across = (1 << int(right)) - (2 << int(left))
        for row in rows[first + 1 : last] if across > 0 else ():
            if row & across:
                return self._lightest
        across = (2 << int(right)) - (1 << int(left))
        for row in rows[first : last + 1]:
            if row & across:
                break
        else:
            return 0.0
        space = Box(x0, y0, x1, y1)
        for (left, top, right, bottom), trace in self.near(space):
            if left <= x1 and x0 <= right and top <= y1 and y0 <= bottom and trace.passes(space):
                return self._lightest
        return 0.0

    def near(self, box: Box) -> Sequence[Boxed]:
        """The traces that may meet the box, each once, and others where there are few."""
        if len(self.traces) <= _FEW:
            return self._boxed
        squares = self._squares(box)
        if len(squares) == 1:
            return [self._boxed[number] for number in self._index.get(squares[0], ())]
        numbers: set[int] = set()
        for square in squares:
            numbers.update(self._index.get(square, ()))
        return [self._boxed[number] for number in sorted(numbers)]

    def _squares(self, box: Box) -> list[tuple[int, int]]:
        x0, y0, x1, y1 = box
        left, top = self._left, self._top
        columns = range(max(0, int((x0 - left) / _LARGE)), int((x1 - left) / _LARGE) + 1)
        rows = range(max(0, int((y0 - top) / _LARGE)), int((y1 - top) / _LARGE) + 1)
        return [(column, row) for column in columns for row in rows]

    @cached_property
    def _boxed(self) -> list[Boxed]:
        return [(trace.box, trace) for trace in self.traces]

    @cached_property
    def _lightest(self) -> float:
        return min([trace.weight for trace in self.traces], default=1.0)

    @cached_property
    def _rows(self) -> list[int]:
        """The small squares with line work: a bit a column, a number a row."""
        rows = [0] * (int(self.frame.y1 - self._top + _BEYOND) + 1)
        last = len(rows) - 1
        for trace in self.traces:
            for row, first, until in _spans(trace, self._left, self._top, 1.0):
                if 0 <= row <= last and until >= 0:
                    rows[row] |= (2 << until) - (1 << (first if first > 0 else 0))
        return rows

    @cached_property
    def _index(self) -> dict[tuple[int, int], list[int]]:
        """The numbers of the traces in each large square."""
        found: dict[tuple[int, int], list[int]] = defaultdict(list)
        for number, trace in enumerate(self.traces):
            for row, first, until in _spans(trace, self._left, self._top, _LARGE):
                for column in range(first, until + 1):
                    found[column, row].append(number)
        return found


def _spans(trace: Trace, left: float, top: float, size: float) -> list[tuple[int, int, int]]:
    """The squares a trace passes, as (row, first column, last column)."""
    ax, ay, bx, by, _ = trace
    if ay > by:
        ax, ay, bx, by = bx, by, ax, ay
    ax, bx, ay, by = (ax - left) / size, (bx - left) / size, (ay - top) / size, (by - top) / size
    first, last = floor(ay), floor(by)
    start, end = (floor(ax), floor(bx)) if ax < bx else (floor(bx), floor(ax))
    if first == last:
        return [(first, start, end)]
    if start == end:
        return [(row, start, end) for row in range(first, last + 1)]
    slope = (bx - ax) / (by - ay)
    found = []
    for row in range(first, last + 1):
        here, there = ax + (max(ay, row) - ay) * slope, ax + (min(by, row + 1) - ay) * slope
        if here > there:
            here, there = there, here
        # A trace through a corner of a square counts for both sides, whatever the rounding.
        found.append((row, floor(here - 1e-9), floor(there + 1e-9)))
    return found
