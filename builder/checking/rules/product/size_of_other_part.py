"""A size that changes a part its product doesn't have."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.flow import whole
from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.model import Laid, Strip


def check(subject: Subject) -> Iterator[Problem]:
    """Dimensions a size sets, against the parts on the product's route and the dimensions those rest on."""
    model = subject.model
    if not whole(subject):
        return
    for name, product in model.products.items():
        if not any(product.sizes.values()):
            continue
        parts = _parts(name, subject)
        rests: frozenset[str] | None = None
        for size, overrides in product.sizes.items():
            for full in overrides:
                if full not in subject.dimensions.definitions or _part(full) in parts:
                    continue
                rests = _rests_on(parts, subject) if rests is None else rests
                if full not in rests:
                    message = f"{name} has no part {_part(full)}, so size {size} changes nothing by {full}"
                    about = (f"part:{_part(full)}", f"dimension:{full}")
                    yield Problem(("product", name), ("sizes", size, full), message, about, key=True)


def _rests_on(parts: set[str], subject: Subject) -> frozenset[str]:
    """Dimensions, of any part, that those of these parts rest on."""
    support = subject.dimensions.support
    return frozenset(base for full, on in support.items() if _part(full) in parts for base in on)


def _part(full: str) -> str:
    return full.partition("/")[0].partition(".")[0]


def _parts(product: str, subject: Subject) -> set[str]:
    """Part files a product's pieces come from, those laid on, joined and folded included."""
    model = subject.model
    stack = [
        model.states[name].base
        for stop in subject.route(product)
        for name in (*model.operations[stop.operation].makes, *model.operations[stop.operation].needs)
        if name in model.states
    ]
    found: set[str] = set()
    while stack:
        at = stack.pop()
        if at in found or at not in model.parts:
            continue
        found.add(at)
        part = model.parts[at]
        inner = [one.part for one in part.from_]
        inner += [one.strip for one in part.features.values() if isinstance(one, Strip)]
        inner += [one.material for one in part.features.values() if isinstance(one, Laid)]
        inner += [part.formed_from] if part.formed_from else []
        stack.extend(model.states[one].base for one in inner if one in model.states)
    return found


RULE = Rule(
    slug="size-of-other-part",
    severity=Severity.warning,
    why="The size is cut as the reference size, and nobody sees it before the pieces don't meet.",
    remedy="Name a dimension of a part of this product, or take the line out.",
    check=check,
    bad="""
parts/patch.yaml: {part: patch, title: Patch, material: cloth, outline: {rectangle: {width: 40 mm, height: 40 mm}}}
operations/cut-patch.yaml:
  operation: cut-patch
  title: Cut the patch
  code: CUT-20
  station: laser
  makes: patch
  settings: {speed: 200 mm/s, power: 40 %, focus: 3 mm}
  steps: [{step: cut, cut: patch, do: Close the lid and start.}]
products/patch.yaml: {product: patch, title: Repair patch, route: [cut-patch]}
products/pouch.yaml: {sizes: {M: {}, L: {patch.width: 340 mm}}}
""",
    good="""
products/pouch.yaml: {sizes: {M: {}, L: {panel.width: 340 mm}}}
""",
    follows_from=("name-unknown",),
)
