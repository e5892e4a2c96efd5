"""Order numbers of runs: a number in a disc beside its run, farther off with a leader.

Only lists the ways and what each costs; label_place.py chooses.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from functools import partial
from itertools import product

from builder.drawing import look
from builder.drawing.box import Box, Trace, box_about
from builder.drawing.field import Field
from builder.drawing.font import Lettering
from builder.drawing.label_cost import LEADER, Candidate, Way
from builder.drawing.lettered import LabelArt, TextBlock, block_size
from builder.drawing.run import Run
from builder.drawing.svg import XY

_SHARES = ((0.5, 0.0), (0.36, 0.25), (0.64, 0.25), (0.22, 0.6), (0.78, 0.6), (0.12, 1.1), (0.88, 1.1))
_OFFS = (0.9, 2.0, 2.9, 4.2, 6.0, 8.5, 11.5, 15.0)
_SLIDES = (0.0, 0.6, -0.6)
_PER_MM = 0.45
_LEADER = 1.2
_NO_LEADER = 2.2


def _places() -> list[tuple[float, float, int, float, float]]:
    """Every place beside a run as (cost, distance, which share of the run, side, slide)."""
    found = [
        (_PER_MM * off + worse + abs(slide) * 0.3 + (_LEADER if off > _NO_LEADER else 0.0), off, number, side, slide)
        for off, (number, (_, worse)), side in product(_OFFS, enumerate(_SHARES), (1.0, -1.0))
        for slide in (_SLIDES if off > _NO_LEADER else (0.0,))
    ]
    return sorted(found, key=lambda place: place[0])


_PLACES = _places()


@dataclass(frozen=True, slots=True)
class _Disc:
    """Sizes of a disc: itself, and the text in it, mm."""

    number: str
    width: float
    height: float
    text: XY


def disc_ways(number: str, run: Run, lettering: Lettering, paper: Field) -> Iterator[Way]:
    """An order number beside its run."""
    text = block_size((number,), True, lettering)
    height = lettering.cap_mm + 1.9
    disc = _Disc(number, max(text[0] + 1.7, height), height, text)
    along = [run.at(share) for share, _ in _SHARES]
    ways: dict[tuple[int, float, float], tuple[XY, float]] = {}
    for cost, off, share, side, slide in _PLACES:
        at, way = along[share]
        known = ways.get((share, side, slide))
        if known is None:
            known = ways[share, side, slide] = _way_off(disc, way, side, slide)
        normal, reach = known
        box = box_about((at[0] + normal[0] * (off + reach), at[1] + normal[1] * (off + reach)), disc.width, height)
        if paper.allows(box):
            yield cost, _at(disc, box, at, normal, off, cost, lettering)


def _way_off(disc: _Disc, way: XY, side: float, slide: float) -> tuple[XY, float]:
    """The direction away from a run to one side, and how far the disc reaches along it.

    A disc is round: its reach in any direction is its radius; a longer number adds its straight part.
    """
    x, y = -way[1] * side + way[0] * slide, way[0] * side + way[1] * slide
    size = math.hypot(x, y)
    return (x / size, y / size), disc.height / 2 + abs(x / size) * (disc.width - disc.height) / 2


def _gone(at: XY, way: XY, off: float) -> XY:
    return at[0] + way[0] * off, at[1] + way[1] * off


def _at(disc: _Disc, box: Box, at: XY, way: XY, off: float, cost: float, lettering: Lettering) -> Candidate:
    if off < _NO_LEADER:
        return Candidate(box, (), cost, partial(_art, disc, box, None, lettering))
    # The leader begins on its run, so its first stretch is no crossing; its last may lie in the disc's corner.
    line = Trace(*_gone(at, way, off - 1), *_gone(at, way, 0.5), weight=LEADER)
    return Candidate(box, (line,), cost, partial(_art, disc, box, (_gone(at, way, off), at), lettering))


def _art(disc: _Disc, box: Box, leader: tuple[XY, XY] | None, lettering: Lettering) -> LabelArt:
    centre = box.centre
    top = centre[1] + lettering.cap_mm / 2 - lettering.above
    left = centre[0] - disc.text[0] / 2
    words = TextBlock((disc.number,), Box(left, top, left + disc.text[0], top + disc.text[1]), look.ACCENT, True)
    pieces = () if leader is None else (leader,)
    dot = None if leader is None else leader[1]
    return LabelArt((words,), pieces, dot=dot, disc=box, colour=look.ACCENT, width=0.25)
