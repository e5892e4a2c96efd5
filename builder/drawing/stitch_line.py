"""How a seam is drawn: each stitch type of ISO 4915 in its own line, in three weights.

The drawings are conventions of this program, told apart in black and white; the words beside say which
stitch it is.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass

from builder.drawing.dash import dash_pairs, stitch_dashes
from builder.drawing.run import Run, chains, is_ring, offset_points, points_of, smooth_stretches
from builder.drawing.svg import XY, polyline_d, stroke

# Half the width a bartack is drawn with when only its line is given, mm printed.
_TACK_HALF = 0.75
_TACK_LEAST = 0.55

Side = Callable[[XY, XY], float]
"""Which way an edge is closed: (point, direction) → mm to the right on paper, negative to the left."""


@dataclass(frozen=True, slots=True)
class Pen:
    """Colour, and width in printed mm, of a line."""

    colour: str
    width: float


def kind_of(stitch: str) -> str:
    """The way a stitch type is drawn: dash, pair, zigzag, overlock or cover. Unknown types are dashes."""
    if stitch in ("304", "308", "321", "404"):
        return "zigzag"
    return {"1": "pair", "4": "pair", "5": "overlock", "6": "cover"}.get(stitch[:1], "dash")


def seam_art(runs: Sequence[Run], stitch: str, pitch: float, pen: Pen, side: Side) -> list[str]:
    """The line of a seam.

    pitch : stitch length on paper, mm
    side  : where the goods' edge lies, for stitches that go over it
    """
    kind = kind_of(stitch)
    art: list[str] = []
    for run in smooth_stretches(runs):
        if kind == "overlock":
            art += _overlock(run, stitch, pen, side)
        elif kind == "zigzag":
            art.append(stroke(polyline_d(zigzag(run, 1.4, -0.8, 0.8)), pen.colour, pen.width * 0.6, join="round"))
        elif kind == "cover":
            art += _cover(run, pen)
        elif kind == "pair":
            art.append(dash_pairs(run, pen.colour, pen.width))
        else:
            art.append(stitch_dashes(run, pitch, pen.colour, pen.width))
    return art


def _overlock(run: Run, stitch: str, pen: Pen, side: Side) -> list[str]:
    """A ladder over the edge; a fourth thread (514) adds a dashed row in it, a safety row (516) one beside it."""
    reach = side(*run.at(0.5))
    thin = pen.width * 0.55
    art = [stroke(polyline_d(zigzag(run, 1.9, 0.0, reach)), pen.colour, thin, join="round")]
    inner = math.copysign(0.15, -reach)
    art.append(stroke(polyline_d(_aside(run, reach + inner)), pen.colour, thin))
    if stitch in ("507", "512", "514"):
        art.append(stitch_dashes(_as_run(_aside(run, reach / 2)), 0.0, pen.colour, thin))
    if stitch in ("515", "516", "517", "518", "519"):
        beyond = reach + math.copysign(1.3, reach)
        art.append(dash_pairs(_as_run(_aside(run, beyond)), pen.colour, thin))
    return art


def _cover(run: Run, pen: Pen) -> list[str]:
    """Two needle rows with the covering thread between."""
    thin = pen.width * 0.55
    rows = [stitch_dashes(_as_run(_aside(run, aside)), 0.0, pen.colour, thin) for aside in (-0.9, 0.9)]
    return [*rows, stroke(polyline_d(zigzag(run, 1.8, -0.9, 0.9)), pen.colour, thin * 0.6, join="round")]


def _aside(run: Run, aside: float) -> list[XY]:
    return offset_points(run.points, aside, closed=math.dist(run.start, run.end) < 0.02)


def _as_run(points: Sequence[XY]) -> Run:
    return Run(tuple(points))


def zigzag(run: Run, step: float, low: float, high: float) -> list[XY]:
    """Points that jump between two lines beside a run, both mm to the right of its direction."""
    walk = run.walk
    count = max(2, round(walk.length / step) * 2)
    found: list[XY] = []
    for index in range(count + 1):
        (x, y), (dx, dy) = walk.at(walk.length * index / count)
        aside = high if index % 2 else low
        found.append((x - dy * aside, y + dx * aside))
    return found


def bartack_art(runs: Sequence[Run], pen: Pen) -> list[str]:
    """A dense zigzag for each chain of runs: along a line, filling the long way of a box, or as given.

    A tack given as its own zigzag keeps its length and width; its stitches are drawn as dense as can be seen.
    """
    art: list[str] = []
    width = min(pen.width, 0.5)
    for chain in chains(runs):
        half, axis = _tack_axis(chain)
        points = zigzag(axis, max(0.7, 1.7 * width), -half, half)
        art.append(stroke(polyline_d(points), pen.colour, width, join="round"))
    return art


def _tack_axis(chain: Sequence[Run]) -> tuple[float, Run]:
    """Half width and middle line of a tack."""
    if len(chain) == 4 and is_ring(chain):
        first = 0 if chain[0].length <= chain[1].length else 1
        axis = Run((chain[first].at(0.5)[0], chain[first + 2].at(0.5)[0]), straight=True)
        return max(chain[first].length / 2, _TACK_LEAST), axis
    points = points_of(chain)
    if len(chain) < 3:
        return _TACK_HALF, Run(tuple(points))
    axis = Run((chain[0].at(0.5)[0], chain[-1].at(0.5)[0]), straight=True)
    (x, y), (dx, dy) = axis.at(0.0)
    half = max(abs((px - x) * -dy + (py - y) * dx) for px, py in points)
    return max(half, _TACK_LEAST), axis
