"""A study's readings to what they say: one value a cycle, its mean and spread, what is odd, what is still needed."""

from __future__ import annotations

import math
from collections.abc import Collection, Iterator, Sequence

from builder.computing.learning import fit_learning
from builder.computing.spread import (
    OUTLIER_Z,
    drift_z,
    interval,
    mean,
    modified_z,
    readings_normal,
    readings_root,
    readings_t_iterated,
    readings_t_pilot,
    sample_sd,
    z_quantile,
)
from builder.model import (
    FLAGGED,
    KEPT,
    OUT,
    CycleValue,
    ForeignElement,
    Precision,
    Reading,
    StepStudy,
    Study,
    StudySummary,
)

DRIFT_CONFIDENCE = 0.95
"""A trend is told where chance alone would show one as strong in 5 of 100 studies, two-sided."""


def summarise(study: Study, precision: Precision, self_paced: Collection[str] = ()) -> StudySummary:
    """All that a study says. `self_paced`: steps whose readings are never rated."""
    foreign = tuple(
        ForeignElement(one.cycle, float(one.seconds), one.note, one.place.line) for one in study.readings if one.foreign
    )
    steps = tuple(
        found
        for step, readings in study.by_step().items()
        if (found := step_study(step, readings, precision, step not in self_paced)) is not None
    )
    cycles = {one.cycle for one in study.readings if one.cycle and not one.foreign}
    pieces = tuple(_pieces(study, steps)) if len({one.date for one in study.readings}) > 1 else ()
    learning = fit_learning(pieces, precision.confidence) if pieces else None
    return StudySummary(study.name, steps, foreign, len(cycles), learning, pieces)


def _pieces(study: Study, steps: Sequence[StepStudy]) -> Iterator[tuple[float, float]]:
    """Whole cycles by the number of their piece, as timed: a rating would take away what was learnt.

    The cycle's number is that of the piece, so it is whole, above 0 and met once; the steps are those read in every
    cycle that counts. Nothing where two operators worked, because each learns alone.
    """
    if len({one.operator for one in study.readings}) > 1:
        return
    kept = [{one.cycle: one.seconds for one in step.values if one.state != OUT} for step in steps]
    most = max((len(one) for one in kept), default=0)
    regular = [one for one in kept if len(one) >= REGULAR_SHARE * most]
    for cycle in regular[0] if regular else ():
        if cycle.isdecimal() and int(cycle) > 0 and all(cycle in one for one in regular):
            yield float(cycle), math.fsum(one[cycle] for one in regular)


REGULAR_SHARE = 0.8
"""A step read in so many of the cycles belongs to each of them; another is occasional. Common practice, no source."""


def step_study(step: str, readings: Sequence[Reading], precision: Precision, rated: bool) -> StepStudy | None:
    """What the readings of one step say; None when none of them counts."""
    values = _flagged(list(cycle_values(readings, rated)))
    counted = [one for one in values if one.state != OUT]
    if not counted:
        return None
    timed, basic = [one.seconds for one in counted], [one.basic_s for one in counted]
    centre, sd = mean(timed), sample_sd(timed)
    basic_mean, basic_sd = mean(basic), sample_sd(basic)
    needed = readings_needed(basic, precision)
    drift = drift_z(basic)
    return StepStudy(
        step=step,
        values=tuple(values),
        n=len(counted),
        mean_s=centre,
        sd_s=sd,
        variation=None if sd is None else sd / centre,
        rating=mean([one.rating for one in counted]),
        basic_s=basic_mean,
        basic_sd_s=basic_sd,
        interval_s=interval(basic_mean, basic_sd, len(counted), precision.confidence),
        needed=needed,
        more_needed=1 if needed is None else max(0, needed - len(counted)),
        method=precision.method,
        drift=drift,
        drifts=drift is not None and abs(drift) > z_quantile(DRIFT_CONFIDENCE),
        comparable=modified_z(basic) is not None,
        rated=rated,
        rows_a_cycle=sum(one.rows for one in counted) / len(counted),
    )


def readings_needed(basic_s: Sequence[float], precision: Precision) -> int | None:
    """Readings needed in all for a plant's precision, rounded up; None for a single value.

    Forms: `t iterated` (smallest n that suffices), `t pilot`, `normal`, `40 root` (± 5 %, two standard deviations;
    for another share the factor is 2 ÷ share). See formulas in `spread`.
    """
    sd = sample_sd(basic_s)
    if sd is None:
        return None
    centre, within, confidence = mean(basic_s), precision.within, precision.confidence
    if precision.method == "t iterated":
        return readings_t_iterated(centre, sd, within, confidence)
    if precision.method == "t pilot":
        found = readings_t_pilot(centre, sd, len(basic_s), within, confidence)
    elif precision.method == "normal":
        found = readings_normal(centre, sd, within, z_quantile(confidence))
    elif precision.method == "40 root":
        found = readings_root(basic_s, 2 / within)
    else:
        raise ValueError(f"no form of readings needed is called {precision.method}")
    return math.ceil(round(found, 9))


def cycle_values(readings: Sequence[Reading], rated: bool) -> Iterator[CycleValue]:
    """One value a cycle: occurrences of the step in it are added. A cycle with one left out is left out whole.

    A reading without a number of its cycle stands for itself. Order: as the cycles first appear.
    """
    cycles: dict[object, list[Reading]] = {}
    for number, reading in enumerate(readings):
        key = (reading.date, reading.operator, reading.cycle) if reading.cycle else number
        cycles.setdefault(key, []).append(reading)
    for number, rows in enumerate(cycles.values(), start=1):
        yield _value(number, rows, rated)


def _value(number: int, rows: list[Reading], rated: bool) -> CycleValue:
    first = rows[0]
    seconds, rating = float(first.seconds), float(first.rating)
    basic = seconds * rating / 100
    if len(rows) > 1:
        seconds = math.fsum(float(one.seconds) for one in rows)
        basic = math.fsum(float(one.seconds) * float(one.rating) / 100 for one in rows)
        rating = basic / seconds * 100
    return CycleValue(
        number=number,
        cycle=first.cycle,
        seconds=seconds,
        basic_s=basic if rated else seconds,
        rating=rating,
        state=OUT if any(one.out for one in rows) else KEPT,
        note="; ".join(one.note for one in rows if one.note),
        date=first.date,
        operator=first.operator,
        line=first.place.line,
        rows=len(rows),
    )


def _flagged(values: list[CycleValue]) -> list[CycleValue]:
    """The values with their modified z among those that count; beyond OUTLIER_Z they are flagged and still count."""
    scores = modified_z([one.basic_s for one in values if one.state != OUT])
    if scores is None:
        return values
    following = iter(scores)
    return [one if one.state == OUT else _scored(one, next(following)) for one in values]


def _scored(one: CycleValue, z: float) -> CycleValue:
    # Written out, because `replace` costs more than all the rest of a reading.
    state = FLAGGED if abs(z) > OUTLIER_Z else KEPT
    return CycleValue(
        one.number,
        one.cycle,
        one.seconds,
        one.basic_s,
        one.rating,
        state,
        one.note,
        one.date,
        one.operator,
        one.line,
        z,
        one.rows,
    )
