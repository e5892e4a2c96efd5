"""A size that leaves out what another one sets."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity


def check(subject: Subject) -> Iterator[Problem]:
    """Sizes behind the reference: all of them set the same dimensions."""
    for name, product in subject.model.products.items():
        others = list(product.sizes.items())[1:]
        every = dict.fromkeys(dimension for _, values in others for dimension in values)
        for size, values in others:
            lacks = [dimension for dimension in every if dimension not in values]
            if lacks:
                by = next(other for other, theirs in others if lacks[0] in theirs)
                message = f"{size} doesn't set {', '.join(lacks)}, as {by} does"
                about = tuple(f"dimension:{one}" for one in lacks)
                yield Problem(("product", name), ("sizes", size), message, about, key=True)


RULE = Rule(
    slug="size-incomplete",
    severity=Severity.warning,
    why="A size grown in one direction only, because a line was forgotten, is cut before anybody sees it.",
    remedy="Set the dimension in this size too, even where it stays as in the reference size.",
    check=check,
    bad="""
products/pouch.yaml:
  sizes: {M: {}, L: {panel.width: 340 mm}, XL: {panel.width: 380 mm, panel.height: 230 mm}}
""",
    good="""
products/pouch.yaml:
  sizes: {M: {}, L: {panel.width: 340 mm, panel.height: 215 mm}, XL: {panel.width: 380 mm, panel.height: 230 mm}}
""",
    follows_from=("size-of-other-part",),
)
