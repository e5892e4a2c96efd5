"""A piece that the route never makes."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.flow import whole
from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity


def check(subject: Subject) -> Iterator[Problem]:
    """What an operation of a route needs, made by an operation the route doesn't lead through.

    Looked at for whole products: what a sub-assembly lacks may be cut on the route of the product it goes into.
    """
    model = subject.model
    if not whole(subject):
        return
    inside = {stop.sub_assembly for one in model.products.values() for stop in one.route}
    seen: set[tuple[str, str, str]] = set()
    for product in model.products:
        route = subject.route(product) if product not in inside else ()
        made = {name for stop in route for name in model.operations[stop.operation].makes}
        for stop in route:
            owner = stop.via or product
            for need in model.operations[stop.operation].needs:
                state = model.states.get(need)
                if state is None or not state.maker or need in made or (owner, stop.operation, need) in seen:
                    continue
                seen.add((owner, stop.operation, need))
                number = next(i for i, one in enumerate(model.products[owner].route) if one.operation == stop.operation)
                message = f"{stop.operation} needs {need}, and {state.maker}, which makes it, is not on the route"
                # What the missing operation would take is idle on this route only because of it.
                parts = (f"part:{one}" for one in (need, *state.needs))
                about = (f"operation:{stop.operation}", f"operation:{state.maker}", *parts)
                yield Problem(("product", owner), ("route", number), message, about)


RULE = Rule(
    slug="part-not-on-route",
    severity=Severity.error,
    why="The line waits for a piece nobody was told to make, and its minutes are missing from the product.",
    remedy="Put the operation that makes it on the route, before the one that needs it.",
    check=check,
    bad="""
products/pouch.yaml: {route: [cut-panel, press-snap]}
""",
    good="""
products/pouch.yaml: {route: [cut-panel, sew-hem, press-snap]}
""",
    follows_from=("name-unknown", "name-differs", "route-cycle", "part-made-twice", "made-without-part"),
)
