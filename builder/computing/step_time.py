"""Basic time of each step of an operation: study readings first, then the machine model and the typed hand work.

At a station the operator paces, a reading covers the whole step. At one that paces itself, a reading of a step the
machine does is the machine's run, never rated, and the hand work beside it is what `time:` says.

Readings taken under other conditions keep their manual part; the machine's is scaled by model(now) ÷ model(then), and
all of it counts as estimated until it is studied anew. Source: ours.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from builder.computing.element_time import element_part
from builder.computing.machine_run import machine_run
from builder.computing.step_bench import Bench
from builder.model import NO_SOURCE, Beyond, Estimate, Step, StepStudy, StepTime, TimePart

Sourced = tuple[TimePart, str]
"""A part of a step's time, and the word for where it comes from."""


def step_times(bench: Bench) -> Iterator[StepTime]:
    """Times of all steps in their order."""
    for step in bench.operation.steps:
        yield _step_time(step, bench)


def self_paced_steps(bench: Bench) -> frozenset[str]:
    """Steps whose readings are the machine's own run and are never rated."""
    if bench.kind.paced != "machine":
        return frozenset()
    return frozenset(step.step for step in bench.operation.steps if machine_run(step, bench) is not None)


def _step_time(step: Step, bench: Bench) -> StepTime:
    share = bench.share(step)
    run = machine_run(step, bench)
    study = bench.summary.step(step.step) if bench.summary is not None else None
    hand, beyond = _hand(step, bench)
    if study is None:
        found = [*hand, *_modelled(run, bench)]
    else:
        each = study.basic_s / study.rows_a_cycle if share > 1 else study.basic_s
        found = _read(step, study, each, run, bench)
        if bench.kind.paced == "machine" and run is not None:
            found += hand
    parts = tuple(part for part, _ in found)
    words = tuple(dict.fromkeys(word for _, word in found))
    counts = any(part is one for part, _ in hand for one in parts)
    changed = "carried over" in words or "stale" in words
    return StepTime(
        step.step,
        _sum(part for part in parts if not part.run),
        _sum(part for part in parts if part.run),
        _sum(part for part in parts if not part.run and part.estimated),
        _sum(part for part in parts if part.run and part.estimated),
        share,
        " + ".join(words) or NO_SOURCE,
        study.n if study is not None else 0,
        step.during or "",
        None if changed else run,
        parts,
        math.fsum(part.seconds for part, _ in hand) if hand else None,
        beyond if counts else None,
    )


def _sum(parts: Iterator[TimePart]) -> float:
    return math.fsum(part.seconds for part in parts)


def _read(step: Step, study: StepStudy, each: float, run: float | None, bench: Bench) -> list[Sourced]:
    """A studied step: what was read, and what has changed of the machine's part since."""
    self_paced = bench.kind.paced == "machine" and run is not None
    source = f"study:{bench.name}/{step.step}"
    if bench.stale:
        return [(TimePart(source, each, bench.sure.of_guess(each), self_paced, True), "stale")]
    error = bench.sure.of_study(study, each)
    then = machine_run(step, bench.then) if bench.then is not None else None
    if not then or run is None or math.isclose(then, run, rel_tol=1e-9):
        return [(TimePart(source, each, error, self_paced), "study")]
    machine = each if self_paced else min(then, each)
    change = machine * (run / then - 1)
    scaled = TimePart(
        f"model:{bench.operation.station}", change, bench.sure.of_model(bench.station, change), self_paced, True
    )
    return [(TimePart(source, each, error, self_paced, True), "study"), (scaled, "carried over")]


def _modelled(run: float | None, bench: Bench) -> Sequence[Sourced]:
    if run is None:
        return ()
    error = bench.sure.of_model(bench.station, run)
    part = TimePart(f"model:{bench.operation.station}", run, error, True, bench.station.pace.calibrated is None)
    return ((part, "model"),)


def _hand(step: Step, bench: Bench) -> tuple[Sequence[Sourced], Beyond | None]:
    """Hand work of a step as its `time:` says, and where its element was timed with other work."""
    if step.time is None:
        return (), None
    if isinstance(step.time, Estimate):
        seconds = float(step.time.seconds)
        source = f"estimate:{bench.name}/{step.step}"
        return ((TimePart(source, seconds, bench.sure.of_estimate(step.time), False, True), "estimate"),), None
    part, beyond = element_part(step, step.time, bench)
    return ((part, "element"),) if part is not None else (), beyond
