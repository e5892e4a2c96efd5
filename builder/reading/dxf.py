"""Drawings: the lines and arcs on one layer of a DXF file, in millimetres. Which of them are an outline is geometry's.

The file is looked through before a library parses it (dxf_scan.py); whatever the library stumbles over is a
DrawingFault.
"""

from __future__ import annotations

import hashlib
from collections.abc import Iterable
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from builder.reading.dxf_blocks import placed_entities
from builder.reading.dxf_pieces import Piece, pieces_of
from builder.reading.dxf_scan import SAVE_AGAIN, DrawingFault, scan

CURVE_MM = 0.01
"""How far the arcs that stand for a spline or an ellipse may leave it. A cutter's own error is ten times that."""

MOST_PIECES = 1000
"""Most lines and arcs a layer with an outline may have; more come from a scan or a picture."""

UNITS = {"mm": 1.0, "cm": 10.0, "m": 1000.0, "in": 25.4, "ft": 304.8}
"""Millimetres of the units an outline may say where its drawing says none."""

_CLEAN_UP = "Draw the outline with lines and arcs, on a layer of its own."


@dataclass(frozen=True, slots=True)
class DrawingLines:
    """What is drawn on one layer, in mm, with a hash of it that a hundredth of a millimetre changes."""

    layer: str
    pieces: tuple[Piece, ...]

    @property
    def digest(self) -> str:
        """SHA-256 of the pieces rounded to 0.01 mm, whatever their order; saving the file again doesn't change it."""
        lines = sorted(" ".join(f"{value + 0.0:.2f}" for value in _numbers(piece)) for piece in self.pieces)
        return hashlib.sha256("\n".join(lines).encode()).hexdigest()


def _numbers(piece: Piece) -> tuple[float, ...]:
    return (*piece.start, *piece.end, 100 * piece.bulge)


def read_drawing(path: Path, layer: str | None = None, unit: str | None = None) -> DrawingLines:
    """The lines on a layer, or on the only one that has any when `layer` is None.

    unit : of a file that doesn't say it, one of UNITS
    Raises DrawingFault: no DXF, cut off, too large, blocks without end, an unknown unit, nothing on the layer.
    """
    found = scan(path)
    unit_mm = found.unit_mm or UNITS.get(unit or "")
    if unit is not None and unit_mm != UNITS[unit]:
        message = f"The drawing says its unit is {found.unit_mm:g} mm, not {unit}."
        raise DrawingFault(message, "Take `unit:` out, or correct the drawing's unit and save it again.", "unit")
    if unit_mm is None:
        raise DrawingFault(
            "The drawing doesn't say its unit.", "Type `unit: mm` or `unit: in` beside `drawing:`.", "unit"
        )
    try:
        by_layer = _by_layer(_parsed(path))
        chosen = _chosen(by_layer, layer)
        return DrawingLines(chosen, _in_mm(by_layer[chosen], unit_mm))
    except DrawingFault:
        raise
    except MemoryError:
        raise
    except Exception as error:  # the library raises whatever it stumbles over
        raise DrawingFault(f"The drawing is damaged ({type(error).__name__}).", SAVE_AGAIN) from None


def _parsed(path: Path) -> Any:
    try:
        from ezdxf.filemanagement import readfile
    except ImportError:
        raise DrawingFault(
            "Reading drawings needs the library ezdxf, which isn't installed.", "Install it: pip install seamboard[dxf]"
        ) from None
    return readfile(path)


def _by_layer(document: Any) -> dict[str, list[Any]]:
    found: dict[str, list[Any]] = {}
    for layer, entity in placed_entities(document):
        found.setdefault(layer, []).append(entity)
    return found


def _chosen(by_layer: dict[str, list[Any]], layer: str | None) -> str:
    """The layer as the file spells it. Names of layers don't tell small and capital letters apart."""
    known = ", ".join(sorted(by_layer))
    if not by_layer:
        raise DrawingFault("The drawing has no lines.", _CLEAN_UP)
    if layer is None:
        if len(by_layer) > 1:
            message = f"The drawing has lines on {len(by_layer)} layers: {known}."
            raise DrawingFault(message, "Say which one is the outline with `layer:`.")
        return next(iter(by_layer))
    same = next((name for name in by_layer if name.casefold() == layer.casefold()), None)
    if same is None:
        message = f"The drawing has no lines on a layer {layer}; layers with lines: {known}."
        raise DrawingFault(message, "Name one of them.", "layer")
    return same


def _in_mm(entities: Iterable[Any], unit_mm: float) -> tuple[Piece, ...]:
    pieces: list[Piece] = []
    for entity in entities:
        for piece in pieces_of(entity, CURVE_MM / unit_mm):
            # The library counts in numbers of its own kind, which look different in a hash.
            ax, ay, bx, by, bulge = map(float, (*piece.start, *piece.end, piece.bulge))
            pieces.append(Piece((ax * unit_mm, ay * unit_mm), (bx * unit_mm, by * unit_mm), bulge))
            if len(pieces) > MOST_PIECES:
                raise DrawingFault(f"The layer comes to over {MOST_PIECES:,} lines and arcs.", _CLEAN_UP, "layer")
    return tuple(pieces)
