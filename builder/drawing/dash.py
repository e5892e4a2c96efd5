"""Broken lines that begin and end with a full dash, so that corners are drawn, not guessed."""

from __future__ import annotations

import math
from collections.abc import Sequence

from builder.drawing.run import Run
from builder.drawing.svg import num, pair, stroke

# A stitch drawn at its true pitch needs this much paper, in line widths; below it a wider dash stands for the seam.
_LEGIBLE = 2.3
_DASH_MM, _GAP_MM = 1.6, 1.0


def fitted(length: float, pattern: Sequence[float], closing: int = 1) -> list[float] | None:
    """The pattern stretched so that a line of this length ends with a full dash; None for a solid line.

    pattern : dash, gap, dash, gap …, an even number of lengths
    closing : how many of them come once more at the end, an odd number
    """
    period, last = sum(pattern), sum(pattern[:closing])
    count = round((length - last) / period)
    if count < 1:
        return None
    factor = length / (count * period + last)
    return [part * factor for part in pattern]


def dashed(
    run: Run, pattern: Sequence[float], colour: str, width: float, cap: str | None = None, closing: int = 1
) -> str:
    """A run with a fitted dash pattern."""
    dash = fitted(run.length, pattern, closing)
    said = None if dash is None else " ".join(num(part) for part in dash)
    return stroke(f"M{pair(run.start)}{run.data}", colour, width, dash=said, cap=cap, join="round")


def stitch_dashes(run: Run, pitch: float, colour: str, width: float) -> str:
    """A row of stitches: one dash a stitch where that can be seen, otherwise a dash that can.

    pitch : stitch length on paper, mm; 0 when not known

    Dashes have round ends, like thread going down into the goods. Each run begins and ends with a dash, and
    dashes of two runs meet round at the corner, where the needle is down.
    """
    count = math.ceil(run.length / pitch - 1e-9) if pitch >= _LEGIBLE * width else 0
    if count > 1:
        period = run.length / count
        # The round ends make each dash longer and each gap shorter by the width of the line.
        gap = width + max(0.3, 0.3 * (period - width))
        dash = max(period - gap, 0.05)
        gap = (run.length - count * dash) / (count - 1)
        said = f"{num(dash)} {num(gap)}"
        return stroke(f"M{pair(run.start)}{run.data}", colour, width, dash=said, cap="round", join="round")
    dash = max(_DASH_MM, 1.8 * width) - width
    return dashed(run, (dash, max(_GAP_MM, width) + width), colour, width, cap="round")


def dash_dot(run: Run, colour: str, width: float) -> str:
    """A fold: dash, dot, dash."""
    return dashed(run, (4.2, 1.0, 0.6, 1.0), colour, width)


def centre_dashes(run: Run, colour: str, width: float) -> str:
    """A centre line: longer dashes than a fold's, so that it isn't taken for one."""
    return dashed(run, (9.0, 1.0, 1.4, 1.0), colour, width)


def dash_pairs(run: Run, colour: str, width: float) -> str:
    """A chain stitch: dashes in pairs."""
    return dashed(run, (1.5, width + 0.35, 1.5, width + 1.5), colour, width, closing=3)
