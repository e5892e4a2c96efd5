"""A last operation that makes several things, and nobody says which is sold."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity


def check(subject: Subject) -> Iterator[Problem]:
    """Products without `sold:` whose last operation makes more than one name."""
    model = subject.model
    for name, product in model.products.items():
        route = subject.route(name)
        if product.sold is not None or not route:
            continue
        last = route[-1].operation
        makes = tuple(model.operations[last].makes)
        if len(makes) > 1:
            message = f"{last} makes {' and '.join(makes)}, and `sold:` doesn't say which of them is the product"
            number = len(product.route) - 1
            yield Problem(("product", name), ("route", number), message, (f"operation:{last}",))


RULE = Rule(
    slug="sold-ambiguous",
    severity=Severity.error,
    why="Counts and minutes would be those of the wrong piece.",
    remedy="Type `sold:` with the name of the finished piece.",
    check=check,
    bad="""
operations/press-snap.yaml: {makes: {panel-snapped: 1, panel-second: 1}}
products/second.yaml: {product: second, title: Second, route: [cut-panel, sew-hem, press-snap], sold: panel-second}
products/pouch.yaml: {title: Pouch}
""",
    good="""
operations/press-snap.yaml: {makes: {panel-snapped: 1, panel-second: 1}}
products/second.yaml: {product: second, title: Second, route: [cut-panel, sew-hem, press-snap], sold: panel-second}
products/pouch.yaml: {title: Pouch, sold: panel-snapped}
""",
)
