"""Where labels go: chooses one candidate for each label so that nothing is covered. Pure, and deterministic.

Each label brings its candidates with their own cost (distance, second-best forms); label_cost.py prices them.
First the labels choose one after another, then each once more with all others in place; one that stands badly
may push others off its place if all are better off. What a candidate looks like is not known here: it carries
its drawing along.

Most candidates are never priced: a label asks for its places cheapest first, and they are made and priced only
until no other can cost less.
"""

from __future__ import annotations

import math
from bisect import insort
from collections.abc import Iterable, Iterator, Sequence
from heapq import heappop, heappush
from typing import NamedTuple

from builder.drawing.field import Field
from builder.drawing.label_cost import Batch, Candidate, Footprint, Price, Taken, footprint, full_price, least_price

# A label that costs more than this asks others to move; so many places are tried, so many others moved for one.
_CROWDED = 25.0
_BEST_OF, _MOST_MOVED = 24, 3
_EACH = 8
_NO_PLACE = 10_000.0


class Choice(NamedTuple):
    """What was chosen for a label, what it costs, and whether its text lies on lines."""

    candidate: Candidate
    cost: float
    on_lines: bool


class _Place(NamedTuple):
    """A candidate priced against the field. Sorts by cost, then in the order found."""

    cost: float
    number: int
    candidate: Candidate
    on_lines: bool


class _Label:
    """A label under way: its places so far, and what is still to be priced."""

    def __init__(self, batches: Iterable[Batch], paper: Field) -> None:
        self._paper = paper
        self._coming: Iterator[Batch] = iter(batches)
        self._next: Batch | None = next(self._coming, None)
        # Places on lines cost so much that most need no exact price.
        self._rough: list[_Place] = []
        self._places: list[_Place] = []
        self._found = 0
        self.seen: tuple[Candidate | None, ...] | None = None
        self.choice: Choice | None = None
        self.footprint: Footprint | None = None

    def place(self, number: int, limit: float) -> _Place | None:
        """The place that comes `number`-th by its price against the field; None when that is `limit` or more."""
        places, rough = self._places, self._rough
        while True:
            below = min(limit, places[number].cost) if number < len(places) else limit
            coming = self._next.least if self._next is not None else math.inf
            if rough and rough[0].cost < below and rough[0].cost < coming:
                place = heappop(rough)
                self._keep(full_price(place.candidate, self._paper), place.candidate, place.number)
            elif coming < below:
                self._take_next()
            else:
                return places[number] if number < len(places) and places[number].cost < limit else None

    def _take_next(self) -> None:
        for candidate in self._next.candidates if self._next is not None else ():
            self._found += 1
            price = least_price(candidate, self._paper)
            if price.on_lines:
                heappush(self._rough, _Place(price.cost, self._found, candidate, True))
            else:
                self._keep(price, candidate, self._found)
        self._next = next(self._coming, None)

    def _keep(self, price: Price, candidate: Candidate, number: int) -> None:
        if price.cost < math.inf:
            insort(self._places, _Place(price.cost, number, candidate, price.on_lines))

    def take(self, choice: Choice | None) -> None:
        """Stand in a place, or in none."""
        self.choice = choice
        self.footprint = None if choice is None else footprint(choice.candidate)

    def choose(self, labels: Iterable[_Label], limit: float = math.inf) -> None:
        """Take the cheapest place the other labels leave, none when that costs `limit` or more."""
        taken = Taken([one.footprint for one in labels if one is not self and one.footprint is not None])
        choice, least, number = None, limit, 0
        while (place := self.place(number, least)) is not None:
            cost = place.cost + taken.cost(place.candidate)
            if cost < least:
                choice, least = Choice(place.candidate, cost, place.on_lines), cost
            number += 1
        self.take(choice)


def place(labels: Sequence[Iterable[Batch]], paper: Field, passes: int = 1) -> list[Choice | None]:
    """Choose a candidate for each label, in the order given: the first has the widest choice.

    passes : how often all labels choose again, the others in place
    Returns the choices, None where no candidate is allowed.
    """
    waiting = [_Label(batches, paper) for batches in labels]
    for label in waiting:
        label.choose(waiting)
    for _ in range(passes):
        before = _places_of(waiting)
        for label in waiting:
            _choose_again(label, waiting)
        if _same(before, _places_of(waiting)):
            break
    return [label.choice for label in waiting]


def _choose_again(label: _Label, labels: Sequence[_Label]) -> None:
    """A better place with all others in place, made free if need be. Nothing to do when none has moved since."""
    now = _places_of(labels)
    if label.seen is not None and _same(label.seen, now):
        return
    before = label.choice
    if _cost(label.choice) > _CROWDED:
        _make_room(label, labels)
    if label.choice is before:
        label.choose(labels)
    label.seen = _places_of(labels)


def _places_of(labels: Iterable[_Label]) -> tuple[Candidate | None, ...]:
    return tuple(one.choice.candidate if one.choice is not None else None for one in labels)


def _same(before: Iterable[Candidate | None], now: Iterable[Candidate | None]) -> bool:
    return all(a is b for a, b in zip(before, now, strict=True))


def _make_room(label: _Label, labels: Sequence[_Label]) -> None:
    """Let a badly placed label take a place others hold, if all are better off when those choose again.

    Tries its best places, the others left out of account, but only the best of those the same others hold.
    """
    placed = [(one, Taken([one.footprint])) for one in labels if one is not label and one.footprint is not None]
    tried: list[list[_Label]] = []
    number = 0
    while len(tried) < _BEST_OF and (place := label.place(number, _cost(label.choice))) is not None:
        number += 1
        in_the_way = [other for other, taken in placed if taken.cost(place.candidate) == math.inf]
        if not 0 < len(in_the_way) <= _MOST_MOVED or tried.count(in_the_way) >= _EACH:
            continue
        if _moved(label, Choice(place.candidate, place.cost, place.on_lines), in_the_way, labels):
            return
        tried.append(in_the_way)


def _moved(label: _Label, choice: Choice, in_the_way: Sequence[_Label], labels: Sequence[_Label]) -> bool:
    """Take the place and let the others choose again; everything is put back when that costs more."""
    every = [label, *in_the_way]
    before = [one.choice for one in every]
    label.take(choice)
    for other in in_the_way:
        other.take(None)
    left = sum(_cost(one) for one in before) - choice.cost - 1e-9
    for other in in_the_way:
        other.choose(labels, left)
        left -= _cost(other.choice)
        if left <= 0:
            break
    else:
        return True
    for one, old in zip(every, before, strict=True):
        one.take(old)
    return False


def _cost(choice: Choice | None) -> float:
    """What a place costs; very much when there is none."""
    return _NO_PLACE if choice is None else choice.cost
