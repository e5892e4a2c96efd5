"""A made name that is no part and no state of one."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.model import near


def check(subject: Subject) -> Iterator[Problem]:
    """Names in `makes` without a part file where nothing is needed whose next state they could be."""
    model = subject.model
    known = {name for kind, name in model.entries if kind == "part"}
    for name, operation in model.operations.items():
        if any(need not in model.states and need not in model.materials for need in operation.needs):
            continue  # the need itself is unknown or in a ring, and reported
        for made in operation.makes:
            if made not in model.states:
                close = near(made, sorted(known))
                hint = f"Did you mean `{close[0]}`? Correct the name, or add the part's file." if close else ""
                message = f"{made} has no part file, and no part is needed whose next state it could be"
                about = (f"part:{made}", *(f"part:{one}" for one in close))
                yield Problem(("operation", name), ("makes", made), message, about, hint, key=True)


RULE = Rule(
    slug="made-without-part",
    severity=Severity.error,
    why="Without outline and material there is nothing to draw, cut or count.",
    remedy="Add the part's file, or name the part it is made from under `needs:`.",
    check=check,
    bad="""
operations/cut-panel.yaml: {makes: {panel: 1, patch: 1}}
operations/sew-hem.yaml: {needs: {panel: 1, patch: 1}}
""",
    good="""
operations/cut-panel.yaml: {makes: {panel: 1, patch: 1}}
operations/sew-hem.yaml: {needs: {panel: 1, patch: 1}}
parts/patch.yaml: {part: patch, title: Patch, material: cloth, outline: {rectangle: {width: 40 mm, height: 40 mm}}}
""",
    follows_from=("name-unknown", "route-cycle", "name-differs"),
)
