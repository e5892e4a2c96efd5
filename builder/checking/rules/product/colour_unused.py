"""A colour that exchanges goods the product doesn't have."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.flow import goods_of, whole
from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.model import near


def check(subject: Subject) -> Iterator[Problem]:
    """Materials a colour takes the place of, against all goods on the route: parts, threads, bindings, hardware."""
    model = subject.model
    if not whole(subject):
        return
    for name, product in model.products.items():
        if not any(product.colours.values()):
            continue
        goods = {one for stop in subject.route(name) for one in goods_of(subject, stop.operation)}
        for colour, swaps in product.colours.items():
            for material in swaps:
                if material in goods or material not in model.materials:
                    continue
                close = near(material, sorted(goods))
                remedy = f"Did you mean `{close[0]}`?" if close else ""
                message = f"no part, thread, binding or hardware of {name} is {material}"
                about = (f"material:{material}",)
                yield Problem(("product", name), ("colours", colour, material), message, about, remedy, key=True)


RULE = Rule(
    slug="colour-unused",
    severity=Severity.error,
    why="The cut list of that colour would still name the goods of the reference colour.",
    remedy="Name the material as the product's parts, settings and features name it, or take the line out.",
    check=check,
    bad="""
materials/all.yaml:
  materials:
    cloth-moss: {title: "Coated cloth, moss", form: sheet, width: 1.5 m, mass: 250 g/m2, colour: moss,
      composition: [nylon, polyurethane coating],
      evidence: {kind: safety data sheet, document: SS-1, date: 2026-01-10}}
    cloth-heavy: {title: Heavy cloth, form: sheet, width: 1.5 m, mass: 400 g/m2}
products/pouch.yaml: {colours: {slate: {}, moss: {cloth-heavy: cloth-moss}}}
""",
    good="""
materials/all.yaml:
  materials:
    cloth-moss: {title: "Coated cloth, moss", form: sheet, width: 1.5 m, mass: 250 g/m2, colour: moss,
      composition: [nylon, polyurethane coating],
      evidence: {kind: safety data sheet, document: SS-1, date: 2026-01-10}}
products/pouch.yaml: {colours: {slate: {}, moss: {cloth: cloth-moss}}}
""",
    follows_from=("name-unknown",),
)
