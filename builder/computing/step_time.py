"""Basic time of each step of an operation: study readings first, then the machine model and the typed hand work.

At a station the operator paces, a reading covers the whole step. At one that paces itself, a reading of a step the
machine does is the machine's run, never rated, and the hand work beside it is what `time:` says.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction

from builder.computing.machine_run import machine_run
from builder.computing.step_bench import Bench
from builder.computing.study_time import basic_time
from builder.model import (
    EACH_PIECE,
    NO_SOURCE,
    Estimate,
    Step,
    StepTime,
)


def step_times(bench: Bench) -> Iterator[StepTime]:
    """Times of all steps in their order."""
    for step in bench.operation.steps:
        yield _step_time(step, bench)


def _step_time(step: Step, bench: Bench) -> StepTime:
    plant = bench.model.plant
    bundle = bench.operation.bundle or plant.bundle
    share = (step.per or EACH_PIECE).share(plant.batch, bundle)
    run = modelled = machine_run(step, bench)
    hand, hand_estimated, hand_source = _hand(step, bench)
    study = bench.model.study_of(bench.name)
    readings = study.of_step(step.step) if study is not None else ()
    run_estimated = run if run and bench.station.pace.calibrated is None else 0.0
    sources = [source for source in (hand_source, "model" if run is not None else "") if source]
    if readings:
        self_paced = bench.kind.paced == "machine" and modelled is not None
        basic = float(basic_time([(r.seconds, r.rating) for r in readings], rated=not self_paced))
        if bench.studied is not None and (then := machine_run(step, replace(bench, values=bench.studied))):
            return _carried_over(step, bench, basic, then, share, len(readings))
        if self_paced:
            run, run_estimated = basic, 0.0
            sources = ["study", *([hand_source] if hand_source else [])]
        else:
            hand, hand_estimated, run, run_estimated, sources = basic, 0.0, None, 0.0, ["study"]
    return StepTime(
        step.step,
        hand,
        run or 0.0,
        hand_estimated,
        run_estimated,
        share,
        " + ".join(sources) or NO_SOURCE,
        len(readings),
        step.during or "",
        modelled,
    )


def _carried_over(step: Step, bench: Bench, basic: float, then: float, share: Fraction, readings: int) -> StepTime:
    """Readings taken with other dimensions: the manual part is kept, the machine's scaled by model(new)/model(then).

    basic : basic time of the readings [s]; then : the model's run for the dimensions of the study [s]
    All of it counts as estimated until the new dimensions are studied. Source: ours.
    """
    now = machine_run(step, bench) or 0.0
    if bench.kind.paced == "machine":
        hand, hand_estimated, source = _hand(step, bench)
        run = basic * now / then
        sources = " + ".join(one for one in ("study", "carried over", source) if one)
        return StepTime(step.step, hand, run, hand_estimated, run, share, sources, readings, step.during or "")
    machine = min(then, basic)
    seconds = basic - machine + machine * now / then
    return StepTime(step.step, seconds, 0.0, seconds, 0.0, share, "study + carried over", readings, step.during or "")


def _hand(step: Step, bench: Bench) -> tuple[float, float, str]:
    """Hand work of a step as typed: seconds, seconds that are estimated, source."""
    if step.time is None:
        return 0.0, 0.0, ""
    if isinstance(step.time, Estimate):
        seconds = float(step.time.seconds)
        return seconds, seconds, "estimate"
    element = bench.model.elements.get(step.time.name)
    if element is None:
        return 0.0, 0.0, ""
    seconds = float(step.time.count * element.time.value)
    return seconds, seconds if element.basis == "estimate" else 0.0, "element"
