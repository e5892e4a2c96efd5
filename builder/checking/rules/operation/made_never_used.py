"""A piece that is made and never used."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.flow import routed, sold_by, whole
from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity


def check(subject: Subject) -> Iterator[Problem]:
    """What an operation on a route makes, and no operation needs and no product is."""
    model = subject.model
    if not whole(subject):
        return
    wanted = {name for one in model.operations.values() for name in one.needs}
    wanted |= {sold_by(subject, product) for product in model.products}
    on_route = routed(subject)
    for name, operation in model.operations.items():
        for made in operation.makes if name in on_route else ():
            if made not in wanted:
                message = f"no operation needs {made}, and no product is sold as it"
                about = (f"part:{made}", f"operation:{name}")
                yield Problem(("operation", name), ("makes", made), message, about, key=True)


RULE = Rule(
    slug="made-never-used",
    severity=Severity.warning,
    why="Bundles of it pile up behind the station, and its minutes are paid for nothing.",
    remedy="Name it in the `needs:` of the operation that uses it, or take it out of `makes:`.",
    check=check,
    bad="""
parts/patch.yaml: {part: patch, title: Patch, material: cloth, outline: {rectangle: {width: 40 mm, height: 40 mm}}}
operations/cut-panel.yaml:
  makes: {panel: 1, patch: 1}
""",
    good="""
parts/patch.yaml: {part: patch, title: Patch, material: cloth, outline: {rectangle: {width: 40 mm, height: 40 mm}}}
operations/cut-panel.yaml:
  makes: {panel: 1, patch: 1}
operations/sew-hem.yaml:
  needs: {panel: 1, patch: 1}
""",
    follows_from=(
        "name-unknown",
        "name-differs",
        "sold-not-made",
        "sold-ambiguous",
    ),
)
