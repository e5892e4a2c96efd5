"""Threads drawn as what they are: round cords that pass over and under each other.

A thread is stroked three times: a casing in the paper's colour, which cuts what it passes over, its outline, and its
core. Threads differ by their core, so that they can be told apart in black and white.
"""

from __future__ import annotations

from collections.abc import Sequence

from builder.drawing import look
from builder.drawing.run import Run, path_d
from builder.drawing.svg import stroke

_CASING, _OUTLINE = 0.45, 0.28
_LEAST = 0.9
CORES = {
    "needle": look.ACCENT,
    "needle 2": "#e08a76",
    "bobbin": look.GROUND,
    "looper": look.GROUND,
    "looper 2": look.EARLIER,
    "cover": look.MANILA,
}
"""The core of each thread: dark for needles, white for what comes from below, grey and manila for the others."""


def thread_art(runs: Sequence[Run], thread: str, width: float, earlier: bool = False) -> list[str]:
    """A piece of a thread, above all that was drawn before it.

    width : of the cord, mm printed; never under what can be printed
    """
    width = max(width, _LEAST)
    d = path_d(runs)
    outline = look.EARLIER if earlier else look.INK
    return [
        stroke(d, look.GROUND, width + 2 * _CASING, join="round"),
        stroke(d, outline, width, join="round"),
        stroke(d, CORES.get(thread, look.GROUND), width - 2 * _OUTLINE, join="round"),
    ]
