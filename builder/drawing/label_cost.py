"""What a place for a label costs: leaving the field or covering another text is forbidden, lines are dear.

Forbidden is an infinite cost. Pure; which place is chosen is label_place.py's.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from typing import Any, NamedTuple

from builder.drawing.box import Box, Trace, crossing, side_by_side
from builder.drawing.field import LINE_GAP, TEXT_GAP, Boxed, Field

# Two lines nearer than this read as one.
_LINE_APART = 1.1

_ON_LINE, _ON_LINE_PER_MM = 60.0, 4.0
_ALONG_LINE_PER_MM = 6.0
# Extension lines may start in a symbol they belong to; heavier lines keep out of symbols.
_PASSES = 1.5
# Weight of a leader: a Trace from its text to its point.
LEADER = 4.0
# A label's lines keep this clear of its own text, and of other texts.
_OWN_GAP, _OTHER_GAP = 0.4, LINE_GAP
# An extension line often runs along the edge it extends, and may.
_EXTENSION = 1.0
_ALONG_EXTENSION_PER_MM = 0.35
# Only lines whose directions differ by less than this (the sine) can run beside each other.
_PARALLEL = 0.06


class Candidate(NamedTuple):
    """One way to place a label.

    box   : the space of its text, nothing else may lie there
    lines : its own lines (leader, dimension line); a trace's weight says how much a crossing costs
    cost  : what this form costs by itself
    art   : what the caller draws it with, not looked at here
    """

    box: Box
    lines: tuple[Trace, ...] = ()
    cost: float = 0.0
    art: Any = None


Way = tuple[float, Candidate]
"""A candidate, with the least that it or any later one of its label can cost: where looking further may stop."""


def least_cost(candidate: Candidate, paper: Field) -> tuple[float, bool]:
    """The least a place costs, and whether line work lies under its text: then, or with lines, it may cost more."""
    if not paper.allows(candidate.box):
        return math.inf, False
    weight = paper.under(candidate.box, LINE_GAP)
    return candidate.cost + _ON_LINE * weight, weight > 0


def full_cost(candidate: Candidate, paper: Field, on_lines: bool) -> float:
    """What a place costs against everything that doesn't move.

    on_lines : whether line work lies under its text
    """
    cost = candidate.cost
    if candidate.lines:
        space = candidate.box.grown(_OWN_GAP)
        for line in candidate.lines:
            if line.passes(space):
                return math.inf
        cost += lines_cost(candidate.lines, paper)
    if on_lines and cost < math.inf:
        space = candidate.box.grown(LINE_GAP)
        cost += _covered(space, paper.near(space))
    return cost


def lines_cost(lines: Sequence[Trace], paper: Field) -> float:
    """Cost of a label's lines against everything that doesn't move; worked out once, many candidates share lines."""
    known = paper.crossed.get(id(lines))
    if known is None:
        # The lines are kept with their cost, so that no others get their identity.
        known = paper.crossed[id(lines)] = (lines, _lines_against_field(lines, paper))
    return known[1]


def _lines_against_field(lines: Sequence[Trace], paper: Field) -> float:
    for line in lines:
        space = line.box
        if not space.inside(paper.frame):
            return math.inf
        if line.weight > _PASSES:
            for block in paper.blocked:
                if space.overlaps(block) and _runs_into(line, block):
                    return math.inf
    cost = 0.0
    for line in lines:
        cost += _crossed(line, paper.near(line.box.grown(_LINE_APART)))
    return cost


def _runs_into(line: Trace, block: Box) -> bool:
    """Does a line run through a symbol? A leader may end in one, even if the symbol isn't the one it points at."""
    if line.inside_of(block) <= 0.3:
        return False
    return not (line.weight == LEADER and block.grown(0.3).holds((line.bx, line.by)))


class Footprint(NamedTuple):
    """What a label takes on paper once it is placed: its text with two clearances, and its lines with their boxes.

    kept_off : the lines again, in boxes that hold the clearance of other texts
    """

    text: Box
    off_lines: Box
    lines: tuple[Boxed, ...]
    kept_off: tuple[Boxed, ...]


def footprint(candidate: Candidate) -> Footprint:
    """What a candidate takes, clear space with it."""
    lines = tuple([(line.box, line) for line in candidate.lines])
    kept_off = tuple([(box.grown(_OTHER_GAP), line) for box, line in lines])
    return Footprint(candidate.box.grown(TEXT_GAP), candidate.box.grown(_OTHER_GAP), lines, kept_off)


def covering(box: Box, placed: Sequence[Footprint]) -> list[int]:
    """The numbers of the labels whose text or lines leave no room for a text here."""
    x0, y0, x1, y1 = box
    found = []
    for number, ((left, top, right, bottom), _, _, kept_off) in enumerate(placed):
        if (x0 < right and left < x1 and y0 < bottom and top < y1) or (kept_off and _lined(box, kept_off)):
            found.append(number)
    return found


def _lined(box: Box, kept_off: Iterable[Boxed]) -> bool:
    """Does a line come too near to a text here?"""
    x0, y0, x1, y1 = box
    for (left, top, right, bottom), line in kept_off:
        if x0 <= right and left <= x1 and y0 <= bottom and top <= y1 and line.passes(box.grown(_OTHER_GAP)):
            return True
    return False


def runs_through(lines: Iterable[Trace], placed: Footprint) -> bool:
    """Does one of a label's lines come too near to the text of another?"""
    return any(line.passes(placed.off_lines) for line in lines)


class Taken:
    """What labels already placed take, asked by one that looks for its place."""

    def __init__(self, others: Sequence[Footprint]) -> None:
        self._texts = [other.text for other in others]
        self._off_lines = [other.off_lines for other in others]
        self._lines = [line for other in others for line in other.lines]
        self._kept_off = [line for other in others for line in other.kept_off]
        self._known: dict[int, float] = {}

    def covers(self, box: Box) -> bool:
        """Do texts or lines of the others leave no room for a text here?"""
        x0, y0, x1, y1 = box
        for left, top, right, bottom in self._texts:
            if x0 < right and left < x1 and y0 < bottom and top < y1:
                return True
        return bool(self._kept_off) and _lined(box, self._kept_off)

    def lines_cost(self, lines: Sequence[Trace]) -> float:
        """Cost of a label's lines against the others; infinite when one runs through a text."""
        if not lines:
            return 0.0
        # Only asked while the candidates live, so an identity stands for the same lines.
        known = self._known.get(id(lines))
        if known is None:
            known = self._known[id(lines)] = self._of_lines(lines)
        return known

    def _of_lines(self, lines: Sequence[Trace]) -> float:
        cost = 0.0
        for line in lines:
            x0, y0, x1, y1 = line.box
            for space in self._off_lines:
                left, top, right, bottom = space
                if x0 <= right and left <= x1 and y0 <= bottom and top <= y1 and line.passes(space):
                    return math.inf
            cost += _crossed(line, self._lines)
        return cost


def _covered(space: Box, traces: Iterable[Boxed]) -> float:
    cost = 0.0
    for _, trace in traces:
        length = trace.inside_of(space)
        if length > 0:
            cost += (_ON_LINE + _ON_LINE_PER_MM * length) * trace.weight
    return cost


def _crossed(line: Trace, traces: Iterable[Boxed]) -> float:
    cost = 0.0
    x0, y0, x1, y1 = line.box.grown(_LINE_APART)
    sx, sy, ex, ey, own = line
    dx, dy = ex - sx, ey - sy
    steep = _PARALLEL * _PARALLEL * (dx * dx + dy * dy)
    for (left, top, right, bottom), trace in traces:
        # Most traces are far off: a plain comparison saves the rest.
        if right < x0 or left > x1 or bottom < y0 or top > y1:
            continue
        ax, ay, bx, by, weight = trace
        fx, fy = bx - ax, by - ay
        turn = dx * fy - dy * fx
        if turn * turn <= steep * (fx * fx + fy * fy):
            along = side_by_side(line, trace, _LINE_APART)
            if along > 0.5:
                cost += along * (_ALONG_EXTENSION_PER_MM if own < _EXTENSION else _ALONG_LINE_PER_MM)
                continue
        if crossing(line, trace):
            cost += own * weight
    return cost
