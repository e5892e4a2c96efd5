"""Goods no part, setting or colour names."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.flow import goods_used, whole
from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity


def check(subject: Subject) -> Iterator[Problem]:
    """Materials nothing in the plant uses."""
    model = subject.model
    if not whole(subject) or not model.parts:
        return
    used = goods_used(subject)
    for name in model.materials:
        if name not in used:
            message = f"no part, thread setting, operation or colour names {name}"
            yield Problem(("material", name), (), message, (), key=True)


RULE = Rule(
    slug="material-never-used",
    severity=Severity.note,
    why="Goods nobody works lie in the store and are ordered again, or a part names the wrong ones.",
    remedy="Take it out of the table, or name it where it is used.",
    check=check,
    bad="""
materials/all.yaml:
  materials:
    stud: {title: Stud, form: hardware, width: 12 mm, mass each: 2 g}
""",
    good="""
materials/all.yaml:
  materials:
    stud: {title: Stud, form: hardware, width: 12 mm, mass each: 2 g}
operations/press-snap.yaml: {needs: {stud: 1}}
""",
    follows_from=("name-unknown", "setting-unreadable", "name-differs", "colour-unused"),
)
