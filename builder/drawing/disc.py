"""Order numbers of runs: a number in a disc beside its run, farther off with a leader.

Only lists the ways and what each costs; label_place.py chooses.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from functools import partial

from builder.drawing import look
from builder.drawing.box import Box, Trace, box_about
from builder.drawing.font import Lettering
from builder.drawing.label_cost import LEADER, Batch, Candidate
from builder.drawing.lettered import LabelArt, TextBlock, block_size
from builder.drawing.run import Run
from builder.drawing.svg import XY

_SHARES = ((0.5, 0.0), (0.36, 0.25), (0.64, 0.25), (0.22, 0.6), (0.78, 0.6), (0.12, 1.1), (0.88, 1.1))
_OFFS = (0.9, 2.0, 2.9, 4.2, 6.0, 8.5, 11.5, 15.0)
_SLIDES = (0.0, 0.6, -0.6)
_PER_MM = 0.45
_LEADER = 1.2
_NO_LEADER = 2.2


@dataclass(frozen=True, slots=True)
class _Disc:
    """Sizes of a disc: itself, and the text in it, mm."""

    number: str
    width: float
    height: float
    text: XY


def disc_ways(number: str, run: Run, lettering: Lettering) -> Iterator[Batch]:
    """An order number beside its run."""
    text = block_size((number,), True, lettering)
    height = lettering.cap_mm + 1.9
    disc = _Disc(number, max(text[0] + 1.7, height), height, text)
    for off in _OFFS:
        found = []
        for share, worse in _SHARES:
            at, way = run.at(share)
            for side in (1.0, -1.0):
                for slide in _SLIDES if off > _NO_LEADER else (0.0,):
                    normal = _slid((-way[1] * side, way[0] * side), way, slide)
                    found.append(_at(disc, at, normal, off, worse + abs(slide) * 0.3, lettering))
        yield Batch(_PER_MM * off, found)


def _slid(normal: XY, way: XY, slide: float) -> XY:
    x, y = normal[0] + way[0] * slide, normal[1] + way[1] * slide
    size = math.hypot(x, y)
    return x / size, y / size


def _at(disc: _Disc, at: XY, way: XY, off: float, worse: float, lettering: Lettering) -> Candidate:
    # A disc is round: its reach in any direction is its radius; a longer number adds its straight part.
    reach = disc.height / 2 + abs(way[0]) * (disc.width - disc.height) / 2
    centre = (at[0] + way[0] * (off + reach), at[1] + way[1] * (off + reach))
    box = box_about(centre, disc.width, disc.height)
    cost = _PER_MM * off + worse
    if off < _NO_LEADER:
        return Candidate((box,), (), cost, partial(_art, disc, centre, None, lettering))
    piece = ((at[0] + way[0] * off, at[1] + way[1] * off), at)
    # The leader begins on its run, so its first stretch is no crossing; its last may lie in the disc's corner.
    near, far = (at[0] + way[0] * 0.5, at[1] + way[1] * 0.5), (at[0] + way[0] * (off - 1), at[1] + way[1] * (off - 1))
    line = Trace(*far, *near, weight=LEADER)
    return Candidate((box,), (line,), cost + _LEADER, partial(_art, disc, centre, piece, lettering))


def _art(disc: _Disc, centre: XY, leader: tuple[XY, XY] | None, lettering: Lettering) -> LabelArt:
    top = centre[1] + lettering.cap_mm / 2 - lettering.above
    left = centre[0] - disc.text[0] / 2
    words = TextBlock((disc.number,), Box(left, top, left + disc.text[0], top + disc.text[1]), look.ACCENT, True)
    box = box_about(centre, disc.width, disc.height)
    pieces = () if leader is None else (leader,)
    dot = None if leader is None else leader[1]
    return LabelArt((words,), pieces, dot=dot, disc=box, colour=look.ACCENT, width=0.25)
