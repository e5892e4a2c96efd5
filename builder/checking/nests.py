"""The nests of a plant with their pieces laid out, for the rules that judge them."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from builder.checking.rule import Subject
from builder.geometry import GeometryFault, LaidPiece, laid_pieces
from builder.model import Nest, Operation, nest_width


@dataclass(frozen=True, slots=True)
class LaidNest:
    """A nest in the reference size. length, width, gap in mm; pieces that can't be laid are left out."""

    name: str
    operation: Operation
    nest: Nest
    length: float
    width: float
    gap: float
    pieces: tuple[LaidPiece, ...]
    faults: tuple[tuple[int, str], ...]


def nests(subject: Subject) -> Iterator[LaidNest]:
    """Every nest whose sheet is known, with its pieces where they lie."""
    for name, operation in subject.model.operations.items():
        nest = operation.nest
        width = nest_width(operation, subject.model)
        if nest is None or width is None:
            continue
        pieces: list[LaidPiece] = []
        faults: list[tuple[int, str]] = []
        for entry, typed in enumerate(nest.pieces):
            shape = subject.book.shape(typed.part, subject.dimensions.values)
            if shape is None:
                continue
            try:
                pieces += laid_pieces(entry, typed, shape)
            except GeometryFault as fault:
                faults.append((entry, str(fault)))
        gap = float(nest.gap.value) if nest.gap is not None else 0.0
        yield LaidNest(
            name, operation, nest, float(nest.sheet.length.value), float(width.value), gap, tuple(pieces), tuple(faults)
        )
