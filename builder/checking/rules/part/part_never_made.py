"""A part that is needed and never made."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity


def check(subject: Subject) -> Iterator[Problem]:
    """Needed part files that no operation makes."""
    model = subject.model
    for name, operation in model.operations.items():
        for part in operation.needs:
            state = model.states.get(part)
            if state is not None and not state.maker:
                message = f"{part} is needed here, but no operation makes it"
                yield Problem(("operation", name), ("needs", part), message, (f"part:{part}",), key=True)


RULE = Rule(
    slug="part-never-made",
    severity=Severity.error,
    why="The operator waits for a part nobody cuts, and its time is missing from the product.",
    remedy="Add the operation that makes it, or correct the name.",
    check=check,
    bad="""
parts/patch.yaml: {part: patch, title: Patch, material: cloth, outline: {rectangle: {width: 40 mm, height: 40 mm}}}
operations/sew-hem.yaml:
  needs: {patch: 1}
""",
    good="""
parts/patch.yaml: {part: patch, title: Patch, material: cloth, outline: {rectangle: {width: 40 mm, height: 40 mm}}}
operations/cut-panel.yaml:
  makes: {panel: 1, patch: 1}
operations/sew-hem.yaml:
  needs: {patch: 1}
""",
    follows_from=("name-unknown", "name-differs", "made-without-part"),
)
