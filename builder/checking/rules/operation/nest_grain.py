"""A piece laid across its grain."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.nests import nests
from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity

_ALONG = {"up": 90.0, "across": 0.0}
_SLACK_DEG = 1e-6


def check(subject: Subject) -> Iterator[Problem]:
    """The part's grain, after it is turned, against the roll, which lies along the sheet's length."""
    for laid in nests(subject):
        for entry, typed in enumerate(laid.nest.pieces):
            part = subject.model.base_of(typed.part)
            if part is None or part.grain not in _ALONG:
                continue
            turn = float(typed.turn.value) if typed.turn is not None else 0.0
            grain = _ALONG[part.grain]
            off = ((-grain if typed.side == "wrong" else grain) + turn) % 180
            if min(off, 180 - off) > _SLACK_DEG:
                message = f"the grain of {typed.part} lies {min(off, 180 - off):g}° off the roll"
                yield Problem(
                    ("operation", laid.name), ("nest", "pieces", entry, "turn"), message, (f"part:{typed.part}",)
                )


_NEST = """
parts/panel.yaml: {grain: up}
operations/cut-panel.yaml:
  nest: {sheet: {length: 700 mm, width: 400 mm}, pieces: [{part: panel, left: 5 mm, bottom: 5 mmTURN}]}
"""

RULE = Rule(
    slug="nest-grain",
    severity=Severity.error,
    why="Cut across the grain, the part stretches and its shade differs from its neighbours'.",
    remedy="Turn the piece, or correct the part's grain.",
    check=check,
    bad=_NEST.replace("TURN", ""),
    good=_NEST.replace("TURN", ", turn: 90°"),
    follows_from=("shape-impossible", "name-unknown"),
)
