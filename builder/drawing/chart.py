"""One bar of a chart of times laid end to end: where a step starts, how long it is, whether it was measured.

Bars only; the words and numbers beside them are the page's.
"""

from __future__ import annotations

from builder.drawing import look
from builder.drawing.hatch import hatch
from builder.drawing.svg import element, lines_d, num, stroke

_SPACING = 2.2


def time_bar_svg(start_share: float, own_share: float, estimated: bool, width: float, height: float) -> str:
    """A bar between two shares of the whole, solid when measured, hatched in an outline when estimated.

    start_share, own_share : of the whole, 0 … 1, together at most 1
    width, height          : size of the whole chart row, in the page's unit, > 0
    Returns an inline SVG without a text; the numbers stand beside it. Raises ValueError outside these ranges.
    """
    if not (width > 0 and height > 0):
        raise ValueError("A bar needs a width and a height above 0.")
    if not (start_share >= 0 and own_share >= 0 and start_share + own_share <= 1 + 1e-9):
        raise ValueError(f"A bar from {start_share:g} over {own_share:g} leaves the whole.")
    x, wide = start_share * width, max(own_share * width, 0.4)
    x = min(x, width - wide)
    track = element("rect", x=0, y=height * 0.42, width=width, height=height * 0.16, fill=look.MANILA)
    bar = (
        _estimate(x, wide, height) if estimated else element("rect", x=x, y=0, width=wide, height=height, fill=look.INK)
    )
    return element(
        "svg",
        track + bar,
        xmlns="http://www.w3.org/2000/svg",
        viewBox=f"0 0 {num(width)} {num(height)}",
        width=num(width),
        height=num(height),
        aria_hidden="true",
        focusable="false",
    )


def _estimate(x: float, wide: float, height: float) -> str:
    line = min(0.8, wide / 4, height / 8)
    inset = line / 2
    left, right, bottom = x + inset, x + wide - inset, height - inset
    area = [(left, inset), (right, inset), (right, bottom), (left, bottom)]
    outline = element(
        "rect",
        x=x + inset,
        y=inset,
        width=max(wide - line, 0.0),
        height=height - line,
        fill=look.GROUND,
        stroke=look.INK,
        stroke_width=line,
    )
    lines = hatch(area, _SPACING)
    return outline + (stroke(lines_d(lines), look.INK, line) if lines else "")
