"""Goods by the metre counted as pieces."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity

_INSTEAD = {
    "thread": "Take it out here and name it in `settings:`, as `thread:`.",
    "tape": "Name a part cut from it; a binding tape is named by its seam, as `binding:`.",
}


def check(subject: Subject) -> Iterator[Problem]:
    """Materials in `needs` that are no hardware: nobody knows how much one of them is."""
    model = subject.model
    for name, operation in model.operations.items():
        for need, count in operation.needs.items():
            material = model.materials.get(need)
            if material is None or material.form == "hardware" or need in model.states:
                continue
            message = f"{need} is {material.form}, and {count} of it is no amount"
            about = (f"material:{need}",)
            remedy = _INSTEAD.get(material.form, "")
            yield Problem(("operation", name), ("needs", need), message, about, remedy, key=True)


RULE = Rule(
    slug="needs-not-countable",
    severity=Severity.error,
    why="The kit list would ask for pieces of something that lies there as a roll, a sheet or a cone.",
    remedy="Name a part that an operation cuts from it; what is bought ready in its size is hardware.",
    check=check,
    bad="""
operations/press-snap.yaml: {needs: {thread-70: 1}}
""",
    good="""
operations/press-snap.yaml: {needs: {snap: 1}}
""",
)
