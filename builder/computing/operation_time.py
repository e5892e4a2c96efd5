"""Standard time of an operation: labour and machine apart, by the station's attendance.

    labour  = (outside + Σ max(inside, share × run)) × allowance factor
    machine = outside × factor (if the machine waits) + run (× factor where the operator paces it)

Of each machine step's run the operator owes `share`, and what is done inside that run costs no labour beyond it.
Where the operator paces the machine, share is 1. Source: ours, after work-study texts.
"""

from __future__ import annotations

from collections.abc import Sequence

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


def operation_time(
    name: str, steps: Sequence[StepTime], station: Station, kind: MachineKind, factor: float
) -> OperationTime:
    """Times of one run of an operation from its steps. `factor` is standard ÷ basic time."""
    share = attendance_share(station, kind)
    outside = sum(float(step.share) * step.hand_s for step in steps if not step.during)
    estimated = sum(float(step.share) * step.hand_estimated_s for step in steps if not step.during)
    groups: list[tuple[float, float]] = []
    for step in steps:
        inner = [one for one in steps if one.during == step.step]
        if step.run_s <= 0 and not inner:
            continue
        run = float(step.share) * step.run_s
        inside = sum(float(one.share) * one.hand_s for one in inner)
        groups.append((inside, run))
        if inside > share * run:
            estimated += sum(float(one.share) * one.hand_estimated_s for one in inner)
        elif step.run_s > 0:
            estimated += share * float(step.share) * step.run_estimated_s
    basic = labour(outside, groups, share)
    run_total, inside_total = sum(run for _, run in groups), sum(inside for inside, _ in groups)
    held = 0.0
    if kind.paced != "none":
        run_factor = factor if kind.paced == "operator" else 1.0
        held = (outside * factor if station.machine_waits else 0.0) + run_total * run_factor
    return OperationTime(
        name,
        tuple(steps),
        outside,
        inside_total,
        run_total,
        basic * factor / 60.0,
        held / 60.0,
        estimated / basic if basic else 0.0,
    )
