"""Operations, or products, that wait for each other."""

from __future__ import annotations

from collections.abc import Iterator
from graphlib import CycleError, TopologicalSorter

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.model import ordinary


def check(subject: Subject) -> Iterator[Problem]:
    """Rings in needs and makes, and sub-assemblies inside themselves."""
    model = subject.model
    makers: dict[str, list[str]] = {}
    operations = ordinary(model.operations)
    for name, operation in operations.items():
        for made in operation.makes:
            makers.setdefault(made, []).append(name)
    needs = {name: {m for n in one.needs for m in makers.get(n, ())} for name, one in operations.items()}
    order = _route_order(subject)
    for ring in _rings(needs):
        first = min(ring, key=lambda one: (order.get(one, len(order)), one))
        # The need to take out is the first operation's: what it waits for is made behind it.
        needed = next(one for one in model.operations[first].needs if set(makers.get(one, ())) & set(ring))
        at = ring.index(first)
        words = " → ".join((*ring[at:], *ring[:at], first))
        about = tuple(f"operation:{one}" for one in ring)
        message = f"these operations wait for each other: {words}"
        yield Problem(("operation", first), ("needs", needed), message, about, key=True)
    uses = {
        name: {stop.sub_assembly for stop in one.route if stop.sub_assembly in model.products}
        for name, one in model.products.items()
    }
    for ring in _rings(uses):
        first = min(ring)
        words = " → ".join((*ring, ring[0]))
        about = tuple(f"product:{one}" for one in ring)
        yield Problem(("product", first), ("route",), f"these products are inside each other: {words}", about, key=True)


def _route_order(subject: Subject) -> dict[str, int]:
    """How early an operation stands on a route."""
    order: dict[str, int] = {}
    for product in subject.model.products.values():
        for number, stop in enumerate(product.route):
            if stop.operation is not None:
                order.setdefault(stop.operation, number)
    return order


def _rings(graph: dict[str, set[str | None]] | dict[str, set[str]]) -> Iterator[list[str]]:
    """Each ring once; members are taken out so that the next can be found."""
    left: dict[str, set[str]] = {name: {one for one in uses if one} for name, uses in graph.items()}
    while True:
        try:
            TopologicalSorter(left).prepare()
        except CycleError as error:
            ring = list(dict.fromkeys(error.args[1]))
            yield ring
            for name in ring:
                left.pop(name, None)
            continue
        return


RULE = Rule(
    slug="route-cycle",
    severity=Severity.error,
    why="Nobody can begin: each waits for the other.",
    remedy="Take one of the needs out, or let it name the state before.",
    check=check,
    bad="""
operations/sew-hem.yaml:
  needs: {panel-snapped: 1}
""",
    good="""
operations/sew-hem.yaml:
  needs: {panel: 1}
""",
)
