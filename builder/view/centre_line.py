"""The centre line of a piece whose half is typed: drawn where nothing else lies on the piece but notches."""

from __future__ import annotations

from collections.abc import Iterator

from builder.geometry import Line
from builder.view.figure import Stroke
from builder.view.scene import SceneLayer

_BEYOND = 0.03
"""How far the line reaches beyond the piece at each end, as a share of its length."""


def centre_line(layer: SceneLayer) -> Iterator[Stroke]:
    """The stroke of a layer's centre line, none for a piece without one or with work on it."""
    line = layer.shape.centre_line
    if line is None or any(one.shape.kind != "notch" for one in layer.features):
        return
    left, bottom, right, top = layer.shape.bounds
    (x, y), upright = line.start, abs(line.start[0] - line.end[0]) < abs(line.start[1] - line.end[1])
    beyond = _BEYOND * ((top - bottom) if upright else (right - left))
    ends = ((x, bottom - beyond), (x, top + beyond)) if upright else ((left - beyond, y), (right + beyond, y))
    start, end = (layer.placing.point(point) for point in ends)
    yield Stroke("centre line", "part", (Line(start, end),))
