"""One door for everything that stands beside a step: figures of parts and panels of settings."""

from __future__ import annotations

from functools import lru_cache

from builder.drawing.drawn import Drawing
from builder.drawing.figure import draw_part
from builder.drawing.font import ATKINSON, Family
from builder.drawing.panel import draw_panel
from builder.view import AnyFigure, PanelView


@lru_cache(maxsize=512)
def draw(figure: AnyFigure, family: Family = ATKINSON) -> Drawing:
    """Draw a figure. The same figure gives the same drawing, byte for byte; identical ones are drawn once.

    family : the lettering; its faces must be installed
    """
    return draw_panel(figure, family) if isinstance(figure, PanelView) else draw_part(figure, family)


def draw_figure(figure: AnyFigure, family: Family = ATKINSON) -> str:
    """The SVG of a figure."""
    return draw(figure, family).svg
