"""Where labels go: chooses one candidate for each label so that nothing is covered. Pure, and deterministic.

Each label brings its candidates with their own cost (distance, second-best forms). Forbidden: leaving the
field, covering another text or a blocked place. Costly: covering or crossing line work. First the labels
choose one after another, then each once more with all others in place. What a candidate looks like is not
known here; the caller draws the one whose number comes back.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field

from builder.drawing.box import Box, Trace, crossing, side_by_side

# Clear space between two texts, and between a text and the middle of a line, mm printed.
TEXT_GAP = 0.7
LINE_GAP = 0.75
# Two lines nearer than this read as one.
_LINE_APART = 1.1

_ON_LINE, _ON_LINE_PER_MM = 60.0, 4.0
_ALONG_LINE_PER_MM = 6.0
_CELL = 8.0


@dataclass(frozen=True, slots=True)
class Candidate:
    """One way to place a label.

    boxes : the space of its texts, nothing else may lie there
    lines : its own lines (leader, dimension line); a trace's weight says how much a crossing costs
    cost  : what this form costs by itself
    """

    boxes: tuple[Box, ...]
    lines: tuple[Trace, ...] = ()
    cost: float = 0.0


@dataclass(frozen=True, slots=True)
class Choice:
    """What was chosen for a label: the number of the candidate, its cost, and whether text lies on lines."""

    index: int
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
            for cell in _cells_of(trace.box):
                self._cells.setdefault(cell, []).append(number)

    def near(self, box: Box) -> Iterable[Trace]:
        """The traces that may meet the box."""
        numbers = {number for cell in _cells_of(box) for number in self._cells.get(cell, ())}
        return [self.traces[number] for number in sorted(numbers)]


def _cells_of(box: Box) -> Iterable[tuple[int, int]]:
    for column in range(math.floor(box.x0 / _CELL), math.floor(box.x1 / _CELL) + 1):
        for row in range(math.floor(box.y0 / _CELL), math.floor(box.y1 / _CELL) + 1):
            yield column, row


@dataclass(slots=True)
class _Label:
    """A label under way: its candidates cheapest first, and what each costs against the field alone."""

    candidates: Sequence[Candidate]
    order: list[int]
    fixed: dict[int, tuple[float, float]]
    choice: Choice | None = None

    @property
    def placed(self) -> Candidate | None:
        return None if self.choice is None else self.candidates[self.choice.index]


def place(labels: Sequence[Sequence[Candidate]], paper: Field, passes: int = 1) -> list[Choice | None]:
    """Choose a candidate for each label, in the order given: the first has the widest choice.

    passes : how often all labels choose again, the others in place
    Returns the choices, None where no candidate is allowed.
    """
    waiting = [
        _Label(candidates, sorted(range(len(candidates)), key=lambda i, c=candidates: (c[i].cost, i)), {})
        for candidates in labels
    ]
    for _ in range(1 + passes):
        changed = False
        for label in waiting:
            others = [other.placed for other in waiting if other is not label and other.placed is not None]
            best = _cheapest(label, others, paper)
            changed = changed or best != label.choice
            label.choice = best
        if not changed:
            break
    return [label.choice for label in waiting]


def _cheapest(label: _Label, others: list[Candidate], paper: Field) -> Choice | None:
    best: Choice | None = None
    for index in label.order:
        candidate = label.candidates[index]
        if best is not None and candidate.cost >= best.cost:
            break
        if index not in label.fixed:
            label.fixed[index] = _against_field(candidate, paper)
        fixed, covering = label.fixed[index]
        if math.isinf(fixed) or (best is not None and candidate.cost + fixed >= best.cost):
            continue
        moving, over = _against_others(candidate, others)
        cost = candidate.cost + fixed + moving
        if math.isfinite(cost) and (best is None or cost < best.cost):
            best = Choice(index, cost, covering + over > 0)
    return best


def _against_field(candidate: Candidate, paper: Field) -> tuple[float, float]:
    """Cost against everything that doesn't move, and the length of line work under the texts."""
    if not _allowed(candidate, paper):
        return math.inf, 0.0
    covered = sum(_covered(box, candidate.lines, clear=0.0) for box in candidate.boxes)
    covered += sum(_covered(box, paper.near(box.grown(LINE_GAP))) for box in candidate.boxes)
    return covered + sum(_crossed(line, paper.near(line.box.grown(_LINE_APART))) for line in candidate.lines), covered


def _allowed(candidate: Candidate, paper: Field) -> bool:
    if not all(box.inside(paper.frame) for box in candidate.boxes):
        return False
    if not all(line.box.inside(paper.frame) for line in candidate.lines):
        return False
    if any(box.overlaps(block, TEXT_GAP / 2) for box in candidate.boxes for block in paper.blocked):
        return False
    return not any(
        line.box.overlaps(block) and line.inside_of(block) > 0.3 and line.weight > _PASSES
        for line in candidate.lines
        for block in paper.blocked
    )


# Extension lines and leaders may start in a symbol they belong to; heavier lines keep out of symbols.
_PASSES = 1.5


def _against_others(candidate: Candidate, others: list[Candidate]) -> tuple[float, float]:
    """Cost against the labels already placed, and the length of their lines under the texts."""
    cost = covering = 0.0
    for other in others:
        for box in candidate.boxes:
            if any(box.overlaps(taken, TEXT_GAP) for taken in other.boxes):
                return math.inf, 0.0
            if any(line.inside_of(box.grown(LINE_GAP / 2)) > 0 for line in other.lines):
                return math.inf, 0.0
        for line in candidate.lines:
            if any(line.inside_of(taken.grown(LINE_GAP / 2)) > 0 for taken in other.boxes):
                return math.inf, 0.0
            cost += _crossed(line, other.lines)
    return cost, covering


def _covered(box: Box, traces: Iterable[Trace], clear: float = LINE_GAP) -> float:
    space = box.grown(clear)
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
            cost += _ALONG_LINE_PER_MM * along
        elif crossing(line, trace):
            cost += line.weight * trace.weight
    return cost
