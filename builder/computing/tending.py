"""One person and several machines: how many, what they lose waiting for each other.

In step: all machines take the same time and are served in turn. At random: calls come when they come.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from builder.model import OperationTime, Station, Tending


def machines_in_step(service: float, run: float, other: float = 0.0) -> float:
    """How many machines one person can keep running, not rounded: (l + m) ÷ (l + w); infinite where nothing is served.

    service : l, work with the machine stopped; run : m; other : w, further work of the person a cycle and machine
    Source: Niebel, *Motion and Time Study*, memory.

    >>> round(machines_in_step(1.0, 3.0, 0.2), 2)
    3.33
    """
    return (service + run) / (service + other) if service + other > 0 else math.inf


def cycle_in_step(n: int, service: float, run: float, other: float = 0.0) -> float:
    """Cycle of n machines served in turn by one person: max(l + m, n·(l + w)). Source: Niebel, memory.

    >>> cycle_in_step(3, 1.0, 3.0, 0.2), round(cycle_in_step(4, 1.0, 3.0, 0.2), 1)
    (4.0, 4.8)
    """
    return max(service + run, n * (service + other))


@dataclass(frozen=True, slots=True)
class Interference:
    """Alike machines that call one person at random, all of them as shares of time.

    busy         : of the person
    interference : of each machine's time, waiting while the person serves another
    served       : calls served in a unit of the times given
    """

    busy: float
    interference: float
    served: float


def interference(machines: int, service: float, run: float) -> Interference:
    """Finite-source queue with one server. service : mean service T > 0; run : mean run U > 0 between two calls.

    q₀ = 1, q_i = q_(i−1)·(N − i + 1)·T/U; P_i = q_i ÷ Σq; busy = 1 − P₀; waiting L = Σ i·P_i − busy.
    Source: Hillier and Lieberman, *Introduction to Operations Research*, memory.

    >>> found = interference(3, 1, 3)
    >>> round(found.interference, 3), round(found.busy, 3)
    (0.128, 0.654)
    """
    ratio, weight = service / run, 1.0
    weights = [weight]
    for i in range(1, machines + 1):
        weight *= (machines - i + 1) * ratio
        weights.append(weight)
    total = math.fsum(weights)
    busy = 1 - weights[0] / total
    waiting = math.fsum(i * one for i, one in enumerate(weights)) / total - busy
    return Interference(busy, waiting / machines, busy / service)


def tending_of(time: OperationTime, station: Station, attended: float) -> Tending | None:
    """An operation's own work with several machines, allowances left aside.

    attended : share of a run the operator owes this machine; what is done inside it counts as owed
    None without a run of the machine, and where all of it is owed: then nobody can look after a second one.
    """
    if time.run_s <= 0 or attended >= 1:
        return None
    service, run, other = time.outside_s, time.run_s, max(time.inside_s, attended * time.run_s)
    tended = station.tended or 1
    lost = interference(tended, service, run).interference if tended > 1 and service > 0 else 0.0
    machines = machines_in_step(service, run, other)
    cycle = cycle_in_step(tended, service, run, other)
    return Tending(time.operation, service, run, other, machines, tended, cycle, lost)
