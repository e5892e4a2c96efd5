"""A part that is neither cut nor put together."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity


def check(subject: Subject) -> Iterator[Problem]:
    """A part has an outline and a material, or parts it is made `from`."""
    for name, part in subject.model.parts.items():
        if part.from_ and part.material is None:
            continue
        if part.from_ and part.material is not None:
            message = f"{name} is made from parts, so it has no material of its own"
            yield Problem(("part", name), ("material",), message, (), key=True)
        elif part.outline is None or (part.material is None and part.formed_from is None):
            material = part.material or part.formed_from
            missing = " and ".join(one for one, has in (("outline", part.outline), ("material", material)) if not has)
            yield Problem(
                ("part", name), ("title",), f"{name} has no {missing}, and is not made from parts", (), key=True
            )
        elif len(part.outline.forms) != 1:
            message = "an outline is one of rectangle, strip, polygon, half and drawing"
            yield Problem(("part", name), ("outline",), message, (), key=True)


RULE = Rule(
    slug="part-without-shape",
    severity=Severity.error,
    why="Without outline and material a part has no drawing, no mass and no cost.",
    remedy="Give it `material:` and `outline:`, or the parts it is made `from:`.",
    check=check,
    bad="""
operations/cut-panel.yaml: {makes: {panel: 1, patch: 1}}
operations/sew-hem.yaml: {needs: {panel: 1, patch: 1}}
parts/patch.yaml: {part: patch, title: Patch, material: cloth}
""",
    good="""
operations/cut-panel.yaml: {makes: {panel: 1, patch: 1}}
operations/sew-hem.yaml: {needs: {panel: 1, patch: 1}}
parts/patch.yaml: {part: patch, title: Patch, material: cloth, outline: {rectangle: {width: 40 mm, height: 40 mm}}}
""",
)
