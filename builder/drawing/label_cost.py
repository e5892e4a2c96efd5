"""What a place for a label costs: leaving the field or covering another text is forbidden, lines are dear.

Forbidden is an infinite cost. Pure; which place is chosen is label_place.py's.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from typing import Any, NamedTuple

from builder.drawing.box import Box, Trace, crossing, side_by_side
from builder.drawing.field import LINE_GAP, TEXT_GAP, Field

# Two lines nearer than this read as one.
_LINE_APART = 1.1

_ON_LINE, _ON_LINE_PER_MM = 60.0, 4.0
_ALONG_LINE_PER_MM = 6.0
# Extension lines may start in a symbol they belong to; heavier lines keep out of symbols.
_PASSES = 1.5
# Weight of a leader: a Trace from its text to its point.
LEADER = 4.0
# A label's lines keep this clear of its own text, and of other texts.
_OWN_GAP, _OTHER_GAP = 0.4, LINE_GAP * 0.7
# An extension line often runs along the edge it extends, and may.
_EXTENSION = 1.0
_ALONG_EXTENSION_PER_MM = 0.35


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


class Batch(NamedTuple):
    """Candidates, and the least any of these or of a later batch can cost: where looking further may stop."""

    least: float
    candidates: Sequence[Candidate]


class Rough(NamedTuple):
    """What a place costs at least against everything that doesn't move.

    on_lines : line work lies under the text; only then is the cost not yet the whole of it
    """

    least: float
    on_lines: bool


_FORBIDDEN = Rough(math.inf, False)


def roughly(candidate: Candidate, paper: Field) -> Rough:
    """Own cost with that against everything that doesn't move, of the line work under the text only the least."""
    box, lines, cost, _ = candidate
    if not paper.allows(box):
        return _FORBIDDEN
    if lines:
        cost += lines_cost(lines, paper)
        if cost == math.inf or _any_passes(lines, box.grown(_OWN_GAP)):
            return _FORBIDDEN
    weight = paper.under(box.grown(LINE_GAP))
    return Rough(cost + _ON_LINE * weight, weight > 0)


def exactly(candidate: Candidate, paper: Field) -> float:
    """The whole cost against everything that doesn't move, of a place that isn't forbidden."""
    space = candidate.box.grown(LINE_GAP)
    lines = lines_cost(candidate.lines, paper) if candidate.lines else 0.0
    return candidate.cost + _covered(space, paper.near(space)) + lines


def lines_cost(lines: Sequence[Trace], paper: Field) -> float:
    """Cost of a label's lines against everything that doesn't move; worked out once, many candidates share lines."""
    known = paper.crossed.get(id(lines))
    if known is None:
        # The lines are kept with their cost, so that no others get their identity.
        known = paper.crossed[id(lines)] = (lines, _lines_against_field(lines, paper))
    return known[1]


def _lines_against_field(lines: Sequence[Trace], paper: Field) -> float:
    spaces = [line.box for line in lines]
    if not all(space.inside(paper.frame) for space in spaces):
        return math.inf
    for line, space in zip(lines, spaces, strict=True):
        if line.weight > _PASSES and any(_runs_into(line, space, block) for block in paper.blocked):
            return math.inf
    return sum(
        _crossed(line, paper.near(space.grown(_LINE_APART))) for line, space in zip(lines, spaces, strict=True)
    )


def _runs_into(line: Trace, space: Box, block: Box) -> bool:
    """Does a line run through a symbol? A leader may end in one, even if the symbol isn't the one it points at."""
    if not space.overlaps(block) or line.inside_of(block) <= 0.3:
        return False
    return not (line.weight == LEADER and block.grown(0.3).holds((line.bx, line.by)))


class Taken:
    """What labels already placed take, asked by one that looks for its place."""

    def __init__(self, others: Iterable[Candidate]) -> None:
        placed = list(others)
        self._texts = [other.box.grown(TEXT_GAP) for other in placed]
        self._off_lines = [other.box.grown(_OTHER_GAP) for other in placed]
        self._lines = [line for other in placed for line in other.lines]
        self._known: dict[int, float] = {}

    def cost(self, candidate: Candidate) -> float:
        """Cost against the labels placed; infinite when one covers the other."""
        x0, y0, x1, y1 = candidate.box
        for tx0, ty0, tx1, ty1 in self._texts:
            if x0 < tx1 and tx0 < x1 and y0 < ty1 and ty0 < y1:
                return math.inf
        if self._lines and _any_passes(self._lines, candidate.box.grown(_OTHER_GAP)):
            return math.inf
        if not candidate.lines:
            return 0.0
        # Only asked while the candidates live, so an identity stands for the same lines.
        known = self._known.get(id(candidate.lines))
        if known is None:
            known = self._known[id(candidate.lines)] = self._of_lines(candidate.lines)
        return known

    def _of_lines(self, lines: Sequence[Trace]) -> float:
        if any(_any_passes(lines, space) for space in self._off_lines):
            return math.inf
        return sum(_crossed(line, self._lines) for line in lines)


def _any_passes(lines: Iterable[Trace], space: Box) -> bool:
    return any(line.passes(space) for line in lines)


def _covered(space: Box, traces: Iterable[Trace]) -> float:
    cost = 0.0
    for trace in traces:
        length = trace.inside_of(space)
        if length > 0:
            cost += (_ON_LINE + _ON_LINE_PER_MM * length) * trace.weight
    return cost


def _crossed(line: Trace, traces: Iterable[Trace]) -> float:
    cost = 0.0
    x0, y0, x1, y1 = line.box.grown(_LINE_APART)
    for trace in traces:
        ax, ay, bx, by, weight = trace
        # Most traces are far off: a plain comparison saves the rest.
        if (ax < x0 and bx < x0) or (ax > x1 and bx > x1) or (ay < y0 and by < y0) or (ay > y1 and by > y1):
            continue
        along = side_by_side(line, trace, _LINE_APART)
        if along > 0.5:
            cost += along * (_ALONG_EXTENSION_PER_MM if line.weight < _EXTENSION else _ALONG_LINE_PER_MM)
        elif crossing(line, trace):
            cost += line.weight * weight
    return cost
