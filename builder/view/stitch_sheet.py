"""Panels of one figure and the key to them: the arrangement that lets the panels be drawn largest."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from builder.geometry import Bounds, Point
from builder.view.stitch_panels import Panel

KEY = -1
"""Stands for the key among the numbers of the panels."""
_WORD, _LINE, _KEY = 4.4, 1.62, (12.2, 2.4)
"""In capital heights: room left of a panel for its word, a line of the key, the key's widest text and its samples."""
_GAP_MM, _OVER_MM, _BORDER_MM = 2.6, 11.5, 2.6
"""Printed: between panels, over all for a dimension, and to the border."""

Columns = tuple[tuple[int, ...], ...]
_WAYS: dict[int, tuple[Columns, ...]] = {
    3: (((0, 1, 2), (KEY,)), ((0, 1), (2, KEY)), ((0,), (1,), (2, KEY)), ((0,), (1, 2), (KEY,)), ((0, 1, 2, KEY),)),
    4: (((0, 1, 2, 3), (KEY,)), ((0, 1), (2, 3), (KEY,)), ((0, 1, 2, 3, KEY),)),
}
_HEIGHTS = (1.0, 1.2, 1.45, 1.75, 2.2, 2.8)
"""Shares of the height asked for that are tried in turn: large letters or many threads take more of the page."""
_CORD_MM = 1.1
"""A thread at least this thick, printed, is seen to pass over or under another."""


@dataclass(frozen=True, slots=True)
class Sheet:
    """Where each panel is moved to, in the figure's mm.

    rows   : left end of each row of the key, at the middle of its lines
    bounds : of all; scale: mm printed for a mm; height_mm: most height of the figure, printed
    """

    places: tuple[Point, ...]
    rows: tuple[Point, ...]
    bounds: Bounds
    scale: float
    height_mm: float


@dataclass(frozen=True, slots=True)
class _Paper:
    """What panels are arranged on. words: room for a panel's word; key: width and heights of its rows, mm printed."""

    width: float
    height: float
    words: float
    key: tuple[float, tuple[float, ...]]


def arranged(panels: Sequence[Panel], key: Sequence[int], paper: tuple[float, float, float]) -> Sheet:
    """The way to place panels and key that draws the panels largest. A cut across doesn't stand under the sides.

    key   : lines of each row of the key
    paper : printed width, height aimed at, capital height, mm; more height is taken where threads would be too thin
    """
    cap = paper[2]
    rows = tuple(lines * _LINE * cap + 0.3 * cap for lines in key)
    ways = [way for way in _WAYS[len(panels)] if panels[-1].look != "cut across" or len(way[0]) != len(panels)]
    for share in _HEIGHTS:
        height = paper[1] * share
        on = _Paper(paper[0] - _BORDER_MM, height - _OVER_MM, _WORD * cap, (sum(_KEY) * cap, rows))
        scale, way = max(((_largest(panels, way, on), way) for way in ways), key=lambda one: one[0])
        if scale * panels[0].size.thread >= _CORD_MM:
            break
    return _at_scale(panels, way, on, scale, height)


def word_mm(capital_mm: float) -> float:
    """Printed room left of each panel for its word."""
    return _WORD * capital_mm


def sample_mm(capital_mm: float) -> float:
    """Printed length of a sample of thread in the key."""
    return _KEY[1] * capital_mm


def _largest(panels: Sequence[Panel], way: Columns, on: _Paper) -> float:
    """The largest scale at which all fits, to a hundredth; 0 when nothing does."""
    low, high = 0.0, 1000.0
    for _ in range(40):
        middle = (low + high) / 2
        sizes = [_column(panels, column, on, middle) for column in way]
        fits = sum(size[0] for size in sizes) <= on.width and max(size[1] for size in sizes) <= on.height
        low, high = (middle, high) if fits else (low, middle)
    return low


def _column(panels: Sequence[Panel], column: Sequence[int], on: _Paper, scale: float) -> tuple[float, float]:
    """Width and height of a column, mm printed."""
    sizes = [_item(panels, one, on, scale) for one in column]
    return max(size[0] for size in sizes), sum(size[1] for size in sizes) + _GAP_MM * (len(sizes) - 1)


def _item(panels: Sequence[Panel], one: int, on: _Paper, scale: float) -> tuple[float, float]:
    if one == KEY:
        # A little room before it, so that it stands off the panels beside it.
        return on.key[0] + _GAP_MM, sum(on.key[1])
    left, low, right, high = panels[one].bounds
    return on.words + (right - left) * scale, (high - low) * scale


def _at_scale(panels: Sequence[Panel], way: Columns, on: _Paper, scale: float, height: float) -> Sheet:
    """All placed, columns beside each other, each in the middle of the height."""
    places: list[Point] = [(0.0, 0.0)] * len(panels)
    rows: list[Point] = []
    sizes = [_column(panels, column, on, scale) for column in way]
    tallest = max(tall for _, tall in sizes)
    x = 0.0
    for column, (wide, tall) in zip(way, sizes, strict=True):
        top = -(tallest - tall) / 2
        for one in column:
            if one == KEY:
                middle = top
                for row in on.key[1]:
                    rows.append(((x + _GAP_MM) / scale, (middle - row / 2) / scale))
                    middle -= row
            else:
                left, _, _, high = panels[one].bounds
                places[one] = (x + on.words) / scale - left, top / scale - high
            top -= _item(panels, one, on, scale)[1] + _GAP_MM
        x += wide
    return Sheet(tuple(places), tuple(rows), (0.0, -tallest / scale, x / scale, 0.0), scale, height)
