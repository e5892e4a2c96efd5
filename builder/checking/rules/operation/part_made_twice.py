"""Two operations that make a piece of the same name."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.model import ordinary


def check(subject: Subject) -> Iterator[Problem]:
    """Names in `makes` of more than one operation, at each but the first; a deviation makes what another makes."""
    first: dict[str, str] = {}
    for name, operation in ordinary(subject.model.operations).items():
        for made in operation.makes:
            if (other := first.setdefault(made, name)) != name:
                message = f"{other} makes {made} too, and which of the two is meant can't be told"
                about = (f"part:{made}", f"operation:{other}")
                yield Problem(("operation", name), ("makes", made), message, about, key=True)


RULE = Rule(
    slug="part-made-twice",
    severity=Severity.error,
    why="Pictures, times and the next station would follow one of the two, and nobody knows which.",
    remedy="Give what comes out of this operation a name of its own, for another construction too.",
    check=check,
    bad="""
operations/trim-panel.yaml:
  operation: trim-panel
  title: Trim the panel
  code: TRM-10
  station: bench
  needs: {panel: 1}
  makes: panel-hemmed
  steps: [{step: trim, do: Trim the cut edge., time: 4 s}]
""",
    good="""
operations/trim-panel.yaml:
  operation: trim-panel
  title: Trim the panel
  code: TRM-10
  station: bench
  needs: {panel: 1}
  makes: panel-trimmed
  steps: [{step: trim, do: Trim the cut edge., time: 4 s}]
operations/sew-hem.yaml: {needs: {panel-trimmed: 1}}
products/pouch.yaml: {route: [cut-panel, trim-panel, sew-hem, press-snap]}
""",
    follows_from=("name-differs",),
)
