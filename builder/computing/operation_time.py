"""Standard time of an operation: labour and machine apart, by the station's attendance.

    basic   = outside + Σ max(inside, share × run)
    labour  = (basic × (F + r) − rested) × (1 + policy)
    machine = outside × (F + r) − rested (if the machine waits) + run (× (F + r) where the operator paces it)

Of each machine step's run the operator owes `share`, and what is done inside that run costs no labour beyond it.
Where the operator paces the machine, share is 1. F, r and policy: allowance.py. `rested` is 0 but where the station
says `rest inside: yes`. Source: ours, after work-study texts.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from builder.computing.allowance import StationAllowance
from builder.computing.relaxation import rest_in_spell
from builder.model import MachineKind, OperationTime, Station, StepTime


def attendance_share(station: Station, kind: MachineKind) -> float:
    """Share of the machine's time the operator owes: 1 for constant, the typed share in sight, 0 for free."""
    if kind.paced != "machine" or station.attendance == "constant":
        return 1.0
    if station.attendance == "free":
        return 0.0
    return float(station.share) if station.share is not None else 1.0


def labour(outside: float, inside_by_run: Sequence[tuple[float, float]], share: float) -> float:
    """Labour of a cycle, all in the same unit: outside + Σ max(inside, share × run) over (inside, run).

    >>> labour(0.30, [(0.40, 2.0)], 0.35)
    1.0
    """
    return outside + sum(max(inside, share * run) for inside, run in inside_by_run)


def rested_inside(basic: float, rest: float, spells: Sequence[tuple[float, float]]) -> float:
    """Rest taken inside machine time, so not added outside [s].

    basic  : basic labour of a run [s]; rest : rest from fatigue it earns, as a share of it
    spells : (unoccupied time each time [s], times a run)
    Never more than the rest earned, so labour keeps its basic time, its personal needs and its delays in full: those
    are no reason to sit beside a machine. Each spell is taken as unbroken: work inside is done at one end of the run,
    and what comes more seldom than the run is averaged over its runs.
    Source: ILO, *Introduction to Work Study*, memory; which of its allowances count as rest: ours, after it.
    """
    return min(basic * rest, sum(times * rest_in_spell(spell) for spell, times in spells))


@dataclass(frozen=True, slots=True)
class _Run:
    """A machine step's run with the hand work inside it, seconds a run of the operation.

    times : how often a run of the operation it comes
    """

    run: float
    inside: float
    times: float
    run_estimated: float
    inside_estimated: float

    def spell(self, share: float) -> tuple[float, float]:
        """(unoccupied time the operator owes each time [s], times)."""
        idle = max(share * self.run - self.inside, 0.0)
        return (idle / self.times if self.times else 0.0), self.times

    def estimated(self, share: float) -> float:
        """The part of its labour that rests on estimates."""
        return self.inside_estimated if self.inside > share * self.run else share * self.run_estimated


def _runs(steps: Sequence[StepTime]) -> Iterator[_Run]:
    for step in steps:
        inner = [one for one in steps if one.during == step.step]
        if step.run_s > 0 or inner:
            times = float(step.share)
            inside = sum(float(one.share) * one.hand_s for one in inner)
            inside_estimated = sum(float(one.share) * one.hand_estimated_s for one in inner)
            yield _Run(times * step.run_s, inside, times, times * step.run_estimated_s, inside_estimated)


def operation_time(
    name: str, steps: Sequence[StepTime], station: Station, kind: MachineKind, allowed: StationAllowance
) -> OperationTime:
    """Times of one run of an operation from its steps, with the allowances of its station."""
    share, factor, rest = attendance_share(station, kind), float(allowed.work_factor), float(allowed.rest)
    runs = list(_runs(steps))
    outside = sum(float(step.share) * step.hand_s for step in steps if not step.during)
    estimated = sum(float(step.share) * step.hand_estimated_s for step in steps if not step.during)
    estimated += sum(one.estimated(share) for one in runs)
    basic = labour(outside, [(one.inside, one.run) for one in runs], share)
    rested = 0.0
    if station.rest_inside and kind.paced == "machine":
        rested = rested_inside(basic, rest, [one.spell(share) for one in runs])
    run_total = sum(one.run for one in runs)
    held = 0.0
    if kind.paced != "none":
        # The machine waits only for the rest of the work outside its run, and of that for what was not rested inside.
        waits = outside * factor - min(rested, outside * rest) if station.machine_waits else 0.0
        held = waits + run_total * (factor if kind.paced == "operator" else 1.0)
    worked = basic * factor - rested
    return OperationTime(
        name,
        tuple(steps),
        outside,
        sum(one.inside for one in runs),
        run_total,
        worked * float(1 + allowed.policy) / 60.0,
        held / 60.0,
        estimated / basic if basic else 0.0,
        tuple(_shares(allowed, basic, rested)),
    )


def _shares(allowed: StationAllowance, basic: float, rested: float) -> Iterator[tuple[str, float]]:
    """Each allowance as a share of basic time; together they are labour ÷ basic − 1."""
    yield from ((one.words, float(one.share)) for one in allowed.lines)
    inside = rested / basic if basic else 0.0
    if inside:
        yield "rested inside machine time", -inside
    if allowed.policy:
        yield "policy", float(allowed.policy) * (float(allowed.work_factor) - inside)
