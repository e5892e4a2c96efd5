"""Door of the drawing room: view objects to SVG. It places labels and chooses scales; it calls no formula."""

from builder.drawing.any_figure import draw, draw_figure
from builder.drawing.chart import draw_chart
from builder.drawing.drawn import Drawing
from builder.drawing.imported_svg import draw_imported
from builder.drawing.lettered import TextBox
from builder.drawing.needle_art import needle_outline, needle_parts_figure
from builder.drawing.overlay import Overlay, draw_callouts
from builder.drawing.raster import outlined, png_of, raster_available
from builder.drawing.sign import SIGNS, Sign, sign_body, sign_svg
from builder.drawing.template_art import template_map_svg, template_sheet_svg
from builder.drawing.verdict import verdict_svg

__all__ = [
    "template_map_svg",
    "template_sheet_svg",
    "SIGNS",
    "Drawing",
    "Overlay",
    "Sign",
    "TextBox",
    "draw",
    "draw_chart",
    "draw_figure",
    "draw_imported",
    "needle_outline",
    "needle_parts_figure",
    "outlined",
    "draw_callouts",
    "png_of",
    "raster_available",
    "sign_body",
    "sign_svg",
    "verdict_svg",
]
