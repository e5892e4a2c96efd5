"""Layers of a sub-assembly that leave one out."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity


def check(subject: Subject) -> Iterator[Problem]:
    """`layer:` of the components of each sub-assembly: 1, 2, 3 …, each used once or more."""
    for name, part in subject.model.parts.items():
        layers = {component.layer for component in part.from_}
        for number, component in enumerate(part.from_):
            below = component.layer - 1
            if below and below not in layers:
                message = f"{component.part} lies in layer {component.layer}, and nothing in layer {below}"
                yield Problem(("part", name), ("from", number), message, (f"part:{component.part}",))


RULE = Rule(
    slug="layer-gap",
    severity=Severity.warning,
    why="A slipped digit puts a part on top of the one that should cover it, in the picture and in the stack.",
    remedy="Count the layers up from 1, the lowest, without a gap.",
    check=check,
    bad="""
parts/panel-hemmed.yaml: {part: panel-hemmed, title: Hemmed panel, from: [{part: panel, layer: 2}]}
""",
    good="""
parts/panel-hemmed.yaml: {part: panel-hemmed, title: Hemmed panel, from: [{part: panel, layer: 1}]}
""",
)
