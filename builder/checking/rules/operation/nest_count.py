"""A nest with other counts than its operation makes."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from builder.checking.nests import nests
from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity


def check(subject: Subject) -> Iterator[Problem]:
    """Pieces on the sheet against `makes` times `pieces a sheet`; one that doesn't say a sheet is left alone."""
    for laid in nests(subject):
        runs = laid.operation.pieces_a_sheet
        if runs is None or laid.faults:
            continue
        counts = Counter(one.part for one in laid.pieces)
        wanted = {made: count * runs for made, count in laid.operation.makes.items()}
        for part in dict.fromkeys((*wanted, *counts)):
            if counts[part] != wanted.get(part, 0):
                message = f"the nest has {counts[part]} {part}, but {runs} runs a sheet make {wanted.get(part, 0)}"
                yield Problem(("operation", laid.name), ("nest",), message, (f"part:{part}",), key=True)


_NEST = """
operations/cut-panel.yaml:
  pieces a sheet: 2
  nest:
    sheet: {length: 700 mm, width: 400 mm}
    pieces: [{part: panel, left: 5 mm, bottom: 5 mm, columns: NUMBER, pitch: 330 mm}]
"""

RULE = Rule(
    slug="nest-count",
    severity=Severity.error,
    why="Minutes and goods a piece are counted from the sheet, and the next station waits for what was never cut.",
    remedy="Lay as many as a sheet makes, or correct `pieces a sheet`.",
    check=check,
    bad=_NEST.replace("NUMBER", "1"),
    good=_NEST.replace("NUMBER", "2"),
    follows_from=("shape-impossible", "name-unknown"),
)
