"""A nest that holds other numbers than the operation says."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from builder.checking.nests import laid_out
from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.geometry import NestLayout
from builder.model import Nest, Operation


def check(subject: Subject) -> Iterator[Problem]:
    """Pieces of each part on the sheet, times its layers, against `pieces a sheet` times what a run makes."""
    seen: set[tuple[str, str]] = set()
    for name, nest, _, sheet in laid_out(subject):
        operation = subject.model.operations[name]
        if operation.pieces_a_sheet is None:
            continue  # nobody says how many there are to be
        layers = subject.settings(name).get("layers")
        placed = _placed(nest, sheet, layers.count if layers is not None and layers.count else 1)
        for part, wanted in _wanted(operation).items():
            found = placed.get(part, 0)
            if found == wanted or (name, part) in seen:
                continue
            seen.add((name, part))
            message = f"the nest holds {found} of {part}, but {operation.pieces_a_sheet} runs a sheet make {wanted}"
            number = next((n for n, piece in enumerate(nest.pieces) if piece.part == part), None)
            path = ("nest", "pieces", number) if number is not None else ("nest",)
            yield Problem(("operation", name), path, message, (f"part:{part}",), key=number is None)


def _placed(nest: Nest, sheet: NestLayout, layers: int) -> dict[str, int]:
    found: dict[str, int] = {}
    for piece, count in zip(nest.pieces, sheet.counts, strict=True):
        found[piece.part] = found.get(piece.part, 0) + count * layers
    return found


def _wanted(operation: Operation) -> Mapping[str, int]:
    """Pieces a sheet must hold of each part."""
    return {part: count * (operation.pieces_a_sheet or 0) for part, count in operation.makes.items()}


_NEST = """
operations/cut-panel.yaml:
  pieces a sheet: 20
  nest: {margin: 5 mm, gap: 4 mm, pieces: [{part: panel, count: COUNT}]}
"""

RULE = Rule(
    slug="nest-count",
    severity=Severity.warning,
    why="Times and goods are counted for so many pieces a sheet, and the cutter lifts off another number.",
    remedy="Correct `pieces a sheet:`, or the pieces of the nest.",
    check=check,
    bad=_NEST.replace("COUNT", "18"),
    good=_NEST.replace("COUNT", "20"),
    follows_from=("shape-impossible", "name-unknown"),
)
