"""Pieces of a nest that leave the sheet."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.lengths import length_words
from builder.checking.nests import nests
from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.geometry import beyond_sheet


def check(subject: Subject) -> Iterator[Problem]:
    """Each line of a nest once, and a sheet wider than its material."""
    for laid in nests(subject):
        told: set[int] = set()
        for piece in beyond_sheet(laid.pieces, laid.length, laid.width, laid.gap):
            if piece.entry in told:
                continue
            told.add(piece.entry)
            _, _, right, top = piece.outline.bounds()
            its = f"{length_words(subject, laid.length)} x {length_words(subject, laid.width)}"
            reach = f"{length_words(subject, right)} x {length_words(subject, top)}"
            message = f"piece {piece.number + 1} of {piece.part} reaches to {reach}; the sheet is {its}"
            if laid.gap:
                message += f", less {length_words(subject, laid.gap)} at each edge"
            yield Problem(("operation", laid.name), ("nest", "pieces", piece.entry), message, (f"part:{piece.part}",))


_NEST = """
operations/cut-panel.yaml:
  nest: {sheet: {length: LENGTH, width: 400 mm}, pieces: [{part: panel, left: 5 mm, bottom: 5 mm}]}
"""

RULE = Rule(
    slug="nest-outside-sheet",
    severity=Severity.error,
    why="The piece comes out with an edge missing, or the head runs over the end of the goods.",
    remedy="Move the piece, turn it, or take a longer sheet.",
    check=check,
    bad=_NEST.replace("LENGTH", "200 mm"),
    good=_NEST.replace("LENGTH", "400 mm"),
    follows_from=("shape-impossible", "name-unknown", "part-larger-than-goods"),
)
