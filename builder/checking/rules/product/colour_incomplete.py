"""A colour that leaves out what another one exchanges."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity


def check(subject: Subject) -> Iterator[Problem]:
    """Colours behind the reference: all of them say what takes the place of the same materials."""
    for name, product in subject.model.products.items():
        others = list(product.colours.items())[1:]
        every = dict.fromkeys(material for _, swaps in others for material in swaps)
        for colour, swaps in others:
            lacks = [material for material in every if material not in swaps]
            if lacks:
                first = lacks[0]
                by = next(other for other, theirs in others if first in theirs)
                message = f"{colour} doesn't say what takes the place of {', '.join(lacks)}, as {by} does"
                remedy = f"Add the material; if it stays, write `{first}: {first}`."
                about = tuple(f"material:{one}" for one in lacks)
                yield Problem(("product", name), ("colours", colour), message, about, remedy, key=True)


_COLOURS = """
materials/all.yaml:
  materials:
    cloth-moss: &cloth {title: Coated cloth, form: sheet, width: 1.5 m, mass: 250 g/m2,
      composition: [nylon, polyurethane coating],
      evidence: {kind: safety data sheet, document: SS-1, date: 2026-01-10}}
    cloth-sand: *cloth
    thread-moss: {title: "Thread, tex 70, moss", form: thread, tex: 70 tex}
products/pouch.yaml:
  colours: {slate: {}, moss: {cloth: cloth-moss, thread-70: thread-moss}, sand: {cloth: cloth-sand"""

RULE = Rule(
    slug="colour-incomplete",
    severity=Severity.warning,
    why="The bag comes off the line in two colours: one part as planned, one as in the reference.",
    remedy="Say for every colour what takes the place of the same materials.",
    check=check,
    bad=f"{_COLOURS}}}}}\n",
    good=f"{_COLOURS}, thread-70: thread-70}}}}\n",
)
