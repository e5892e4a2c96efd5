"""A piece of a nest turned against its grain, or against the nap of its goods."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.model import Nest, NestPiece, Part

_OFF_GRAIN_DEG = 0.5


def check(subject: Subject) -> Iterator[Problem]:
    """Grain of each piece along the roll; of lengthwise goods, all pieces with their tops the same way."""
    for name, operation in subject.model.operations.items():
        if operation.nest is not None:
            yield from _off_grain(subject, name, operation.nest)
            yield from _against_nap(subject, name, operation.nest)


def _off_grain(subject: Subject, operation: str, nest: Nest) -> Iterator[Problem]:
    for number, piece in enumerate(nest.pieces):
        part = subject.model.parts.get(piece.part)
        if part is None or part.grain == "none":
            continue
        off = _grain_deg(piece, part) % 180 - 90
        if abs(off) > _OFF_GRAIN_DEG:
            message = f"the grain of {piece.part} lies {abs(off):g}° off the roll"
            yield Problem(("operation", operation), _turn(number, piece), message, (f"part:{piece.part}",))


def _against_nap(subject: Subject, operation: str, nest: Nest) -> Iterator[Problem]:
    first: tuple[str, float] | None = None
    for number, piece in enumerate(nest.pieces):
        material = subject.model.materials.get(subject.model.material_of(piece.part) or "")
        if material is None or material.direction != "lengthwise":
            continue
        top = _turned(piece)
        first = first or (piece.part, top)
        if abs((top - first[1] + 180) % 360 - 180) > 90:
            message = f"{piece.part} lies head to foot with {first[0]}, and the goods are cut one way only"
            yield Problem(("operation", operation), _turn(number, piece), message, (f"part:{piece.part}",))


def _turn(number: int, piece: NestPiece) -> tuple[str | int, ...]:
    path = ("nest", "pieces", number)
    return (*path, "turn") if piece.turn is not None else path


def _turned(piece: NestPiece) -> float:
    return float(piece.turn.value) if piece.turn is not None else 0.0


def _grain_deg(piece: NestPiece, part: Part) -> float:
    """Direction of the grain on the sheet, degrees from across the roll. A part turned over keeps it."""
    return {"up": 90.0, "across": 0.0}[part.grain] + _turned(piece)


_NEST = """
parts/panel.yaml: {grain: up}
operations/cut-panel.yaml:
  nest: {margin: 5 mm, pieces: [{part: panel, turn: TURN}]}
"""

RULE = Rule(
    slug="nest-grain",
    severity=Severity.error,
    why="Off its grain a piece stretches and hangs askew; against the nap it looks another shade.",
    remedy="Turn the piece so that its grain runs along the roll, or correct the part's `grain:` if it is free.",
    check=check,
    bad=_NEST.replace("TURN", "90 deg"),
    good=_NEST.replace("TURN", "180 deg"),
)
