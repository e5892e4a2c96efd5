"""Cover stitches: needle rows, a looper thread across all of them under the goods, and a cover thread above.

406, 407 without and 602 with a cover thread.
Source: counts of threads: ISO 4915 (see tests/published/test_stitch_types.py). That the looper thread interloops with
all needle threads under the goods, and that the cover thread lies on the face, held down by the needle threads, was
read in a teaching text on stitch classes (no author named, www.dybbs8.com/excel/3216739.html); that it is laid in loops
on opposite sides of the two needles, which go down inside them, in the claims of a patent, "Cover thread assist member"
(trea.com, read). That a bight of the
looper thread passes through the loops of one stitch and round the far needle's next legs is memory of how 401 is
formed. Where each strand lies is ours.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

from builder.geometry.stitch_course import Cord, Hold, Space, StitchSize, StitchThreads, straight

_BESIDE = 1.7
_SLANT = math.radians(-30)
_COS, _SIN = math.cos(_SLANT), math.sin(_SLANT)
"""Needle loops stand at this angle to the seam, so that they are seen as loops along it and across it."""


def cover_row(count: int, size: StitchSize, needles: int = 2, covered: bool = False) -> StitchThreads:
    """406 and 407 by their needles; 602 with a cover thread. Rows lie a gauge apart, the first one on the right."""
    rows = [(number - (needles - 1) / 2) * size.gauge for number in range(needles)]
    cords = [Cord("needle" if number == 0 else f"needle {number + 1}") for number in range(needles)]
    looper, cover = Cord("looper"), Cord("cover")
    holds = []
    for index in range(count + 1):
        for cord, y in zip(cords, rows, strict=True):
            _needle_loop(cord, index, size, y, covered)
            holds += [Hold((cord.role, f"loop {index}"), ("looper", f"bight {index} {w}")) for w in ("out", "back")]
        _looper_bight(looper, index, size, rows)
        if index:
            legs = ("down", "up")
            holds += [Hold(("looper", f"head {index - 1}"), (cords[-1].role, f"leg {index} {leg}")) for leg in legs]
        if covered:
            _cover(cover, index, size, rows)
            for side, cord in (("left", cords[-1]), ("right", cords[0])):
                holds += [Hold(("cover", f"{side} {index}"), (cord.role, f"leg {index} {w}")) for w in ("down", "up")]
    holes = tuple((index * size.length, y) for index in range(count + 1) for y in rows)
    below = (looper, cover) if covered else (looper,)
    return StitchThreads(tuple(cord.laid() for cord in (*cords, *below)), tuple(holds), holes)


def _needle_loop(cord: Cord, index: int, size: StitchSize, y: float, covered: bool) -> None:
    d, h, x = size.thread, size.face, index * size.length
    near, bend = h + (1.65 if covered else 0.5) * d, h + (0.95 if covered else 0.2) * d

    def leg(along: float, height: float) -> Space:
        return x + along * _COS * d, y + along * _SIN * d, height

    if index:
        cord.lead((x - size.length / 2, y, h + (1.3 if covered else 0.5) * d))
    down = straight(leg(-0.62, h - 0.6 * d), leg(-0.62, -h + 0.2 * d), 2.5 * d)
    up = straight(leg(0.62, -h + 0.2 * d), leg(0.62, h - 0.6 * d), 2.5 * d)
    first = len(cord.led) + 2
    cord.lead(
        (x - 1.8 * d, y, near), (x - 0.95 * d, y, bend), *down, leg(-0.75, -h - 0.7 * d), name=f"leg {index} down"
    )
    cord.lead(
        leg(-1.7, -h - 1.8 * d), leg(-1.3, -h - 2.8 * d), leg(0.0, -h - 3.25 * d), leg(1.3, -h - 2.8 * d),
        leg(1.7, -h - 1.8 * d),
    )  # fmt: skip
    cord.spans[f"loop {index}"] = first, len(cord.led) + len(up)
    over = (x + 0.95 * d, y, bend), (x + 1.8 * d, y, near)
    cord.lead(leg(0.75, -h - 0.7 * d), *up, *over, name=f"leg {index} up")


def _looper_bight(cord: Cord, index: int, size: StitchSize, rows: Sequence[float]) -> None:
    """Across through the loops of all needles, round the next legs of the last one, and back through the loops."""
    d, back, p = size.thread, -size.face, size.length
    x, after, right, left = index * p, (index + 1) * p, rows[0], rows[-1]
    low, top = back - 1.95 * d, back - 0.55 * d
    cord.lead((x - 1.5 * d, right - 2.3 * d, low))
    cord.lead(
        (x - 0.58 * d, right - 1.3 * d, low), (x - 0.58 * d, right, low), (x - 0.58 * d, left, low),
        (x - 0.58 * d, left + 1.4 * d, low), name=f"bight {index} out",
    )  # fmt: skip
    cord.lead((x + 0.4 * d, left + 2.9 * d, low), (x + 2.2 * d, left + 2.8 * d, low + 0.3 * d))
    cord.lead(
        (after - 1.6 * d, left + 1.75 * d, top), (after, left + _BESIDE * d, top),
        (after + 1.3 * d, left + 1.2 * d, top), (after + 1.75 * d, left, top),
        (after + 1.3 * d, left - 1.2 * d, top), (after, left - _BESIDE * d, top),
        (after - 1.7 * d, left - 0.9 * d, top),
        name=f"head {index}",
    )  # fmt: skip
    cord.lead((x + 2.4 * d, left + 1.0 * d, low + 0.45 * d), (x + 1.35 * d, left + 1.75 * d, low + 0.1 * d))
    cord.lead(
        (x + 0.58 * d, left + 1.0 * d, low), (x + 0.58 * d, left, low), (x + 0.58 * d, right, low),
        (x + 0.58 * d, right - 1.3 * d, low), name=f"bight {index} back",
    )  # fmt: skip
    cord.lead((x + 1.5 * d, right - 2.3 * d, low))


def _cover(cord: Cord, index: int, size: StitchSize, rows: Sequence[float]) -> None:
    """Round the left needle's hole from outside, across, round the right needle's, and on to the next left one."""
    d, x, z = size.thread, index * size.length, size.face + 0.55 * size.thread
    for side, y, out in (("left", rows[-1], 1.0), ("right", rows[0], -1.0)):
        cord.lead(
            (x - 1.7 * d, y - out * 1.3 * d, z), (x - 1.75 * d, y + out * 0.3 * d, z), (x, y + out * 1.75 * d, z),
            (x + 1.75 * d, y + out * 0.3 * d, z), (x + 1.7 * d, y - out * 1.3 * d, z), name=f"{side} {index}",
        )  # fmt: skip
