"""Where the arrowheads of the sewing direction stand: mid-run, clear of each other and of crossing runs."""

from __future__ import annotations

import math
from collections.abc import Sequence

from builder.drawing import look
from builder.drawing.box import Box
from builder.drawing.nearness import distance
from builder.drawing.run import Run, Walk, smooth_stretches
from builder.drawing.svg import XY

_LEAST_RUN = 8.0
_SHORT_RUN = 4.5
_PER_ARROW = 48.0
_APART = 3.2
_CLEAR_OF_RUN = 1.9
_SHIFTS = (0.0, 0.1, -0.1, 0.16, -0.16, 0.22, -0.22, 0.28, -0.28)


def direction_arrows(route: Sequence[Run], blocked: Sequence[Box]) -> list[tuple[XY, XY]]:
    """Middle and direction of each arrowhead along a route.

    Every run of 8 mm and more has one, every 48 mm of a long run another; on a route of shorter runs the
    longest has one. A run sewn twice the same way is marked once.
    """
    runs = _each_way_once(smooth_stretches(route))
    long = [run for run in runs if run.length >= _LEAST_RUN]
    if not long and runs:
        longest = max(runs, key=lambda run: run.length)
        long = [longest] if longest.length >= _SHORT_RUN else []
    found: list[tuple[XY, XY]] = []
    for run in long:
        walk = run.walk
        others = [other for other in runs if other is not run and not _same(run, other, back=True)]
        count = max(1, round(walk.length / _PER_ARROW))
        for number in range(count):
            shares = [(number + 0.5 + shift) / count for shift in _SHIFTS]
            place = _clear_place(walk, shares, others, [at for at, _ in found], blocked)
            if place is not None:
                found.append(place)
    return found


def _each_way_once(runs: Sequence[Run]) -> list[Run]:
    found: list[Run] = []
    for run in runs:
        if not any(_same(run, other) for other in found):
            found.append(run)
    return found


def _same(a: Run, b: Run, back: bool = False) -> bool:
    """Do two runs lie on each other, or with `back` one on the other's way back?"""
    return all(math.dist(a.at(share)[0], b.at(1 - share if back else share)[0]) < 0.2 for share in (0.0, 0.5, 1.0))


def _clear_place(
    walk: Walk, shares: Sequence[float], others: Sequence[Run], arrows: Sequence[XY], blocked: Sequence[Box]
) -> tuple[XY, XY] | None:
    """The first place clear of everything, else the first clear of symbols and other arrows."""
    second_best = None
    for share in shares:
        point, way = walk.at(walk.length * share)
        if any(math.dist(point, other) < _APART for other in arrows):
            continue
        if any(box.grown(look.ARROW_LENGTH / 2).holds(point) for box in blocked):
            continue
        if all(distance(point, run.pieces) >= _CLEAR_OF_RUN for run in others):
            return point, way
        second_best = second_best or (point, way)
    return second_best
