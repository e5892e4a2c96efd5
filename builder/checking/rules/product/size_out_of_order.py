"""A size that is larger than the next one up."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.model import Product, Quantity, show_quantity

LETTERS = ("XXS", "XS", "S", "M", "L", "XL", "XXL", "XXXL")
"""Size letters from small to large, as everybody reads them."""


def check(subject: Subject) -> Iterator[Problem]:
    """Each dimension that sizes change, through the sizes of a product from small to large; three sizes at least."""
    for name, product in subject.model.products.items():
        sizes = _in_order(product)
        for dimension in dict.fromkeys(one for size in sizes for one in product.sizes[size]):
            found = [product.sizes[size].get(dimension, subject.dimensions.values.get(dimension)) for size in sizes]
            values = [one for one in found if one is not None]
            odd = _odd_one([one.value for one in values]) if len(values) == len(sizes) else None
            if odd is not None:
                around = ", ".join(f"{size} {_words(subject, one)}" for size, one in zip(sizes, values, strict=True))
                message = f"{dimension} goes up and down through the sizes: {around}"
                yield Problem(("product", name), ("sizes", sizes[odd], dimension), message, (f"dimension:{dimension}",))


def _words(subject: Subject, value: Quantity) -> str:
    return show_quantity(value, subject.model.plant.units, both=False)


def _in_order(product: Product) -> list[str]:
    """Sizes from small to large, [] when their names don't say which is which."""
    names = list(product.sizes)
    if all(one.upper() in LETTERS for one in names):
        return sorted(names, key=lambda one: LETTERS.index(one.upper()))
    if all(one.isdecimal() for one in names):
        return sorted(names, key=int)
    return []


def _odd_one(values: Sequence[Fraction]) -> int | None:
    """The value without which the others run one way, an inner one before an end; None when all run one way."""
    if len(values) < 3 or _one_way(values):
        return None
    order = sorted(range(len(values)), key=lambda number: number in (0, len(values) - 1))
    return next((one for one in order if _one_way([*values[:one], *values[one + 1 :]])), 1)


def _one_way(values: Sequence[Fraction]) -> bool:
    return list(values) in (sorted(values), sorted(values, reverse=True))


RULE = Rule(
    slug="size-out-of-order",
    severity=Severity.note,
    why="Two sizes with their numbers swapped are cut by the hundred before somebody lays them side by side.",
    remedy="Read the numbers of the sizes again.",
    check=check,
    bad="""
products/pouch.yaml:
  sizes:
    S: {}
    M: {panel.width: 380 mm}
    L: {panel.width: 340 mm}
""",
    good="""
products/pouch.yaml:
  sizes:
    S: {}
    M: {panel.width: 320 mm}
    L: {panel.width: 340 mm}
""",
    follows_from=("name-unknown", "value-unreadable", "size-incomplete"),
)
