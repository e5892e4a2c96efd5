"""The same part twice inside a sub-assembly."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity


def check(subject: Subject) -> Iterator[Problem]:
    """Names in `from:`: the places of a component are dimensions by its name, so a name can lie in one place only."""
    for name, part in subject.model.parts.items():
        seen: set[str] = set()
        for number, component in enumerate(part.from_):
            if component.part in seen:
                message = f"{component.part} lies in {name} twice; both would lie in the second place"
                about = (f"part:{component.part}",)
                yield Problem(("part", name), ("from", number, "part"), message, about)
            seen.add(component.part)


RULE = Rule(
    slug="component-twice",
    severity=Severity.error,
    why="Both pieces are drawn and measured in one place, and the picture shows one where the operator lays two.",
    remedy="Lay the second one on by an operation of its own, on the sub-assembly that holds the first.",
    check=check,
    bad="""
parts/panel-hemmed.yaml: {part: panel-hemmed, title: Double panel, from: [{part: panel}, {part: panel, layer: 2}]}
operations/sew-hem.yaml: {needs: {panel: 2}}
""",
    good="""
parts/panel-hemmed.yaml: {part: panel-hemmed, title: Hemmed panel, from: [{part: panel}]}
operations/sew-hem.yaml: {needs: {panel: 1}}
""",
)
