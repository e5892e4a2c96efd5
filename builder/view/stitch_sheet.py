"""Panels of one figure beside and under each other: the arrangement that lets them be drawn largest."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from builder.geometry import Bounds, Point
from builder.view.stitch_panels import Panel

_WORD_MM = 3.4
"""Printed room for a panel's word on its left, in capital heights."""
_ROWS_MM = 3.0
_LABELS_MM, _LAST_MM = (36.0, 9.0), 10.0
"""Printed room for the labels beside a column of panels, and for the dimension over all; beside the last column of several."""

Columns = tuple[tuple[int, ...], ...]
_WAYS: dict[int, tuple[Columns, ...]] = {
    2: (((0, 1),), ((0,), (1,))),
    3: (((0, 1, 2),), ((0, 1), (2,)), ((0,), (1,), (2,))),
    4: (((0, 1, 2), (3,)), ((0, 1), (2, 3))),
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


def _placed(panels: Sequence[Panel], way: Columns, paper: tuple[float, float, float]) -> Sheet:
    columns = [[_size(panels[i]) for i in column] for column in way]
    words = word_mm(paper[2])
    beside, over = _LABELS_MM if len(way) == 1 else (_LAST_MM, _LABELS_MM[1])
    width = paper[0] - beside - len(way) * words
    height = min((paper[1] - over - (len(c) - 1) * _ROWS_MM) / sum(size[1] for size in c) for c in columns)
    scale = min(width / sum(max(size[0] for size in column) for column in columns), height)
    return _at_scale(panels, way, scale, words)


def _at_scale(panels: Sequence[Panel], way: Columns, scale: float, words: float) -> Sheet:
    places: list[Point] = [(0.0, 0.0)] * len(panels)
    gap = _ROWS_MM / scale
    talls = [sum(_size(panels[i])[1] for i in column) + gap * (len(column) - 1) for column in way]
    x = 0.0
    for column, tall in zip(way, talls, strict=True):
        x += words / scale
        top = -(max(talls) - tall) / 2
        for number in column:
            places[number] = (x - panels[number].bounds[0], top - panels[number].bounds[3])
            top -= _size(panels[number])[1] + gap
        x += max(_size(panels[i])[0] for i in column)
    return Sheet(tuple(places), (0.0, -max(talls), x, 0.0), scale)


def _size(panel: Panel) -> tuple[float, float]:
    left, low, right, high = panel.bounds
    return right - left, high - low
