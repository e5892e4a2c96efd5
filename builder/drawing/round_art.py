"""Holes, drill holes and hardware drawn as what they are: true size where the scale allows it, else a symbol large
enough to be told.

Forms after drafting and trade practice: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence

from builder.drawing import look, symbol
from builder.drawing.box import Box, box_about, box_round
from builder.drawing.run import Run, chain_d, is_ring, points_of
from builder.drawing.svg import XY, circle, lines_d, stroke

# From this radius on paper on, a hole is drawn as it is, with its centre marked.
_TRUE_HOLE = 1.1
_CENTRE_ARM = 0.6
# An opening nobody gave a size, as a share of the whole.
_OPENING = 0.55
_METAL = "#dcd9d3"
# The two lines of a frame, as one wide line with a lighter one in it.
_FRAME = 1.3


def drilled(centre: XY, radius: float, colour: str, width: float) -> tuple[str, Box]:
    """A drill hole: the trade's circle with a cross through it."""
    radius = max(radius, look.HOLE_RADIUS)
    return symbol.drill_hole(centre, radius, colour, width), box_about(centre, 2 * radius + 1.5, 2 * radius + 1.5)


def holed(centre: XY, radius: float, colour: str, width: float) -> tuple[str, Box]:
    """A hole: its circle with its centre marked inside; too small for that, as a drill hole."""
    if radius < _TRUE_HOLE:
        return drilled(centre, radius, colour, width)
    art = circle(centre, radius, colour=colour, width=width) + _centre(centre, _CENTRE_ARM, colour)
    return art, box_about(centre, 2 * radius, 2 * radius)


def hardware(runs: Sequence[Run], kind: str, opening: float, colour: str, width: float) -> tuple[str, Box]:
    """A piece of hardware by its outline on paper.

    kind    : eyelet, snap, rivet, buckle, '' for what is just round
    opening : its inner diameter on paper, 0 when nobody gave it
    """
    box = box_round([Box(x, y, x, y) for x, y in points_of(runs)])
    if kind == "buckle" or not 0.8 <= box.width / max(box.height, 1e-9) <= 1.25:
        return _framed(runs, box, kind, colour), box.grown(_FRAME / 2)
    true = max(box.width, box.height) / 2
    radius = max(true, look.HARDWARE_RADIUS)
    inner = opening / 2 * radius / true if opening and true else radius * _OPENING
    art = _ROUND.get(kind, _plain)(box.centre, radius, inner, colour, width)
    return art, box_about(box.centre, 2 * radius, 2 * radius)


def _plain(centre: XY, radius: float, inner: float, colour: str, width: float) -> str:
    return circle(centre, radius, fill=look.GROUND, colour=colour, width=width) + _centre(centre, _CENTRE_ARM, colour)


def _eyelet(centre: XY, radius: float, inner: float, colour: str, width: float) -> str:
    """A metal ring, and what is seen through it."""
    ring = circle(centre, radius, fill=_METAL, colour=colour, width=width)
    return ring + circle(centre, inner, fill=look.GROUND, colour=colour, width=width)


def _snap(centre: XY, radius: float, inner: float, colour: str, width: float) -> str:
    """Two rings: the cap, and the stud or socket in it."""
    return symbol.hardware(centre, radius, colour, width)


def _rivet(centre: XY, radius: float, inner: float, colour: str, width: float) -> str:
    ring = circle(centre, radius, fill=look.GROUND, colour=colour, width=width)
    return ring + circle(centre, radius * 0.45, fill=colour)


_ROUND: dict[str, Callable[[XY, float, float, str, float], str]] = {"eyelet": _eyelet, "snap": _snap, "rivet": _rivet}


def _framed(runs: Sequence[Run], box: Box, kind: str, colour: str) -> str:
    """A buckle or a slider keeps its own shape, drawn as a double line; a buckle has its bar."""
    shape = chain_d(runs, is_ring(runs))
    bar = lines_d([_bar(runs, box)]) if kind == "buckle" else ""
    return stroke(shape + bar, colour, _FRAME, join="round") + stroke(
        shape + bar, look.GROUND, _FRAME - 2 * look.THIN, join="round"
    )


def _bar(runs: Sequence[Run], box: Box) -> tuple[XY, XY]:
    """The bar of a buckle: between the middles of its long sides."""
    straight = sorted((run for run in runs if run.straight), key=lambda run: -run.length)
    if len(straight) < 2:
        return (box.centre[0], box.y0), (box.centre[0], box.y1)
    return straight[0].at(0.5)[0], straight[1].at(0.5)[0]


def _centre(centre: XY, arm: float, colour: str) -> str:
    (x, y) = centre
    return stroke(lines_d([((x - arm, y), (x + arm, y)), ((x, y - arm), (x, y + arm))]), colour, look.HAIR)


def round_size(runs: Sequence[Run]) -> tuple[XY, float]:
    """Centre and radius of a circle's line work."""
    box = box_round([Box(x, y, x, y) for x, y in points_of(runs)])
    return box.centre, max(box.width, box.height) / 2
