"""Assemblies taken apart and pieces nested, for the gallery: those of the demo."""

from __future__ import annotations

from pathlib import Path

from builder.pipeline import check_plant, figures_of
from builder.view import FigureView

_DEMO = Path(__file__).resolve().parents[2] / "instructions"
_NESTED = ("cut-bar-panels", "cut-bar-ends", "cut-pouch-panels")
_ASSEMBLIES = ("pouch-body", "roll-body", "hanger-body", "pocket-row", "handle-panel")


def layers_gallery() -> list[FigureView]:
    """Each assembly's layers, and each nest."""
    checked = check_plant(_DEMO)
    figures = (one for name in (*_ASSEMBLIES, *_NESTED) for one in figures_of(checked, name, None, None))
    wanted = ("-layers", "-nest-1", "-nest-2")
    return [one for one in figures if isinstance(one, FigureView) and one.name.endswith(wanted)]
