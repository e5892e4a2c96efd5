"""Goods in use whose mass nobody typed."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.flow import goods_used
from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity

_NEEDS = {
    "sheet": ("mass", "`mass: 250 g/m2`"),
    "foam": ("mass", "`mass: 165 g/m2`"),
    "webbing": ("mass_per_length", "`mass per length: 38 g/m`"),
    "tape": ("mass_per_length", "`mass per length: 7 g/m`"),
    "zip": ("mass_per_length", "`mass per length: 12 g/m`"),
    "hardware": ("mass_each", "`mass each: 1.6 g`"),
    "thread": ("tex", "`tex: 70 tex`"),
}
"""By form: the field it needs, and how one is written."""


def check(subject: Subject) -> Iterator[Problem]:
    """Used materials against the mass their form is counted by."""
    model = subject.model
    for name, user in goods_used(subject).items():
        material = model.materials.get(name)
        if material is None:
            continue
        field, sample = _NEEDS[material.form]
        if getattr(material, field) is None:
            key = field.replace("_", " ")
            message = f"{name} is {material.form} without `{key}:`, and {user} uses it"
            remedy = f"Weigh it, or take it from the maker's sheet, and type it as in {sample}."
            yield Problem(("material", name), (), message, (), remedy, key=True)


RULE = Rule(
    slug="mass-missing",
    severity=Severity.warning,
    why="The weight of a bundle, of a carton and of the thread an order eats can't be counted.",
    remedy="Weigh it, or take it from the maker's sheet.",
    check=check,
    bad="""
materials/all.yaml:
  materials:
    stud: {title: Stud, form: hardware, width: 12 mm}
operations/press-snap.yaml: {needs: {stud: 1}}
""",
    good="""
materials/all.yaml:
  materials:
    stud: {title: Stud, form: hardware, width: 12 mm, mass each: 2 g}
operations/press-snap.yaml: {needs: {stud: 1}}
""",
)
