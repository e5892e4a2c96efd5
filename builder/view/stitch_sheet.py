"""Panels of one figure beside and under each other: the arrangement that lets them be drawn largest."""

from __future__ import annotations

from collections.abc import Sequence

from builder.geometry import Bounds, Point
from builder.view.stitch_panels import Panel

_GAP = 0.07
"""Between panels, a share of the longer side of them all."""
_WORDS_MM = (34.0, 14.0)
"""Printed room for words: beside panels that stand in one column, and over and under others."""

Rows = tuple[tuple[int, ...], ...]
_WAYS: dict[int, tuple[Rows, ...]] = {
    1: (((0,),),),
    2: (((0,), (1,)), ((0, 1),)),
    3: (((0,), (1,), (2,)), ((0, 1), (2,)), ((0, 1, 2),)),
    4: (((0,), (1,), (2, 3)), ((0, 1), (2, 3))),
}


def arranged(panels: Sequence[Panel], paper: tuple[float, float]) -> tuple[list[Point], Bounds]:
    """Where each panel is moved to, and the bounds of all. paper : width and most height of the figure, mm"""
    best: tuple[float, list[Point], Bounds] | None = None
    for way in _WAYS[len(panels)]:
        places, bounds = _placed(panels, way)
        beside = _WORDS_MM[0] if all(len(row) == 1 for row in way) else _WORDS_MM[0] / 2
        wide, tall = bounds[2] - bounds[0], bounds[3] - bounds[1]
        scale = min((paper[0] - beside) / wide, (paper[1] - _WORDS_MM[1]) / tall)
        if best is None or scale > best[0] * 1.02:
            best = scale, places, bounds
    assert best is not None
    return best[1], best[2]


def _placed(panels: Sequence[Panel], way: Rows) -> tuple[list[Point], Bounds]:
    gap = _GAP * max(_size(panels[0]))
    places: list[Point] = [(0.0, 0.0)] * len(panels)
    wide = max(sum(_size(panels[i])[0] for i in row) + gap * (len(row) - 1) for row in way)
    top = 0.0
    for row in way:
        tall = max(_size(panels[i])[1] for i in row)
        x = 0.0
        for number in row:
            left, _, _, high = panels[number].bounds
            places[number] = (x - left, top - high)
            x += _size(panels[number])[0] + gap
        top -= tall + gap
    return places, (0.0, top + gap, wide, 0.0)


def _size(panel: Panel) -> tuple[float, float]:
    left, low, right, high = panel.bounds
    return right - left, high - low
