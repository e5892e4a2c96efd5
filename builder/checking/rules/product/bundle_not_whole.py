"""A batch that ends in a short bundle."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity


def check(subject: Subject) -> Iterator[Problem]:
    """Batches of products, and the plant's own where a product uses it, against the plant's bundle."""
    plant, products = subject.model.plant, subject.model.products
    if any(one.batch is None for one in products.values()) and (words := _short(plant.batch, plant.bundle)):
        yield Problem(("plant", "plant"), ("batch",), words)
    for name, product in products.items():
        if product.batch is not None and (words := _short(product.batch, plant.bundle)):
            yield Problem(("product", name), ("batch",), words)


def _short(batch: int, bundle: int) -> str:
    """What the batch ends in, '' if it is whole bundles."""
    whole, rest = divmod(batch, bundle)
    if not rest:
        return ""
    if not whole:
        return f"a batch of {batch} is less than one bundle of {bundle}"
    return f"a batch of {batch} is {whole} bundle{'s' * (whole > 1)} of {bundle} and one of {rest}"


RULE = Rule(
    slug="bundle-not-whole",
    severity=Severity.note,
    why="The short bundle takes the same ticket, tying and setting up, and counts at the stations come out odd.",
    remedy="Make the batch a multiple of the bundle, or leave it if the order asks for it.",
    check=check,
    bad="""
products/pouch.yaml: {batch: 90}
""",
    good="""
products/pouch.yaml: {batch: 80}
""",
)
