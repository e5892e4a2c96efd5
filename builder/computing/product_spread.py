"""Interval of a product's standard time. Times from one source err together, sources err independently.

Variance = Σ_source (Σ_uses quantity × error)²: element by element, not operation by operation. Source: ours.
"""

from __future__ import annotations

import math
from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from builder.computing.operation_time import attendance_share
from builder.computing.spread import recommended_cycles, z_quantile
from builder.computing.sureness import RANGE_CONFIDENCE
from builder.model import (
    MachineKind,
    NextStudy,
    OperationTime,
    Precision,
    Spread,
    SpreadPart,
    Station,
    StudySummary,
    TimePart,
)

ALLOWANCES, RATINGS = "allowances", "ratings"
_LEAST_GAIN = 0.005


@dataclass(frozen=True, slots=True)
class RouteShare:
    """An operation on a route, as the interval needs it.

    labour_min : standard minutes of labour for a finished piece; cycle_min: of one run
    parts      : pieces of those minutes by their source, with their error [min]
    """

    operation: str
    labour_min: float
    cycle_min: float
    parts: tuple[SpreadPart, ...]


def labour_parts(
    time: OperationTime,
    station: Station,
    kind: MachineKind,
    quantity: float,
    rating_error: float = 0.0,
    allowance_error: float = 0.0,
) -> tuple[SpreadPart, ...]:
    """What a finished piece's labour at an operation is made of, by source, allowances spread over all of it.

    Of a run and the work inside it, whichever the operator owes counts, as in `operation_time`.
    rating_error    : one standard deviation of all ratings together, as a share; observers err alike in all studies
    allowance_error : the same of the allowances, as a share of what they add; 0 for a plant that holds them for decided
    """
    attended = attendance_share(station, kind)
    found: dict[tuple[str, bool], list[float]] = defaultdict(lambda: [0.0, 0.0])
    for part, weight in _weighted(time, attended):
        sums = found[part.source, part.estimated]
        sums[0] += weight * part.seconds
        sums[1] += weight * part.error_s
        if rating_error and not part.run and (part.rated or part.source.startswith("study:")):
            found[RATINGS, False][1] += weight * part.seconds * rating_error
    basic = math.fsum(seconds for seconds, _ in found.values())
    if allowance_error:
        found[ALLOWANCES, False][1] = (
            max(time.labour_min * 60 - basic, 0.0) * basic / (time.labour_min * 60) * allowance_error
        )
    scale = quantity * time.labour_min / basic if basic > 0 else 0.0
    return tuple(
        SpreadPart(source, scale * seconds, scale * error, 0.0, estimated)
        for (source, estimated), (seconds, error) in found.items()
    )


def _weighted(time: OperationTime, attended: float) -> Iterator[tuple[TimePart, float]]:
    """Parts of the steps that count as labour, with how often a run they do."""
    for step in time.steps:
        often = float(step.share)
        inner = [one for one in time.steps if one.during == step.step]
        inside = math.fsum(float(one.share) * one.hand_s for one in inner)
        works_inside = inside > attended * often * step.run_s
        for part in step.parts:
            if part.run and not works_inside:
                yield part, often * attended
            elif not part.run and not step.during:
                yield part, often
        if works_inside:
            yield from ((part, float(one.share)) for one in inner for part in one.parts if not part.run)


def product_spread(route: Sequence[RouteShare], studies: Mapping[str, StudySummary], precision: Precision) -> Spread:
    """The interval of a route's standard minutes and what to time next."""
    total = math.fsum(line.labour_min for line in route)
    gathered = _by_source(route)
    variance = math.fsum(one.error_min**2 for one in gathered.values())
    half = z_quantile(RANGE_CONFIDENCE) * math.sqrt(variance)
    parts = sorted((_shared(one, variance) for one in gathered.values()), key=lambda one: (-one.error_min, one.source))
    sure = math.fsum(one.error_min**2 for one in gathered.values() if not one.estimated)
    narrower = 1 - math.sqrt(sure / variance) if variance > 0 else 0.0
    following = tuple(_following(route, gathered, studies, precision))
    return Spread(total - half, total + half, RANGE_CONFIDENCE, tuple(parts), narrower, following)


def _by_source(route: Sequence[RouteShare]) -> dict[str, SpreadPart]:
    found: dict[str, SpreadPart] = {}
    for line in route:
        for part in line.parts:
            before = found.get(part.source, SpreadPart(part.source, 0.0, 0.0, 0.0, part.estimated))
            found[part.source] = SpreadPart(
                part.source,
                before.minutes + part.minutes,
                before.error_min + part.error_min,
                0.0,
                before.estimated or part.estimated,
            )
    return found


def _shared(one: SpreadPart, variance: float) -> SpreadPart:
    share = one.error_min**2 / variance if variance > 0 else 0.0
    half = z_quantile(RANGE_CONFIDENCE) * one.error_min
    return SpreadPart(one.source, one.minutes, one.error_min, share, one.estimated, half)


def _following(
    route: Sequence[RouteShare],
    gathered: Mapping[str, SpreadPart],
    studies: Mapping[str, StudySummary],
    precision: Precision,
) -> list[NextStudy]:
    """Operations whose study would narrow the interval, most variance a minute of study first.

    How observers rate and what is allowed are no matter of one more study, so their variance is left aside.

    After it the operation's minutes rest on readings that keep the plant's precision. Cycles: those its study still
    lacks, or for work never timed the number recommended for so long a cycle.
    """
    narrowable = {source: one.error_min for source, one in gathered.items() if source not in (RATINGS, ALLOWANCES)}
    variance = math.fsum(error**2 for error in narrowable.values())
    found = []
    for line in _once(route):
        mine = [part for part in line.parts if part.source in narrowable]
        left = math.fsum((narrowable[part.source] - part.error_min) ** 2 for part in mine)
        now = math.fsum(narrowable[part.source] ** 2 for part in mine)
        after = (precision.within / z_quantile(precision.confidence) * line.labour_min) ** 2
        gain = (now - left - after) / variance if variance > 0 else 0.0
        cycles = _cycles(line, studies)
        if gain > _LEAST_GAIN and cycles:
            found.append(NextStudy(line.operation, cycles, cycles * line.cycle_min, gain))
    return sorted(found, key=lambda one: (-one.gain / one.minutes, one.operation))


def _once(route: Sequence[RouteShare]) -> Iterator[RouteShare]:
    """An operation that stands on a route several times is studied once."""
    lines: dict[str, list[RouteShare]] = {}
    for line in route:
        lines.setdefault(line.operation, []).append(line)
    for operation, several in lines.items():
        parts = tuple(_by_source(several).values())
        minutes = math.fsum(line.labour_min for line in several)
        yield RouteShare(operation, minutes, several[0].cycle_min, parts)


def _cycles(line: RouteShare, studies: Mapping[str, StudySummary]) -> int:
    study = studies.get(line.operation)
    estimated = any(
        part.estimated or not part.source.startswith(("study:", RATINGS, ALLOWANCES)) for part in line.parts
    )
    fresh = recommended_cycles(line.cycle_min) if estimated and line.cycle_min > 0 else 0
    return max([fresh, *(step.more_needed for step in study.steps)] if study is not None else [fresh])
