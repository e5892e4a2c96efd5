"""Hatching of an area by computed lines, because clips and patterns need ids."""

from __future__ import annotations

import math
from collections.abc import Sequence

from builder.drawing.area import crossings
from builder.drawing.box import Box, Trace
from builder.drawing.svg import XY


def hatch(area: Sequence[XY], spacing: float, free: Sequence[Box] = (), turn_deg: float = 45.0) -> list[tuple[XY, XY]]:
    """Parallel lines that fill an area, left out in the boxes.

    spacing  : between lines, mm
    free     : boxes to leave white, such as labels
    turn_deg : direction of the lines from the horizontal, rising to the right
    """
    cos, sin = math.cos(math.radians(turn_deg)), -math.sin(math.radians(turn_deg))
    # In turned coordinates the hatch lines are level: u along them, v across.
    turned = [(x * cos + y * sin, -x * sin + y * cos) for x, y in area]
    lowest, highest = min(v for _, v in turned), max(v for _, v in turned)
    lines: list[tuple[XY, XY]] = []
    for number in range(math.ceil(lowest / spacing), math.floor(highest / spacing) + 1):
        v = number * spacing
        met = crossings(turned, v)
        for low, high in zip(met[::2], met[1::2], strict=False):
            ends = [(u * cos - v * sin, u * sin + v * cos) for u in (low, high)]
            lines += _outside_boxes((ends[0], ends[1]), free)
    return [(a, b) for a, b in lines if math.dist(a, b) > 0.3]


def _outside_boxes(line: tuple[XY, XY], boxes: Sequence[Box]) -> list[tuple[XY, XY]]:
    pieces = [line]
    for box in boxes:
        pieces = [piece for one in pieces for piece in _outside_box(one, box)]
    return pieces


def _outside_box(line: tuple[XY, XY], box: Box) -> list[tuple[XY, XY]]:
    (ax, ay), (bx, by) = line
    shares = Trace(ax, ay, bx, by).shares_in(box)
    if shares is None:
        return [line]
    first, last = ((ax + (bx - ax) * share, ay + (by - ay) * share) for share in shares)
    return [((ax, ay), first), (last, (bx, by))]
