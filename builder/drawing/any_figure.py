"""One door for what stands beside a step: figures of parts and panels of settings. Equal ones are drawn once.

What a figure is called has no part in its picture, so it is left out of the comparison and written in afterwards.
"""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache

from builder.drawing.drawn import Drawing
from builder.drawing.figure import draw_part
from builder.drawing.panel import draw_panel
from builder.drawing.raster import ready
from builder.drawing.svg import document, inside
from builder.model import Family, spoken_family
from builder.view import AnyFigure, FigureView, PanelView


def draw(figure: AnyFigure, family: Family | None = None) -> Drawing:
    """Draw a figure. The same figure gives the same drawing, byte for byte.

    family : the lettering, that of the language spoken now when left out; its faces must be installed
    """
    drawing = drawn(_unnamed(figure), family or spoken_family())
    svg = document(figure.title, figure.alt, drawing.width_mm, drawing.height_mm, inside(drawing.svg))
    return replace(drawing, svg=svg)


def draw_figure(figure: AnyFigure, family: Family | None = None) -> str:
    """The SVG of a figure."""
    return draw(figure, family).svg


@lru_cache(maxsize=512)
def drawn(figure: AnyFigure, family: Family) -> Drawing:
    """The drawing of a figure without a name."""
    drawing = draw_panel(figure, family) if isinstance(figure, PanelView) else draw_part(figure, family)
    return replace(drawing, svg=ready(drawing.svg, family))


def _unnamed(figure: AnyFigure) -> AnyFigure:
    bare = replace(figure, name="", title="", alt="", facts=())
    if isinstance(bare, FigureView) and bare.locator is not None:
        return replace(bare, locator=replace(bare.locator, name="", title="", alt="", facts=()))
    return bare
