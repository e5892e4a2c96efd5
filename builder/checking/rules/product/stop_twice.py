"""One stop twice on a route."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity


def check(subject: Subject) -> Iterator[Problem]:
    """Operations, and sub-assemblies, a product's own route names more than once."""
    for name, product in subject.model.products.items():
        seen: set[tuple[str, str]] = set()
        for number, stop in enumerate(product.route):
            kind = "operation" if stop.operation is not None else "product"
            key = (kind, stop.operation or stop.sub_assembly or "")
            if key in seen:
                message = f"{key[1]} stands on this route already, and is counted once"
                yield Problem(("product", name), ("route", number), message, (f"{kind}:{key[1]}",))
            seen.add(key)


RULE = Rule(
    slug="stop-twice",
    severity=Severity.error,
    why="Work done a second time has no sheet of its own, and its minutes are not in the product.",
    remedy="Write a second operation with a name of its own, or take the stop out; counts follow from `needs:`.",
    check=check,
    bad="""
products/pouch.yaml: {route: [cut-panel, sew-hem, press-snap, sew-hem]}
""",
    good="""
products/pouch.yaml: {route: [cut-panel, sew-hem, press-snap]}
""",
)
