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
from collections.abc import Callable, Iterable, Iterator, Sequence
from typing import NamedTuple

from builder.drawing.box import Box
from builder.drawing.field import Field
from builder.drawing.label_cost import (
    Candidate,
    Footprint,
    Taken,
    Way,
    covering,
    footprint,
    full_cost,
    least_cost,
    runs_through,
)

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


_Place = tuple[float, int, Candidate, bool, bool]
"""A candidate's cost against the field, its number in the order found, itself, whether the cost is exact or only the
least it can be, and whether its text lies on lines. Sorts by cost, then number."""


class _Stand(NamedTuple):
    """Where a label stands: in no place without a choice.

    price     : of the place against the field alone
    footprint : what it takes
    met       : the candidates, by identity, of the labels placed when it chose
    """

    choice: Choice | None = None
    price: float = math.inf
    footprint: Footprint | None = None
    met: frozenset[int] = frozenset()


_NOWHERE = _Stand()


class _Label:
    """A label under way: its places so far, by cost, and the candidates still to come."""

    def __init__(self, ways: Iterable[Way], paper: Field) -> None:
        self._paper = paper
        self._coming: Iterator[Way] = iter(ways)
        self._next: Way | None = next(self._coming, None)
        self.places: list[_Place] = []
        self._found = 0
        self.seen: tuple[Candidate | None, ...] | None = None
        self.stand = _NOWHERE

    def next_place(self, at: int, limit: float, passed: Callable[[Box], bool]) -> int | None:
        """Where the first place not passed over stands, from the `at`-th on by cost. It is exact then.

        limit  : None when it would cost this or more
        passed : says of a text's box whether to pass its place over; most needn't be priced then
        """
        places = self.places
        while True:
            below = places[at][0] if at < len(places) else math.inf
            coming = self._next
            if coming is not None and coming[0] < below and coming[0] < limit:
                self._add(coming[1])
                self._next = next(self._coming, None)
                continue
            if below >= limit:
                return None
            cost, number, candidate, exact, on_lines = places[at]
            if passed(candidate.box):
                at += 1
            elif exact:
                return at
            else:
                del places[at]
                cost = full_cost(candidate, self._paper, on_lines)
                if cost < math.inf:
                    insort(places, (cost, number, candidate, True, on_lines))

    def _add(self, candidate: Candidate) -> None:
        self._found += 1
        least, on_lines = least_cost(candidate, self._paper)
        if least < math.inf:
            exact = not on_lines and not candidate.lines
            insort(self.places, (least, self._found, candidate, exact, on_lines))

    @property
    def choice(self) -> Choice | None:
        """The place it stands in, None for no place."""
        return self.stand.choice

    def choose(self, labels: Iterable[_Label], limit: float = math.inf) -> None:
        """Take the cheapest place the other labels leave, none when that costs `limit` or more."""
        others = [one.stand for one in labels if one is not self and one.choice is not None]
        taken = Taken([other.footprint for other in others if other.footprint is not None])
        met = frozenset([id(other.choice.candidate) for other in others if other.choice is not None])
        if self._stands_best(taken, met):
            return
        best, least, at = None, limit, self.next_place(0, limit, taken.covers)
        while at is not None:
            place = self.places[at]
            cost = place[0] + taken.lines_cost(place[2].lines)
            if cost < least:
                best, least = place, cost
            at = self.next_place(at + 1, least, taken.covers)
        self.stand = _Stand(met=met) if best is None else _standing(best, least, met)

    def _stands_best(self, taken: Taken, met: frozenset[int]) -> bool:
        """Is its place the best still?

        It is if those it was chosen beside haven't moved and no other has made it dearer.
        """
        choice, price, _, before = self.stand
        if choice is None or not before <= met:
            return False
        return price + taken.lines_cost(choice.candidate.lines) <= choice.cost


def _standing(place: _Place, cost: float, met: frozenset[int] = frozenset()) -> _Stand:
    price, _, candidate, _, on_lines = place
    return _Stand(Choice(candidate, cost, on_lines), price, footprint(candidate), met)


def place(labels: Sequence[Iterable[Way]], paper: Field, passes: int = 1) -> list[Choice | None]:
    """Choose a candidate for each label, in the order given: the first has the widest choice.

    passes : how often all labels choose again, the others in place
    Returns the choices, None where no candidate is allowed.
    """
    waiting = [_Label(ways, paper) for ways in labels]
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
    if label.seen is not None and _same(label.seen, _places_of(labels)):
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

    Tries its best places, the others left out of account, but only some of those the same others hold.
    """
    others = [one for one in labels if one is not label and one.choice is not None]
    placed = [one.stand.footprint for one in others if one.stand.footprint is not None]
    tried: list[list[int]] = []

    def hopeless(box: Box) -> bool:
        covered = covering(box, placed)
        return len(covered) > _MOST_MOVED or tried.count(covered) >= _EACH

    at = label.next_place(0, _cost(label.choice), hopeless)
    while at is not None and len(tried) < _BEST_OF:
        place = label.places[at]
        in_the_way = _in_the_way(place[2], placed)
        if 0 < len(in_the_way) <= _MOST_MOVED and tried.count(in_the_way) < _EACH:
            if _moved(label, place, [others[number] for number in in_the_way], labels):
                return
            tried.append(in_the_way)
        at = label.next_place(at + 1, _cost(label.choice), hopeless)


def _in_the_way(candidate: Candidate, placed: Sequence[Footprint]) -> list[int]:
    """The numbers of the labels that would have to make room."""
    found = covering(candidate.box, placed)
    through = [number for number, one in enumerate(placed) if runs_through(candidate.lines, one)]
    return sorted({*found, *through}) if through else found


def _moved(label: _Label, place: _Place, in_the_way: Sequence[_Label], labels: Sequence[_Label]) -> bool:
    """Take the place and let the others choose again; everything is put back when that costs more."""
    every = [label, *in_the_way]
    before = [one.stand for one in every]
    label.stand = _standing(place, place[0])
    for other in in_the_way:
        other.stand = _NOWHERE
    left = sum(_cost(stand.choice) for stand in before) - place[0] - 1e-9
    for other in in_the_way:
        other.choose(labels, left)
        left -= _cost(other.choice)
        if left <= 0:
            break
    else:
        return True
    for one, stand in zip(every, before, strict=True):
        one.stand = stand
    return False


def _cost(choice: Choice | None) -> float:
    """What a place costs; very much when there is none."""
    return _NO_PLACE if choice is None else choice.cost
