"""A detail view: the drawing of the window, with the whole part small on its left and the window framed on it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import TYPE_CHECKING

from builder.drawing import look
from builder.drawing.svg import inside, num
from builder.view import FigureView

if TYPE_CHECKING:
    from builder.drawing.drawn import Drawing

GAP_MM = 3.0


def with_locator(figure: FigureView, locator: FigureView, draw: Callable[[FigureView], Drawing]) -> tuple[Drawing, str]:
    """The detail's drawing at its final height and text places, and the markup of both drawings side by side."""
    aside = locator.width_mm + GAP_MM
    place = draw(locator)
    detail = draw(replace(figure, width_mm=figure.width_mm - aside, locator=None))
    markup = f'<g transform="translate(0 {num(look.PAD)})">{inside(place.svg)}</g>'
    markup += f'<g transform="translate({num(aside)} 0)">{inside(detail.svg)}</g>'
    height = max(detail.height_mm, place.height_mm + look.PAD)
    texts = tuple(replace(one, box=one.box.moved(aside, 0.0)) for one in detail.texts)
    return replace(detail, width_mm=figure.width_mm, height_mm=height, texts=texts), markup
