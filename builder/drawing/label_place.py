"""Where labels go: chooses one candidate for each label so that nothing is covered. Pure, and deterministic.

Each label brings its candidates with their own cost (distance, second-best forms). Forbidden: leaving the
field, covering another text or a blocked place. Costly: covering or crossing line work. First the labels
choose one after another, then each once more with all others in place. What a candidate looks like is not
known here: it carries its drawing along.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Sequence
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

# A label that costs more than this asks others to move; so many places are tried, so many others moved for one.
_CROWDED = 25.0
_BEST_OF, _MOST_MOVED = 8, 2
_NO_PLACE = 10_000.0


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


class Choice(NamedTuple):
    """What was chosen for a label, what it costs, and whether its text lies on lines."""

    candidate: Candidate
    cost: float
    on_lines: bool


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


class _Label:
    """A label under way: candidates looked at so far, and what those cost that were worth pricing."""

    def __init__(self, batches: Iterable[Batch]) -> None:
        self._coming: Iterator[Batch] = iter(batches)
        self._seen: list[Batch] = []
        self._prices: dict[int, tuple[float, bool]] = {}
        self._crossed: dict[int, float] = {}
        self.choice: Choice | None = None

    def batches(self) -> Iterator[Batch]:
        """The batches, each sorted by the candidates' own cost."""
        yield from self._seen
        for batch in self._coming:
            # Candidates are kept here for good, so an identity stands for one candidate only.
            self._seen.append(Batch(batch.least, sorted(batch.candidates, key=_own_cost)))
            yield self._seen[-1]

    def price(self, candidate: Candidate, paper: Field) -> tuple[float, bool]:
        """Cost with the field, infinite where it is forbidden, and whether text lies on lines."""
        found = self._prices.get(id(candidate))
        if found is None:
            found = self._prices[id(candidate)] = _against_field(candidate, paper, self._crossed)
        return found

    @property
    def cost(self) -> float:
        """What its place costs; very much while it has none."""
        return _NO_PLACE if self.choice is None else self.choice.cost

    def best_of_batches(self, paper: Field) -> list[tuple[Candidate, tuple[float, bool]]]:
        """The cheapest candidate of each batch against the field alone, cheapest first."""
        found = []
        for batch in self.batches():
            priced = [(one, self.price(one, paper)) for one in batch.candidates]
            if priced:
                found.append(min(priced, key=lambda item: item[1][0]))
        return sorted((item for item in found if item[1][0] < math.inf), key=lambda item: item[1][0])[:_BEST_OF]


def _own_cost(candidate: Candidate) -> float:
    return candidate.cost


def place(labels: Sequence[Iterable[Batch]], paper: Field, passes: int = 1) -> list[Choice | None]:
    """Choose a candidate for each label, in the order given: the first has the widest choice.

    passes : how often all labels choose again, the others in place
    Returns the choices, None where no candidate is allowed.
    """
    waiting = [_Label(batches) for batches in labels]
    for label in waiting:
        label.choice = _cheapest(label, _placed(waiting, label), paper)
    for _ in range(passes):
        changed = False
        for label in waiting:
            before = label.choice
            if label.cost > _CROWDED:
                _make_room(label, waiting, paper)
            if label.choice is before:
                label.choice = _cheapest(label, _placed(waiting, label), paper)
            changed = changed or label.choice != before
        if not changed:
            break
    return [label.choice for label in waiting]


def _placed(labels: Iterable[_Label], besides: _Label) -> list[Candidate]:
    return [one.choice.candidate for one in labels if one is not besides and one.choice is not None]


def _make_room(label: _Label, labels: Sequence[_Label], paper: Field) -> None:
    """Let a badly placed label take a place others hold, if all are better off when those choose again.

    Tries the best place of each batch, the others left out of account.
    """
    for candidate, (cost, on_lines) in label.best_of_batches(paper):
        if cost >= label.cost:
            break
        in_the_way = [
            other
            for other in labels
            if other is not label
            and other.choice is not None
            and _against_others(candidate, [other.choice.candidate]) == math.inf
        ]
        if not 0 < len(in_the_way) <= _MOST_MOVED:
            continue
        if _moved(label, Choice(candidate, cost, on_lines), in_the_way, labels, paper):
            return


def _moved(
    label: _Label, choice: Choice, in_the_way: Sequence[_Label], labels: Sequence[_Label], paper: Field
) -> bool:
    """Take the place and let the others choose again; everything is put back when that costs more."""
    every = [label, *in_the_way]
    before, cost = [one.choice for one in every], sum(one.cost for one in every)
    label.choice = choice
    for other in in_the_way:
        other.choice = None
    for other in in_the_way:
        other.choice = _cheapest(other, _placed(labels, other), paper)
    if sum(one.cost for one in every) < cost - 1e-9:
        return True
    for one, old in zip(every, before, strict=True):
        one.choice = old
    return False


def _cheapest(label: _Label, others: Sequence[Candidate], paper: Field) -> Choice | None:
    best: Choice | None = None
    least = math.inf
    for batch in label.batches():
        if batch.least >= least:
            break
        for candidate in batch.candidates:
            if candidate.cost >= least:
                break
            cost, on_lines = label.price(candidate, paper)
            if cost < least:
                cost += _against_others(candidate, others)
                if cost < least:
                    best, least = Choice(candidate, cost, on_lines), cost
    return best


_FORBIDDEN = (math.inf, False)


def _against_field(candidate: Candidate, paper: Field, crossed: dict[int, float]) -> tuple[float, bool]:
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
        crossed[id(lines)] = _lines_against_field(lines, paper)
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


def _lines_against_field(lines: Sequence[Trace], paper: Field) -> float:
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


def _against_others(candidate: Candidate, others: Sequence[Candidate]) -> float:
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
