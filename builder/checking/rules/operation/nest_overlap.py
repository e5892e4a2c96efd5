"""Pieces of a nest that lie on each other."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.lengths import length_words
from builder.checking.nests import laid_out
from builder.checking.rule import Problem, Rule, Subject
from builder.checking.walk import in_size
from builder.finding import Severity


def check(subject: Subject) -> Iterator[Problem]:
    """Pieces with a point in common, once for each two entries of a nest; edges that touch are cut once."""
    seen: set[tuple[str, int, int]] = set()
    for operation, _, size, sheet in laid_out(subject):
        for first, second, (x, y) in sheet.overlaps():
            one, other = sheet.pieces[first], sheet.pieces[second]
            if (operation, one.group, other.group) in seen:
                continue
            seen.add((operation, one.group, other.group))
            which = f"two pieces of {one.part}" if one.part == other.part else f"{one.part} and {other.part}"
            where = f"{length_words(subject, x)} from the left, {length_words(subject, y)} from the lower edge"
            message = f"{which} overlap{in_size(size)}, {where}"
            about = tuple(dict.fromkeys((f"part:{one.part}", f"part:{other.part}")))
            yield Problem(("operation", operation), ("nest", "pieces", other.group), message, about)


_NEST = """
operations/cut-panel.yaml:
  pieces a sheet: 4
  nest: {margin: 5 mm, pieces: [{part: panel, columns: 4, pitch: PITCH}]}
"""

RULE = Rule(
    slug="nest-overlap",
    severity=Severity.error,
    why="Of two pieces that overlap one is spoilt, on every sheet.",
    remedy="Move the pieces apart: leave `pitch:` and `row pitch:` out, and type the `gap:` between two pieces.",
    check=check,
    bad=_NEST.replace("PITCH", "290 mm"),
    good=_NEST.replace("PITCH", "300 mm"),
    follows_from=("shape-impossible",),
)
