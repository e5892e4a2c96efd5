"""Threads drawn as what they are: round, plied cords that pass over and under each other, and the goods they hold.

A thread is stroked in layers: a casing in the paper's colour, which cuts what it passes over, its outline, its core,
the grooves between its plies, and a light along its upper side. Threads differ by their core and by their grooves, so
that they can be told apart in black and white.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from builder.drawing import look
from builder.drawing.run import Run, path_d, points_of
from builder.drawing.svg import XY, filled, lines_d, stroke

_CASING, _OUTLINE = 0.22, 0.24
_LEAST = 0.7
_GROOVE, _SLANT = 0.85, 0.42
"""Grooves stand this many widths apart, and run so many widths along the thread on their way across it."""
_GROOVES_FROM = 1.0


@dataclass(frozen=True, slots=True)
class Dye:
    """Colours of a thread: its core, the grooves between its plies, the light on it."""

    core: str
    groove: str
    light: str


DYES = {
    "needle": Dye(look.ACCENT, "#7d1f0e", "#d9674f"),
    "needle 2": Dye("#e39c8a", "#a8503c", "#f3c9be"),
    "needle 3": Dye("#f0cfc6", "#b5776a", "#fbeae6"),
    "bobbin": Dye(look.GROUND, "#8a857c", look.GROUND),
    "looper": Dye(look.GROUND, "#8a857c", look.GROUND),
    "looper 2": Dye("#8f8a81", "#55514a", "#b9b4ab"),
    "looper 3": Dye("#d4cfc6", "#8a857c", "#ebe7e0"),
    "cover": Dye("#cdb98c", "#8d7846", "#e4d7b6"),
}
"""Dark cores for needles, white for what comes from below, grey and straw for the others."""

_GOODS = {"face": "#f4efe4", "back": "#e9e6e0", "cut": "#efe7d6"}
_SURFACE = "#b9ad94"
_HOLE = "#5a5347"


def thread_art(runs: Sequence[Run], thread: str, width: float, earlier: bool = False) -> list[str]:
    """A piece of a thread, above all that was drawn before it.

    width : of the cord, mm printed; never under what can be printed
    """
    width = max(width, _LEAST)
    d = path_d(runs)
    outline = look.EARLIER if earlier else look.INK
    dye = DYES.get(thread, DYES["bobbin"])
    core = width - 2 * _OUTLINE
    # A thread that runs towards the eye is a disc.
    point_on = sum(run.length for run in runs) < 0.3 * width
    cap = "round" if point_on else None
    art = [
        stroke(d, look.GROUND, width + 2 * _CASING, join="round", cap=cap),
        stroke(d, outline, width, join="round", cap=cap),
        stroke(d, dye.core, core, join="round", cap=cap),
    ]
    if width >= _GROOVES_FROM and not point_on:
        art.append(stroke(d, dye.light, core * 0.34, join="round"))
        art.append(stroke(lines_d(_grooves(runs, core)), dye.groove, 0.16))
    return art


def _grooves(runs: Sequence[Run], core: float) -> list[tuple[XY, XY]]:
    """Short lines across a cord, slanting as its plies do."""
    walk = Run(tuple(points_of(runs))).walk
    count = max(1, round(walk.length / (_GROOVE * core)))
    found = []
    for index in range(count):
        (x, y), (dx, dy) = walk.at(walk.length * (index + 0.5) / count)
        along, aside = _SLANT * core / 1.0, core / 2
        found.append(
            (
                (x - dx * along - dy * aside, y - dy * along + dx * aside),
                (x + dx * along + dy * aside, y + dy * along - dx * aside),
            )
        )
    return found


def goods_art(runs: Sequence[Run], side: str) -> list[str]:
    """Goods seen from a side or cut: their tone, and a line along both of their surfaces; the ends go on."""
    level = [run for run in runs if abs(run.start[1] - run.end[1]) < abs(run.start[0] - run.end[0])]
    return [filled(path_d(runs), _GOODS.get(side, look.GROUND)), stroke(path_d(level), _SURFACE, look.THIN)]


def puncture_art(runs: Sequence[Run], width: float) -> list[str]:
    """A needle hole, open as wide as its threads."""
    return [stroke(path_d(runs), _HOLE, width * 1.15, cap="round")]
