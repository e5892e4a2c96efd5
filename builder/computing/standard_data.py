"""The plant's own standard data: element times derived from the readings of its studies, as they are now.

Only readings are used, never a time that rests on an element, so no circle is possible.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass, replace
from fractions import Fraction

from builder.computing.line_fit import fit_line, fit_refusal, fitted
from builder.computing.machine_run import machine_run
from builder.computing.pooling import pooled
from builder.computing.spread import mean, sample_sd
from builder.computing.step_bench import Bench
from builder.computing.step_extent import step_extent
from builder.model import OUT, Element, ElementData, ElementStep, ElementUse, Fit, Refusal, Step, StepStudy, StudyStep


@dataclass(frozen=True, slots=True)
class _Read:
    """A step with its readings, for the element done once [s]; none where they can't count."""

    step: ElementStep
    values: tuple[float, ...] = ()


def standard_data(
    elements: Mapping[str, Element], benches: Mapping[str, Bench], blind: Collection[str], confidence: float
) -> dict[str, ElementData]:
    """What the studies say of each derived element.

    benches : by study, the operation it was taken at, with what the study says
    blind   : studies of operations that have errors; what they lack is not judged
    """
    return {
        name: element_data(name, element, benches, blind, confidence)
        for name, element in elements.items()
        if element.derived
    }


def element_data(
    name: str, element: Element, benches: Mapping[str, Bench], blind: Collection[str], confidence: float
) -> ElementData:
    """One element from the readings of the steps it names."""
    variables = element.varies_with
    found = [_read(name, one, variables, benches) for one in element.from_ if one.study not in blind]
    used = [one for one in found if not one.step.why]
    data = ElementData(
        name,
        variables,
        tuple(one.step for one in used),
        tuple(one.step for one in found if one.step.why),
        blind=any(one.study in blind for one in element.from_),
    )
    if not used:
        return replace(data, refusal=Refusal("no readings"))
    if not variables:
        return replace(data, pooled=pooled([one.values for one in used], confidence))
    return _fitted(data, confidence)


def _fitted(data: ElementData, confidence: float) -> ElementData:
    rows = [tuple(step.variable(name) or 0.0 for name in data.varies_with) for step in data.steps]
    if (refusal := fit_refusal(rows, data.varies_with)) is not None:
        return replace(data, refusal=refusal)
    times, weights = [step.seconds for step in data.steps], [float(step.n) for step in data.steps]
    fit = fit_line(rows, times, weights, data.varies_with, confidence)
    if min(fitted(fit, corner) for corner in _corners(fit)) <= 0:
        return replace(data, refusal=Refusal("not above zero"))
    return replace(data, fit=fit)


def _corners(fit: Fit) -> Iterator[tuple[float, ...]]:
    """The ends of the ranges in all pairings; a line is least and most at one of them."""
    ends: list[tuple[float, ...]] = [()]
    for span in fit.ranges:
        ends = [(*row, end) for row in ends for end in span]
    yield from ends


def _read(name: str, one: StudyStep, variables: Collection[str], benches: Mapping[str, Bench]) -> _Read:
    bench = benches.get(one.study)
    step = _step(one.step, bench) if bench is not None else None
    if bench is None or step is None:
        return _left_out(one, "no operation")
    at = bench.then or bench
    if bench.stale:
        return _left_out(one, "other work")
    if machine_run(step, at) is not None:
        return _left_out(one, "machine run")
    study = bench.summary.step(one.step) if bench.summary is not None else None
    if study is None:
        return _left_out(one, "left out")
    extent = step_extent(step, at)
    if any(extent.of(variable) is None for variable in variables):
        return _left_out(one, "no length")
    values = element_values(study, _times(name, step), bench.share(step))
    read = ElementStep(
        one.study, one.step, mean(values), sample_sd(values), len(values), extent.length_mm, extent.corners
    )
    return _Read(read, values)


def element_values(study: StepStudy, count: int, share: Fraction) -> tuple[float, ...]:
    """The readings of a step that count, for an element done `count` times each time the step is done [s].

    share : how often the step is done a piece; above 1, a cycle's value adds several of them up
    """
    times = count * (study.rows_a_cycle if share > 1 else 1.0)
    return tuple(value.basic_s / times for value in study.values if value.state != OUT)


def _left_out(one: StudyStep, why: str) -> _Read:
    return _Read(ElementStep(one.study, one.step, 0.0, None, 0, why=why))


def _step(name: str, bench: Bench) -> Step | None:
    return next((step for step in bench.operation.steps if step.step == name), None)


def _times(element: str, step: Step) -> int:
    """How often a step does the element each time it is done: 2 where its file says `2 x ELEMENT`."""
    return step.time.count if isinstance(step.time, ElementUse) and step.time.name == element else 1
