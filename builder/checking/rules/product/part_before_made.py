"""A part used before the route makes it."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity


def check(subject: Subject) -> Iterator[Problem]:
    """For each product: what an operation needs is made by an operation before it on the route."""
    model = subject.model
    for name, product in model.products.items():
        places: dict[str, int] = {}
        order: list[tuple[str, int]] = []
        for number, stop in enumerate(product.route):
            for operation in _operations(stop.operation, stop.sub_assembly, subject, frozenset((name,))):
                order.append((operation, number))
        for index, (operation, _) in enumerate(order):
            for made in model.operations[operation].makes:
                places.setdefault(made, index)
        for index, (operation, number) in enumerate(order):
            late = [need for need in model.operations[operation].needs if places.get(need, -1) > index]
            if late:
                makers = [order[places[need]][0] for need in late]
                words = " and ".join(f"{need}, which {maker} makes" for need, maker in zip(late, makers, strict=True))
                about = (f"operation:{operation}", *(f"operation:{maker}" for maker in makers))
                yield Problem(("product", name), ("route", number), f"{operation} needs {words} only later", about)


def _operations(operation: str | None, product: str | None, subject: Subject, inside: frozenset[str]) -> Iterator[str]:
    if operation is not None and operation in subject.model.operations:
        yield operation
    if product is not None and product in subject.model.products and product not in inside:
        for stop in subject.model.products[product].route:
            yield from _operations(stop.operation, stop.sub_assembly, subject, inside | {product})


RULE = Rule(
    slug="part-before-made",
    severity=Severity.error,
    why="The line stands still until the part is there, and the sheet sends the bundle the wrong way.",
    remedy="Put the operations in the order in which they are done.",
    check=check,
    bad="""
products/pouch.yaml:
  route: [sew-hem, cut-panel, press-snap]
""",
    good="""
products/pouch.yaml:
  route: [cut-panel, sew-hem, press-snap]
""",
    follows_from=(
        "route-cycle",
        "name-unknown",
    ),
)
