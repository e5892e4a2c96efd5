"""A figure view drawn: chooses the scale so that part, dimensions and labels fit, and writes the SVG.

The printed width is given; nothing is scaled after this, so lettering keeps its height on paper.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace

from builder.drawing import look
from builder.drawing.box import Box
from builder.drawing.drawn import Drawing
from builder.drawing.font import Lettering
from builder.drawing.frame import Frame, drawn_size
from builder.drawing.hatch import hatch
from builder.drawing.layout import Layout, lay_out
from builder.drawing.lettered import TextBox
from builder.drawing.locator import with_locator
from builder.drawing.margins import estimated, frame_within, used
from builder.drawing.svg import document, element, lines_d, num, stroke
from builder.model import Family
from builder.view import FigureView

_PASSES = 3
_HATCH_SPACING = 2.6
_ZONE_SPACING = 1.5
# How many points of clutter a drawing twice as large is worth.
_SCALE_WORTH = 60.0
# Narrower figures are drawn as if this wide and made smaller whole, lines and symbols with the part.
_FULL_WEIGHT_MM = 70.0
# A clear drawing is drawn again only if it grows by this much, and that is this share of all that is wrong with it.
_WORTH_ANOTHER, _WORTH_SHARE = 1.03, 0.03
# Line work that leaves the paper is cut off.
_BEYOND_PER_MM = 200.0


def draw_part(figure: FigureView, family: Family) -> Drawing:
    """Draw a part. The same figure gives the same drawing, byte for byte.

    family : the lettering; its faces must be installed
    """
    if figure.locator is not None:
        drawing, markup = with_locator(figure, figure.locator, lambda one: draw_part(one, family))
        return replace(drawing, svg=_document(figure, drawing.height_mm, markup))
    if figure.width_mm < _FULL_WEIGHT_MM:
        return _small(figure, family)
    lettering = Lettering(family, figure.text_mm)
    layout = _best_layout(figure, lettering)
    return _written(figure, layout, lettering)


def _small(figure: FigureView, family: Family) -> Drawing:
    """A figure too narrow for the usual line weights: a large drawing made smaller, texts at the height asked for."""
    share = figure.width_mm / _FULL_WEIGHT_MM
    lettering = Lettering(family, figure.text_mm / share)
    large = replace(figure, width_mm=_FULL_WEIGHT_MM, height_mm=figure.height_mm / share)
    layout = _best_layout(large, lettering)
    return _written(figure, layout, lettering, share)


def _best_layout(figure: FigureView, lettering: Lettering) -> Layout:
    """The clearest of at most three tries: with estimated margins, then with those the labels really took."""
    paper = Box(0.0, 0.0, figure.width_mm, figure.height_mm)
    margins = estimated(figure, lettering, paper)
    frame = frame_within(figure, margins, paper)
    best, least = None, math.inf
    for _ in range(_PASSES):
        layout = lay_out(figure, frame, paper, lettering)
        score = _score(figure, layout, paper)
        if best is None or score < least:
            best, least = layout, score
        margins = used(figure, layout, margins, lettering, paper)
        frame = frame_within(figure, margins, paper)
        too_small = _too_small(figure, frame, paper)
        saved = _too_small(figure, layout.work.frame, paper) - too_small
        if too_small >= least or _enough(layout, frame, paper, saved >= _WORTH_SHARE * score):
            break
    assert best is not None
    return best


def _enough(layout: Layout, following: Frame, paper: Box, saves: bool) -> bool:
    """Is another layout in the following frame not worth while?

    saves : would a clear drawing save a fair share of its score by being that large?
    """
    if following == layout.work.frame:
        return True
    clear = layout.clear and not _cut_off(layout, paper)
    return clear and (not saves or following.scale < layout.work.frame.scale * _WORTH_ANOTHER)


def _score(figure: FigureView, layout: Layout, paper: Box) -> float:
    cut_off = _BEYOND_PER_MM * _cut_off(layout, paper)
    return layout.cost + _too_small(figure, layout.work.frame, paper) + cut_off


def _too_small(figure: FigureView, frame: Frame, paper: Box) -> float:
    """The score of being drawn smaller than the paper would allow without labels."""
    wide, tall = drawn_size(figure.bounds, frame.breaks)
    largest = min(paper.width / wide, paper.height / tall)
    return _SCALE_WORTH * (1 - frame.scale / largest)


def _cut_off(layout: Layout, paper: Box) -> float:
    """How far the drawing sticks out of the paper, mm."""
    extent = layout.extent
    return max(0.0, -extent.x0, -extent.y0, extent.x1 - paper.x1, extent.y1 - paper.y1)


def _written(figure: FigureView, layout: Layout, lettering: Lettering, share: float = 1.0) -> Drawing:
    """The layout as a document, `share` of the size it was laid out in."""
    extent = layout.extent
    top = max(0.0, extent.y0 - look.PAD)
    height = round(min(figure.height_mm, (extent.y1 + look.PAD - top) * share), 3)
    markup = "".join([*_hatched(layout), *layout.work.over, *layout.marks])
    markup += "".join(art.svg(lettering, plate) for art, plate in layout.labels)
    place = f"translate(0 {num(-top * share)})" + (f" scale({share:.6g})" if share != 1 else "")
    return Drawing(
        svg=_document(figure, height, element("g", markup, transform=place)),
        width_mm=figure.width_mm,
        height_mm=height,
        scale=layout.work.frame.scale * share,
        texts=tuple(
            TextBox(text.text, Box(*(part * share for part in text.box.moved(0.0, -top))))
            for art, _ in layout.labels
            for text in art.boxes
        ),
        problems=tuple(layout.problems),
    )


def _hatched(layout: Layout) -> Sequence[str]:
    """The body with its hatches, which leave the texts free."""
    body = list(layout.work.body)
    free = [text.box.grown(0.5) for art, _ in layout.labels for text in art.texts]
    for index, area in layout.work.hatched:
        body[index] = stroke(lines_d(hatch(area, _HATCH_SPACING, free)), look.WRONG_HATCH, 0.2)
    for index, area in layout.work.zones:
        body[index] = stroke(lines_d(hatch(area, _ZONE_SPACING, free, -45.0)), look.EARLIER, look.HAIR)
    return body


def _document(figure: FigureView, height: float, content: str) -> str:
    return document(figure.title, figure.alt, figure.width_mm, height, content)
