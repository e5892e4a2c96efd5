"""Pieces of a nest that lie on each other."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.lengths import length_words
from builder.checking.nests import nests
from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.geometry import too_near


def check(subject: Subject) -> Iterator[Problem]:
    """Each line of a nest once, with the first piece it comes too near to; rows and columns without a pitch too."""
    for laid in nests(subject):
        for entry, words in laid.faults:
            part = laid.nest.pieces[entry].part
            yield Problem(("operation", laid.name), ("nest", "pieces", entry), words, (f"part:{part}",))
        told: set[int] = set()
        for one, other in too_near(laid.pieces, laid.gap):
            if other.entry in told:
                continue
            told.add(other.entry)
            how = f"nearer than {length_words(subject, laid.gap)} to each other" if laid.gap else "on each other"
            message = f"piece {one.number + 1} of {one.part} and piece {other.number + 1} of {other.part} lie {how}"
            about = (f"part:{one.part}", f"part:{other.part}")
            yield Problem(("operation", laid.name), ("nest", "pieces", other.entry), message, about)


_NEST = """
operations/cut-panel.yaml:
  nest:
    sheet: {length: 700 mm, width: 400 mm}
    pieces: [{part: panel, left: 5 mm, bottom: 5 mm, columns: 2, pitch: PITCH}]
"""

RULE = Rule(
    slug="nest-overlap",
    severity=Severity.error,
    why="One cut goes through the next piece, and the sheet is scrap.",
    remedy="Move the pieces apart, or correct pitch and turn.",
    check=check,
    bad=_NEST.replace("PITCH", "200 mm"),
    good=_NEST.replace("PITCH", "330 mm"),
    follows_from=("shape-impossible", "name-unknown"),
)
