"""A product sold as something its route doesn't make."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.flow import whole
from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.model import near


def check(subject: Subject) -> Iterator[Problem]:
    """`sold:` names a part state; an operation of the route must make it."""
    model = subject.model
    if not whole(subject):
        return
    for name, product in model.products.items():
        made = [one for stop in subject.route(name) for one in model.operations[stop.operation].makes]
        if product.sold is None or product.sold in made or product.sold not in model.states:
            continue
        close = near(product.sold, made)
        best = close[0] if close else made[-1] if made else ""
        remedy = f"Write `sold: {best}`, or put the operation that makes {product.sold} on the route." if best else ""
        message = f"no operation of the route makes {product.sold}"
        about = (f"part:{product.sold}", *(f"part:{one}" for one in made[-1:]))
        yield Problem(("product", name), ("sold",), message, about, remedy)


RULE = Rule(
    slug="sold-not-made",
    severity=Severity.error,
    why="The batch ends before the product is finished, and no count of pieces can be trusted.",
    remedy="Name what the last operation makes, or complete the route.",
    check=check,
    bad="""
parts/patch.yaml: {part: patch, title: Patch, material: cloth, outline: {rectangle: {width: 40 mm, height: 40 mm}}}
products/pouch.yaml: {sold: patch}
""",
    good="""
products/pouch.yaml: {sold: panel-snapped}
""",
    follows_from=("name-unknown", "part-made-twice", "route-cycle", "made-without-part"),
)
