"""Pleats, darts, zips and elastic as line work.

A pleat: the crease that moves dash-dot and heavy, the one that lies under it dash-dot and thin, the line it meets
solid, an arrow from the first to the last. A zip: tapes, teeth, stops and its slider with the pull. Elastic: a band
with a zigzag in it.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence

from builder.drawing import look
from builder.drawing.dash import dash_dot
from builder.drawing.run import Run, chain_d, chains, offset_points, path_d, points_of
from builder.drawing.stitch_line import Pen, zigzag
from builder.drawing.svg import XY, element, filled, polyline_d, stroke
from builder.drawing.symbol import arrowhead

_ARROW, _ARROW_HALF = 2.2, 0.85
# Teeth: share of the tapes' width they take, and how much of that they are never drawn narrower than, mm printed.
_CHAIN_SHARE, _CHAIN_LEAST = 0.22, 1.5
_TOOTH = 0.42

Art = Callable[[Sequence[Run], Pen, float], list[str]]
"""Line work of one stroke: its runs, its pen, its width on paper in mm."""


def _solid(runs: Sequence[Run], pen: Pen, width: float) -> list[str]:
    return [stroke(path_d(runs), pen.colour, min(pen.width, 0.45))]


def _heavy_fold(runs: Sequence[Run], pen: Pen, width: float) -> list[str]:
    return [dash_dot(run, pen.colour, pen.width) for run in runs]


def _thin_fold(runs: Sequence[Run], pen: Pen, width: float) -> list[str]:
    return [dash_dot(run, pen.colour, min(pen.width, look.THIN)) for run in runs]


def _arrow(runs: Sequence[Run], pen: Pen, width: float) -> list[str]:
    """From what moves to what it meets; on a small drawing the head is as long as the way."""
    art = []
    for run in runs:
        tip, way = run.at(1.0)
        length = min(_ARROW, run.length)
        head = arrowhead(tip, way, length, _ARROW_HALF * max(length / _ARROW, 0.6))
        art.append(stroke(path_d([run]), pen.colour, min(pen.width, 0.45)))
        art.append(filled(polyline_d(head, closed=True), pen.colour))
    return art


def _chain_width(width: float) -> float:
    return max(_CHAIN_LEAST, _CHAIN_SHARE * width)


def _teeth(runs: Sequence[Run], pen: Pen, width: float) -> list[str]:
    """Meshed teeth: short lines across, from both sides in turn, as a dashed line as wide as the chain."""
    wide = _chain_width(width)
    art = []
    for chain in chains(runs):
        points = points_of(chain)
        for side in (-wide / 4, wide / 4):
            row = _as_run(offset_points(points, side, closed=False))
            dash = f"{_TOOTH} {_TOOTH}"
            art.append(
                element(
                    "path",
                    d=chain_d([row]),
                    fill="none",
                    stroke=pen.colour,
                    stroke_width=round(wide / 2, 3),
                    stroke_dasharray=dash,
                    stroke_dashoffset=_TOOTH if side > 0 else 0,
                )
            )
    return art


def _parted(runs: Sequence[Run], pen: Pen, width: float) -> list[str]:
    """An open zip: the gap between the tapes, and a row of teeth on either."""
    wide = _chain_width(width)
    art = []
    for chain in chains(runs):
        points = points_of(chain)
        art.append(stroke(chain_d(chain), look.GROUND, 1.5 * wide))
        for side in (-wide, wide):
            edge = polyline_d(offset_points(points, side * 0.75, closed=False))
            row = polyline_d(offset_points(points, side * 0.55, closed=False))
            art.append(stroke(edge, pen.colour, look.HAIR))
            art.append(stroke(row, pen.colour, wide * 0.4, dash=f"{_TOOTH} {_TOOTH}"))
    return art


def _stop(runs: Sequence[Run], pen: Pen, width: float) -> list[str]:
    return [stroke(path_d(runs), pen.colour, _chain_width(width) * 1.2)]


def _slider(runs: Sequence[Run], pen: Pen, width: float) -> list[str]:
    """The slider's body over the chain, and its pull lying along it."""
    wide = _chain_width(width) * 1.5
    (start, way), (end, _) = runs[0].at(0.0), runs[-1].at(1.0)
    length = max(math.dist(start, end), wide)
    middle = ((start[0] + end[0]) / 2, (start[1] + end[1]) / 2)
    body = _tapered(middle, way, length, wide)
    pull = _tapered(middle, way, length * 0.62, wide * 0.34)
    line = min(pen.width, 0.45)
    return [
        element("path", d=polyline_d(body, closed=True), fill=look.GROUND, stroke=pen.colour, stroke_width=line),
        element("path", d=polyline_d(pull, closed=True), fill=pen.colour),
    ]


def _tapered(middle: XY, way: XY, length: float, wide: float) -> list[XY]:
    """An eight-cornered shape along a direction."""
    across = (-way[1], way[0])
    corners = (
        (-0.5, 0.28),
        (-0.36, 0.5),
        (0.36, 0.5),
        (0.5, 0.28),
        (0.5, -0.28),
        (0.36, -0.5),
        (-0.36, -0.5),
        (-0.5, -0.28),
    )
    return [
        (
            middle[0] + way[0] * along * length + across[0] * aside * wide,
            middle[1] + way[1] * along * length + across[1] * aside * wide,
        )
        for along, aside in corners
    ]


def _elastic(runs: Sequence[Run], pen: Pen, width: float) -> list[str]:
    """A zigzag through the band, kept a little off its edges."""
    half = max(0.32 * width, 0.5)
    return [
        stroke(
            polyline_d(zigzag(_as_run(points_of(chain)), max(2.2, half), -half, half)), pen.colour, 0.4, join="round"
        )
        for chain in chains(runs)
    ]


def _tape(runs: Sequence[Run], pen: Pen, width: float) -> list[str]:
    return [stroke(path_d(runs), pen.colour, min(pen.width, look.STRIP_EDGE))]


def _as_run(points: Sequence[XY]) -> Run:
    return Run(tuple(points))


ART: dict[str, Art] = {
    "pleat meets": _solid,
    "pleat outer": _heavy_fold,
    "pleat inner": _thin_fold,
    "pleat arrow": _arrow,
    "dart leg": _solid,
    "dart fold": _thin_fold,
    "dart arrow": _arrow,
    "zip tape": _tape,
    "zip chain": _teeth,
    "zip parted": _parted,
    "zip stop": _stop,
    "zip slider": _slider,
    "elastic tape": _tape,
    "elastic": _elastic,
}
"""The line work of each role."""
