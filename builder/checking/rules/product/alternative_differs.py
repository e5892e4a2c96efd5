"""Another construction of a product that can't be held against it."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.model import Product


def check(subject: Subject) -> Iterator[Problem]:
    """`alternative to:` names another product, with the same sizes and colours, that isn't an alternative to this."""
    products = subject.model.products
    for name, product in products.items():
        other = products.get(product.alternative_to or "")
        if other is None:
            continue
        about = (f"product:{product.alternative_to}",)
        if product.alternative_to == name:
            yield Problem(("product", name), ("alternative to",), f"{name} names itself", ())
        elif other.alternative_to == name and name > (product.alternative_to or ""):
            message = f"{product.alternative_to} is itself an alternative to {name}"
            remedy = "Take the line out in one of the two: the other is the one made today."
            yield Problem(("product", name), ("alternative to",), message, about, remedy)
        elif words := _difference(product, other):
            message = f"{product.alternative_to} {words}"
            yield Problem(("product", name), ("alternative to",), message, about)


def _difference(product: Product, other: Product) -> str:
    """In which sizes or colours two products differ; '' if in none."""
    for what, own, others in (
        ("size", product.sizes, other.sizes),
        ("colour", product.colours, other.colours),
    ):
        if lacks := [one for one in own if one not in others]:
            return f"has no {what} {', '.join(lacks)}"
        if more := [one for one in others if one not in own]:
            return f"has {what} {', '.join(more)} too, and this product has not"
    return ""


RULE = Rule(
    slug="alternative-differs",
    severity=Severity.warning,
    why="Two constructions can be compared, and swapped on the line, only for the same sizes and colours.",
    remedy="Give both products the same sizes and colours, or take `alternative to:` out.",
    check=check,
    bad="""
products/pouch.yaml: {sizes: {M: {}, L: {panel.width: 340 mm}}}
products/pouch-plain.yaml:
  product: pouch-plain
  title: Pouch without a snap
  route: [cut-panel, sew-hem]
  alternative to: pouch
  sizes: {M: {}}
""",
    good="""
products/pouch.yaml: {sizes: {M: {}, L: {panel.width: 340 mm}}}
products/pouch-plain.yaml:
  product: pouch-plain
  title: Pouch without a snap
  route: [cut-panel, sew-hem]
  alternative to: pouch
  sizes: {M: {}, L: {panel.width: 340 mm}}
""",
    follows_from=("name-unknown",),
)
