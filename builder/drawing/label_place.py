"""Where labels go: chooses one candidate for each label so that nothing is covered. Pure, and deterministic.

Each label brings its candidates with their own cost (distance, second-best forms); label_cost.py prices them.
First the labels choose one after another, then each once more with all others in place; one that stands badly
may push others off its place if all are better off. What a candidate looks like is not known here: it carries
its drawing along.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Sequence
from typing import NamedTuple

from builder.drawing.label_cost import Batch, Candidate, Field, against_field, against_others

# A label that costs more than this asks others to move; so many places are tried, so many others moved for one.
_CROWDED = 25.0
_BEST_OF, _MOST_MOVED = 8, 2
_NO_PLACE = 10_000.0


class Choice(NamedTuple):
    """What was chosen for a label, what it costs, and whether its text lies on lines."""

    candidate: Candidate
    cost: float
    on_lines: bool


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
            found = self._prices[id(candidate)] = against_field(candidate, paper, self._crossed)
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
            and against_others(candidate, [other.choice.candidate]) == math.inf
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
                cost += against_others(candidate, others)
                if cost < least:
                    best, least = Choice(candidate, cost, on_lines), cost
    return best
