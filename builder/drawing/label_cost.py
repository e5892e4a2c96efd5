"""What a place for a label costs: leaving the field or covering another text is forbidden, lines are dear.

Forbidden is an infinite cost. Pure; which place is chosen is label_place.py's.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from typing import Any, NamedTuple

from builder.drawing.box import Box, Trace, crossing, side_by_side

# Clear space between two texts, and between a text and the middle of a line, mm printed.
TEXT_GAP = 0.9
LINE_GAP = 0.8
# Two lines nearer than this read as one.
_LINE_APART = 1.1

_ON_LINE, _ON_LINE_PER_MM = 60.0, 4.0
_ALONG_LINE_PER_MM = 6.0
# Extension lines may start in a symbol they belong to; heavier lines keep out of symbols.
_PASSES = 1.5
# Weight of a leader: a Trace from its text to its point.
LEADER = 4.0
# A label's own lines keep this clear of its text.
_OWN_GAP = 0.4
# An extension line often runs along the edge it extends, and may.
_EXTENSION = 1.0
_ALONG_EXTENSION_PER_MM = 0.35
_CELL = 6.0


class Candidate(NamedTuple):
    """One way to place a label.

    boxes : the space of its texts, nothing else may lie there
    lines : its own lines (leader, dimension line); a trace's weight says how much a crossing costs
    cost  : what this form costs by itself
    art   : what the caller draws it with, not looked at here
    """

    boxes: tuple[Box, ...]
    lines: tuple[Trace, ...] = ()
    cost: float = 0.0
    art: Any = None


class Batch(NamedTuple):
    """Candidates, and the least any of these or of a later batch can cost: where looking further may stop."""

    least: float
    candidates: Sequence[Candidate]


@dataclass
class Field:
    """The paper labels are placed on.

    frame   : nothing leaves it
    blocked : places no text and no line of a label may touch (symbols, arrowheads)
    traces  : the line work
    """

    frame: Box
    blocked: Sequence[Box]
    traces: Sequence[Trace]
    _cells: dict[tuple[int, int], list[int]] = field(init=False, repr=False)

    def __post_init__(self) -> None:
        self._cells = {}
        for number, trace in enumerate(self.traces):
            for column, row in _cells_of(trace.box):
                # A slanted trace passes only some of the cells of its box.
                cell = (column, row)
                space = Box(column * _CELL, row * _CELL, (column + 1) * _CELL, (row + 1) * _CELL)
                if trace.shares_in(space.grown(0.01)):
                    self._cells.setdefault(cell, []).append(number)

    def near(self, box: Box) -> list[Trace]:
        """The traces that may meet the box."""
        numbers: set[int] = set()
        for cell in _cells_of(box):
            numbers.update(self._cells.get(cell, ()))
        return [self.traces[number] for number in sorted(numbers)]


def _cells_of(box: Box) -> list[tuple[int, int]]:
    columns = range(math.floor(box.x0 / _CELL), math.floor(box.x1 / _CELL) + 1)
    rows = range(math.floor(box.y0 / _CELL), math.floor(box.y1 / _CELL) + 1)
    return [(column, row) for column in columns for row in rows]


_FORBIDDEN = (math.inf, False)


def against_field(candidate: Candidate, paper: Field, crossed: dict[int, float]) -> tuple[float, bool]:
    """Own cost with that against everything that doesn't move, and whether line work lies under the texts.

    crossed : cost of the lines alone, by their identity: many candidates share the same lines
    """
    for box in candidate.boxes:
        if not box.inside(paper.frame):
            return _FORBIDDEN
        for block in paper.blocked:
            if box.overlaps(block, TEXT_GAP / 2):
                return _FORBIDDEN
    lines = candidate.lines
    if id(lines) not in crossed:
        crossed[id(lines)] = _linesagainst_field(lines, paper)
    cost = crossed[id(lines)]
    if cost == math.inf:
        return _FORBIDDEN
    covered = 0.0
    for box in candidate.boxes:
        if _touches(lines, box, _OWN_GAP):
            return _FORBIDDEN
        space = box.grown(LINE_GAP)
        covered += _covered(space, paper.near(space))
    return candidate.cost + covered + cost, covered > 0


def _linesagainst_field(lines: Sequence[Trace], paper: Field) -> float:
    cost = 0.0
    for line in lines:
        space = line.box
        if not space.inside(paper.frame):
            return math.inf
        if line.weight > _PASSES and any(_runs_into(line, space, block) for block in paper.blocked):
            return math.inf
        cost += _crossed(line, paper.near(space.grown(_LINE_APART)))
    return cost


def _runs_into(line: Trace, space: Box, block: Box) -> bool:
    """Does a line run through a symbol? A leader may end in one, even if the symbol isn't the one it points at."""
    if not space.overlaps(block) or line.inside_of(block) <= 0.3:
        return False
    return not (line.weight == LEADER and block.grown(0.3).holds((line.bx, line.by)))


def against_others(candidate: Candidate, others: Sequence[Candidate]) -> float:
    """Cost against the labels already placed; infinite when one covers the other."""
    cost = 0.0
    for other in others:
        for box in candidate.boxes:
            for taken in other.boxes:
                if box.overlaps(taken, TEXT_GAP):
                    return math.inf
    for other in others:
        for box in candidate.boxes:
            if _touches(other.lines, box):
                return math.inf
        for taken in other.boxes:
            if _touches(candidate.lines, taken):
                return math.inf
        for line in candidate.lines:
            cost += _crossed(line, other.lines)
    return cost


def _touches(lines: Iterable[Trace], text: Box, gap: float = LINE_GAP * 0.7) -> bool:
    space = text.grown(gap)
    return any(line.shares_in(space) for line in lines)


def _covered(space: Box, traces: Iterable[Trace]) -> float:
    cost = 0.0
    for trace in traces:
        length = trace.inside_of(space)
        if length > 0:
            cost += (_ON_LINE + _ON_LINE_PER_MM * length) * trace.weight
    return cost


def _crossed(line: Trace, traces: Iterable[Trace]) -> float:
    cost = 0.0
    for trace in traces:
        along = side_by_side(line, trace, _LINE_APART)
        if along > 0.5:
            cost += along * (_ALONG_EXTENSION_PER_MM if line.weight < _EXTENSION else _ALONG_LINE_PER_MM)
        elif crossing(line, trace):
            cost += line.weight * trace.weight
    return cost
