"""An operation that stands on no route."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.flow import routed, whole
from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.model import ordinary


def check(subject: Subject) -> Iterator[Problem]:
    """Operations no product's route leads through, sub-assemblies expanded."""
    model = subject.model
    if not model.products or not whole(subject):
        return
    on_route = routed(subject)
    for name, operation in ordinary(model.operations).items():
        if name not in on_route:
            about = tuple(f"part:{one}" for one in (*operation.makes, *operation.needs))
            yield Problem(("operation", name), (), f"no product's route leads through {name}", about, key=True)


RULE = Rule(
    slug="operation-on-no-product",
    severity=Severity.warning,
    why="Its sheet hangs at a station where nobody does it, or a product lacks its minutes.",
    remedy="Put it on the route of its product, or take its file out.",
    check=check,
    bad="""
operations/trim-panel.yaml:
  operation: trim-panel
  title: Trim the panel
  code: TRM-10
  station: bench
  needs: {panel-snapped: 1}
  makes: panel-trimmed
  steps: [{step: trim, do: Trim the thread ends., time: 4 s}]
""",
    good="""
operations/trim-panel.yaml:
  operation: trim-panel
  title: Trim the panel
  code: TRM-10
  station: bench
  needs: {panel-snapped: 1}
  makes: panel-trimmed
  steps: [{step: trim, do: Trim the thread ends., time: 4 s}]
products/pouch.yaml: {route: [cut-panel, sew-hem, press-snap, trim-panel]}
""",
    follows_from=("part-not-on-route", "name-unknown", "name-differs", "route-cycle", "part-made-twice"),
)
