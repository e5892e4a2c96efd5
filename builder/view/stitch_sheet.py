"""Panels of one figure beside and under each other: the arrangement that lets them be drawn largest."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from builder.geometry import Bounds, Point
from builder.view.stitch_panels import Panel

_WORD_MM = 3.4
"""Printed room for a panel's word on its left, in capital heights."""
_ROWS_MM = 3.0
_LABELS_MM = (30.0, 9.0)
"""Printed room for the labels beside a column of panels, and for the dimension over all."""

Rows = tuple[tuple[int, ...], ...]
_WAYS: dict[int, tuple[Rows, ...]] = {
    1: (((0,),),),
    2: (((0,), (1,)), ((0, 1),)),
    3: (((0,), (1,), (2,)), ((0, 1), (2,)), ((0, 1, 2),)),
    4: (((0,), (1,), (2, 3)), ((0, 1), (2, 3))),
}


@dataclass(frozen=True, slots=True)
class Sheet:
    """Where each panel is moved to, the bounds of all, and about how large all is drawn: mm printed for a mm."""

    places: tuple[Point, ...]
    bounds: Bounds
    scale: float


def arranged(panels: Sequence[Panel], paper: tuple[float, float, float]) -> Sheet:
    """The way to place panels that draws them largest. paper : printed width, most height, capital height, mm"""
    tries = [_placed(panels, way, paper) for way in _WAYS[len(panels)]]
    return max(tries, key=lambda one: one.scale)


def word_mm(capital_mm: float) -> float:
    """Printed room left of each panel for its word."""
    return _WORD_MM * capital_mm


def _placed(panels: Sequence[Panel], way: Rows, paper: tuple[float, float, float]) -> Sheet:
    rows = [[_size(panels[i]) for i in row] for row in way]
    words = word_mm(paper[2])
    column = all(len(row) == 1 for row in way)
    labels = _LABELS_MM[0] if column else 0.0
    width = min((paper[0] - labels - len(row) * words) / sum(size[0] for size in row) for row in rows)
    tall = sum(max(size[1] for size in row) for row in rows)
    scale = min(width, (paper[1] - _LABELS_MM[1] - (len(rows) - 1) * _ROWS_MM) / tall)
    return _at_scale(panels, way, scale, words)


def _at_scale(panels: Sequence[Panel], way: Rows, scale: float, words: float) -> Sheet:
    places: list[Point] = [(0.0, 0.0)] * len(panels)
    top, right = 0.0, 0.0
    for row in way:
        tall = max(_size(panels[i])[1] for i in row)
        x = 0.0
        for number in row:
            left, low, end, high = panels[number].bounds
            x += words / scale
            places[number] = (x - left, top - high - (tall - (high - low)) / 2)
            x += end - left
        right = max(right, x)
        top -= tall + _ROWS_MM / scale
    return Sheet(tuple(places), (0.0, top + _ROWS_MM / scale, right, 0.0), scale)


def _size(panel: Panel) -> tuple[float, float]:
    left, low, right, high = panel.bounds
    return right - left, high - low
