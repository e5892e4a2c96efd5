"""Plies of a section: bands of goods, each material with a tone and a pattern of its own that hold in black and white.

The wrong side carries a comb of short slanted ticks; a needle stands where it goes in.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from builder.drawing import look
from builder.drawing.hatch import hatch
from builder.drawing.run import Run, Walk, path_d, points_of
from builder.drawing.svg import XY, circle, filled, lines_d, polyline_d, stroke

_CLOTH = "#f7f4ec"
_TONES = {
    "cloth": _CLOTH,
    "cloth 2": "#dcd6c8",
    "cloth 3": "#bdb6a8",
    "webbing": look.MANILA,
    "tape": "#cbb88f",
    "foam": "#ffffff",
    "mesh": "#f3f3f1",
    "felt": "#d3cec4",
    "board": "#8d877c",
    "zip": "#d9d9d6",
}
_OUTLINE = 0.32
_TICK, _SPACING = 0.8, 1.9
_STEEL = "#d5d6d6"


def ply_art(runs: Sequence[Run], goods: str, thick: float) -> list[str]:
    """A band of goods: tone, pattern, outline. thick : of the band, mm printed"""
    art = [filled(path_d(runs), _TONES.get(goods, _CLOTH))]
    art += list(_pattern(points_of(runs), goods, thick))
    return [*art, stroke(path_d(runs), look.INK, _OUTLINE, join="round")]


def _pattern(area: Sequence[XY], goods: str, thick: float) -> Iterator[str]:
    if goods in ("webbing", "tape"):
        for turn in (60.0, -60.0) if goods == "webbing" else (60.0,):
            lines = hatch(area, 1.15 if goods == "webbing" else 0.9, turn_deg=turn)
            yield stroke(lines_d(lines), "#a08e66", 0.16)
    elif goods == "felt":
        lines = [line for turn in (12.0, -35.0) for line in hatch(area, 1.5, turn_deg=turn)]
        yield stroke(lines_d(lines), look.EARLIER, 0.14, dash="1.2 1.4")
    elif goods in ("foam", "mesh"):
        size = min(0.34, thick / 7) if goods == "foam" else 0.2
        yield from (circle(at, size, colour=look.EARLIER, width=0.14) for at in _dots(area, 1.25))


def _dots(area: Sequence[XY], spacing: float) -> Iterator[XY]:
    """Places in a band, row by row, each row shifted by half."""
    for number, (start, end) in enumerate(sorted(hatch(area, spacing * 0.8, turn_deg=0.0), key=lambda one: one[0][1])):
        (x0, y), (x1, _) = sorted((start, end))
        count = math.floor((x1 - x0) / spacing)
        first = x0 + (x1 - x0 - count * spacing) / 2 + (spacing / 4 if number % 2 else -spacing / 4)
        for step in range(count + 1):
            if x0 + 0.3 < first + step * spacing < x1 - 0.3:
                yield first + step * spacing, y


def wrong_side_art(runs: Sequence[Run], thick: float) -> list[str]:
    """The comb on a wrong side; the goods lie to the left of the line."""
    points = points_of(runs)
    walk = Walk(points)
    depth = min(_TICK, 0.5 * thick)
    lines: list[tuple[XY, XY]] = []
    for number in range(1, math.floor(walk.length / _SPACING) + 1):
        (x, y), (dx, dy) = walk.at(number * _SPACING - _SPACING / 2)
        # On paper y runs down, so left of the way is (dy, -dx).
        lines.append(((x, y), (x + dy * depth + dx * depth * 0.6, y - dx * depth + dy * depth * 0.6)))
    return [stroke(lines_d(lines), look.INK, 0.2), stroke(polyline_d(points), look.INK, _OUTLINE)]


def needle_art(run: Run) -> list[str]:
    """A needle from its shank to its point."""
    (x0, y0), (x1, y1) = run.start, run.end
    size = math.dist(run.start, run.end) or 1.0
    way, aside = ((x1 - x0) / size, (y1 - y0) / size), (-(y1 - y0) / size, (x1 - x0) / size)

    def at(along: float, off: float) -> XY:
        return x0 + way[0] * along + aside[0] * off, y0 + way[1] * along + aside[1] * off

    half = 0.75
    outline = [at(0, half), at(size - 3.0, half), at(size, 0), at(size - 3.0, -half), at(0, -half)]
    eye = [at(size - 4.6, 0.0), at(size - 3.2, 0.0)]
    return [
        filled(polyline_d(outline, closed=True), _STEEL),
        stroke(polyline_d(outline), look.INK, 0.3, join="round"),
        stroke(polyline_d(eye), look.INK, 0.5, cap="round"),
    ]
