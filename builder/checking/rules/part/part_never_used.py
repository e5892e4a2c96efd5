"""A part file nothing leads to."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.flow import whole
from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.model import Strip


def check(subject: Subject) -> Iterator[Problem]:
    """Parts no operation makes or needs, no part is made of, and no product is sold as."""
    model = subject.model
    if not whole(subject) or not model.operations:
        return
    used = {name for one in model.operations.values() for name in (*one.makes, *one.needs)}
    used |= {one.sold for one in model.products.values() if one.sold}
    for part in model.parts.values():
        used |= {one.part for one in part.from_} | {part.formed_from or ""}
        used |= {one.strip for one in part.features.values() if isinstance(one, Strip)}
    for name in model.parts:
        if name not in used:
            yield Problem(("part", name), (), f"no operation makes or needs {name}", (f"part:{name}",), key=True)


RULE = Rule(
    slug="part-never-used",
    severity=Severity.warning,
    why="Either a piece is missing from the product, or a pattern nobody cuts is kept and changed for nothing.",
    remedy="Add the operation that makes it, or take the file out.",
    check=check,
    bad="""
parts/patch.yaml: {part: patch, title: Patch, material: cloth, outline: {rectangle: {width: 40 mm, height: 40 mm}}}
""",
    good="""
parts/patch.yaml: {part: patch, title: Patch, material: cloth, outline: {rectangle: {width: 40 mm, height: 40 mm}}}
operations/cut-panel.yaml:
  makes: {panel: 1, patch: 1}
operations/sew-hem.yaml:
  needs: {panel: 1, patch: 1}
""",
    follows_from=("name-unknown", "name-differs", "made-without-part"),
)
