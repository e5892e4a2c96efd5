"""A typed quantity against what needs and makes ask."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from builder.checking.flow import Flow, flow_of, sold_by
from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.model import RouteStop, show_number


def check(subject: Subject) -> Iterator[Problem]:
    """Stops with a `quantity:`: runs of an operation, or pieces of a sub-assembly, for one finished piece."""
    model = subject.model
    for name, product in model.products.items():
        typed = [(number, stop) for number, stop in enumerate(product.route) if stop.quantity is not None]
        flow = flow_of(subject, name) if typed else None
        for number, stop in typed if flow is not None else ():
            wanted = _wanted(stop, flow, subject) if flow is not None else None
            if wanted is None or wanted == stop.quantity:
                continue
            what = stop.operation or stop.sub_assembly
            message = f"{stop.quantity} of {what} typed, but needs and makes ask {show_number(wanted)} for one {name}"
            remedy = "Take the quantity out, or correct the `needs:` of the operation it goes into."
            if wanted.denominator == 1:
                remedy = f"Write {wanted}, or correct the `needs:` of the operation it goes into."
            kind = "operation" if stop.operation else "product"
            yield Problem(("product", name), ("route", number, "quantity"), message, (f"{kind}:{what}",), remedy)


def _wanted(stop: RouteStop, flow: Flow, subject: Subject) -> Fraction | None:
    """What the flow asks of a stop; None where nothing asks for it, which is another finding."""
    if stop.operation is not None:
        return flow.runs.get(stop.operation) or None
    return flow.used.get(sold_by(subject, stop.sub_assembly))


RULE = Rule(
    slug="quantity-differs",
    severity=Severity.error,
    why="The line makes too few and waits, or too many and pays for them.",
    remedy="Take the quantity out: it follows from needs and makes.",
    check=check,
    bad="""
products/pouch.yaml: {route: [cut-panel, {operation: sew-hem, quantity: 2}, press-snap]}
""",
    good="""
products/pouch.yaml: {route: [cut-panel, {operation: sew-hem, quantity: 1}, press-snap]}
""",
    follows_from=("stop-twice", "part-not-on-route"),
)
