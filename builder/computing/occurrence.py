"""How often what is not done at each piece comes: a bobbin, a cone, a needle, a sheet, a bundle, a batch.

A standard takes the steady rate, 1/N for once in N pieces, so that it doesn't hang on the batch. A batch's work takes
whole occurrences. The two agree within one.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from fractions import Fraction

from builder.computing.machine_run import machine_run
from builder.computing.sewn_thread import SewnThread, all_thread, thread_names
from builder.computing.step_bench import Bench
from builder.model import Per

_PRECISE = 10**9
# Two equal computations differ in the last digit; a whole number of pieces missed by that little is reached.
_SAME = 1e-9


def occurrences(pieces: int, every: Fraction, from_full: bool = False) -> int:
    """How often it comes in a batch: ⌈pieces / every⌉, a started bundle, sheet or bobbin counted whole.

    every     : pieces from one to the next, > 0
    from_full : the first is at hand when the batch begins, as a full bobbin is, so that one change fewer is made
    Raises ValueError for pieces < 0 or every <= 0. Source: ours.

    >>> occurrences(300, Fraction(13), from_full=True)
    23
    """
    if pieces < 0 or every <= 0:
        raise ValueError("a batch has 0 pieces or more, and something comes once in more than 0")
    found = math.ceil(pieces / every)
    return max(found - 1, 0) if from_full else found


def pieces_a_bobbin(holds_mm: float, left_mm: float, use_mm: float, inside_a_piece: bool) -> Fraction | None:
    """Pieces a bobbin does: ⌊(holds - left)/use⌋, or the quotient where it may be changed inside a piece.

    use_mm : thread a piece takes from it, > 0
    None when it can't do a whole piece. Source: ours.

    >>> pieces_a_bobbin(27000, 1500, 1894, False)
    Fraction(13, 1)
    """
    pieces = (holds_mm - left_mm) / use_mm
    if not inside_a_piece:
        pieces = math.floor(pieces + _SAME)
    return _exact(pieces) if pieces > 0 else None


def lots_of(bench: Bench, runs_a_batch: Fraction, sewn: tuple[SewnThread, ...]) -> dict[Per, Fraction]:
    """How many runs of an operation each lot has that its steps are done once for; what can't be known is left out.

    runs_a_batch : runs in the batch the time is meant for; sewn : the operation's thread in this size
    """
    wanted = {step.per.per for step in bench.operation.steps if step.per is not None}
    found: dict[Per, Fraction] = {
        "batch": runs_a_batch,
        "bundle": Fraction(bench.operation.bundle or bench.model.plant.bundle),
    }
    if bench.operation.pieces_a_sheet is not None:
        found["sheet"] = Fraction(bench.operation.pieces_a_sheet)
    if "bobbin" in wanted and (bobbin := _bobbin(bench, sewn)) is not None:
        found["bobbin"] = bobbin
    if "cone" in wanted and (cone := _cone(bench, sewn)) is not None:
        found["cone"] = cone
    # Last, because the runs it adds up may come once in one of the others.
    if "needle" in wanted and (needle := _needle(bench, found)) is not None:
        found["needle"] = needle
    return found


def _bobbin(bench: Bench, sewn: tuple[SewnThread, ...]) -> Fraction | None:
    """Of several bobbins that sew their rows in one pass, one: they are changed together."""
    names = thread_names(bench.model, bench.name)
    bobbin = bench.station.bobbins.get(names[1]) if names is not None else None
    use = all_thread(sewn, a_row=True)
    if bobbin is None or use is None or use.under[1] <= 0 or not bench.has_bobbin:
        return None
    left = float(bobbin.left.value) if bobbin.left is not None else 0.0
    # Where texts differ the higher figure counts: a bobbin must never run out before its number.
    return pieces_a_bobbin(float(bobbin.holds.value), left, use.under[1], bobbin.inside_a_piece)


def _cone(bench: Bench, sewn: tuple[SewnThread, ...]) -> Fraction | None:
    """Cones of needle and looper threads, each counted on its own; bobbins are wound elsewhere."""
    names, use = thread_names(bench.model, bench.name), all_thread(sewn)
    if names is None or use is None:
        return None
    rate = 0.0
    for material, length in ((names[0], use.needle[1]), (names[1], 0.0 if bench.has_bobbin else use.under[1])):
        cone = bench.model.materials[material].cone
        if length > 0 and (cone is None or cone.value == 0):
            return None
        rate += length / float(cone.value) if cone is not None and length > 0 else 0.0
    return _exact(1 / rate) if rate > 0 else None


def _needle(bench: Bench, lots: dict[Per, Fraction]) -> Fraction | None:
    hours = bench.station.needle_hours
    run = sum(_sewing(bench, lots))
    return _exact(float(hours.value) / run) if hours is not None and hours.value > 0 and run > 0 else None


def _sewing(bench: Bench, lots: dict[Per, Fraction]) -> Iterator[float]:
    """Seconds the machine runs for each step in one run of the operation; a step once a needle is not asked."""
    for step in bench.operation.steps:
        if step.per is None or step.per.per != "needle":
            share = step.per.share(lots) if step.per is not None else Fraction(1)
            yield float(share) * (machine_run(step, bench) or 0.0)


def _exact(value: float) -> Fraction:
    return Fraction(value).limit_denominator(_PRECISE)
