"""A nest that can't be laid out."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.nests import tried
from builder.checking.rule import Problem, Rule, Subject
from builder.checking.walk import in_size
from builder.finding import Severity
from builder.geometry import NestFault


def check(subject: Subject) -> Iterator[Problem]:
    """Sheets without a width, lengths that can't be computed; the first of each nest."""
    seen: set[str] = set()
    for operation, _, size, found in tried(subject):
        if isinstance(found, NestFault) and operation not in seen:
            seen.add(operation)
            path = ("nest", *found.path)
            yield Problem(("operation", operation), path, f"{found.message}{in_size(size)}", key=not found.path)


_NEST = """
operations/cut-panel.yaml:
  pieces a sheet: 4
  nest: {gap: GAP, pieces: [{part: panel, count: 4}]}
"""

RULE = Rule(
    slug="nest-impossible",
    severity=Severity.error,
    why="The sheet can't be drawn, and nobody can say whether the pieces fit.",
    remedy="Type the sheet's width and length, `sheet: [1500 mm, 900 mm]`, or the `width:` of the material.",
    check=check,
    bad=_NEST.replace("GAP", '"=width * height"'),
    good=_NEST.replace("GAP", '"=width / 100"'),
    follows_from=("shape-impossible", "expression-unreadable", "name-unknown"),
)
