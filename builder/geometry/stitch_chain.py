"""Chainstitches: loops of the needle thread held under the goods.

101 each loop held by the next one of the same thread; 401 held by a looper thread.
Source: textileschool.com, "Different kind of stitches" (read): 101 is intralooping, 401 interlooping; ISO 4915 type
401 in apparelscience.com, "Stitch classes 300-400" (read): loops of the needle thread are passed through the goods,
interlaced and interlooped with loops of the looper thread, and drawn up against the underside. That a bight of the
looper thread passes through one needle loop and round the next is memory. Where each strand lies is ours.
"""

from __future__ import annotations

import math

from builder.geometry.stitch_course import Cord, Hold, Space, StitchSize, StitchThreads

_SLANT = math.radians(-55)
"""Needle loops stand at this angle to the seam, so that what passes through them shows from the side too."""
_ROUND, _HEAD, _NEAR = 1.75, 1.75, 0.65


def chain_row(
    count: int, size: StitchSize, y: float = 0.0, needle: str = "needle", looper: str = "looper"
) -> StitchThreads:
    """401: one needle thread, one looper thread. y : place of the row across"""
    above, below = Cord(needle), Cord(looper)
    holds = []
    for index in range(count + 1):
        _needle_loop(above, index, size, y)
        _looper_bight(below, index, size, y)
        holds += [
            Hold((needle, f"loop {index}"), (looper, f"bight {index} out")),
            Hold((needle, f"loop {index}"), (looper, f"bight {index} back")),
        ]
        if index:
            # The bight that came through the loop before lies round both legs of this one.
            holds += [Hold((looper, f"bight {index - 1}"), (needle, f"leg {index} {leg}")) for leg in ("down", "up")]
    holes = tuple((index * size.length, y) for index in range(count + 1))
    return StitchThreads((above.laid(), below.laid()), tuple(holds), holes)


def _needle_loop(cord: Cord, index: int, size: StitchSize, y: float) -> None:
    d, h, x = size.thread, size.face, index * size.length
    cos, sin = math.cos(_SLANT), math.sin(_SLANT)

    def leg(along: float, height: float) -> Space:
        return x + along * cos * d, y + along * sin * d, height

    if index:
        cord.lead((x - size.length / 2, y, h + 0.5 * d))
    cord.lead((x - 1.5 * d, y, h + 0.5 * d))
    cord.lead(leg(-0.62, h - 0.7 * d), leg(-0.62, -h - 0.2 * d), leg(-1.15, -h - 1.7 * d), name=f"leg {index} down")
    first = len(cord.led) - 3
    cord.lead(leg(-1.1, -h - 3.0 * d), leg(0.0, -h - 3.85 * d), leg(1.1, -h - 3.0 * d))
    cord.lead(leg(1.15, -h - 1.7 * d), leg(0.62, -h - 0.2 * d), leg(0.62, h - 0.7 * d), name=f"leg {index} up")
    cord.spans[f"loop {index}"] = first, len(cord.led) - 1
    cord.lead((x + 1.5 * d, y, h + 0.5 * d))


def _looper_bight(cord: Cord, index: int, size: StitchSize, y: float) -> None:
    """Out through a needle loop, round the legs of the next one, back through the loop, and on outside it."""
    d, back, p = size.thread, -size.face, size.length
    x, after = index * p, (index + 1) * p
    over, under, top = back - 1.6 * d, back - 2.7 * d, back - 0.55 * d
    first = len(cord.led)
    cord.lead(
        (x - 1.5 * d, y - 0.35 * d, over), (x, y, over), (x + 1.6 * d, y + 0.5 * d, over),
        name=f"bight {index} out",
    )  # fmt: skip
    cord.lead(
        (after - 1.6 * d, y + 1.2 * d, top), (after, y + _ROUND * d, top), (after + 1.3 * d, y + 1.2 * d, top),
        (after + _HEAD * d, y, top), (after + 1.3 * d, y - 1.2 * d, top), (after, y - _ROUND * d, top),
        (after - 1.6 * d, y - 1.4 * d, top - 0.3 * d),
    )  # fmt: skip
    cord.lead(
        (x + 1.6 * d, y + 0.1 * d, under), (x, y, under), (x - 1.5 * d, y - 0.25 * d, under),
        name=f"bight {index} back",
    )  # fmt: skip
    cord.spans[f"bight {index}"] = first, len(cord.led) - 1
    cord.lead(
        (x - 1.9 * d, y - 1.25 * d, under - 0.1 * d), (x - 0.9 * d, y - 2.3 * d, under),
        (x + 0.6 * d, y - 2.35 * d, under - 0.1 * d),
        (x + 0.55 * p, y - 1.1 * d, back - 3.3 * d), (after - 2.9 * d, y - 0.6 * d, back - 2.4 * d),
    )  # fmt: skip


def single_chain_row(count: int, size: StitchSize) -> StitchThreads:
    """101: one needle thread; each loop comes through the one before."""
    cord = Cord("needle")
    holds = []
    d, h, p = size.thread, size.face, size.length
    # Turned the other way round, so that each leg goes on under the goods on its own side.
    cos, sin = math.cos(_SLANT), -math.sin(_SLANT)
    top, low = -h - 0.55 * d, -h - 1.75 * d
    for index in range(count + 1):
        x, after = index * p, (index + 1) * p
        if index:
            cord.lead((x - p / 2, 0.0, h + 0.5 * d))
        cord.lead((x - 1.5 * d, 0.0, h + 0.5 * d))
        cord.lead(
            (x - 0.62 * cos * d, -0.62 * sin * d, h - 0.7 * d), (x - 0.62 * cos * d, -0.62 * sin * d, -h),
            (x, -_NEAR * d, low), name=f"leg {index} down",
        )  # fmt: skip
        first = len(cord.led) - 3
        cord.lead(
            (x + 2.2 * d, -1.1 * d, low), (after - 1.2 * d, -1.6 * d, top), (after, -_ROUND * d, top),
            (after + 1.3 * d, -1.2 * d, top), (after + _HEAD * d, 0.0, top), (after + 1.3 * d, 1.2 * d, top),
            (after, _ROUND * d, top), (after - 1.2 * d, 1.6 * d, top), (x + 2.2 * d, 1.1 * d, low),
        )  # fmt: skip
        cord.lead(
            (x + 0.3 * d, _NEAR * d, low), (x + 0.62 * cos * d, 0.62 * sin * d, -h),
            (x + 0.62 * cos * d, 0.62 * sin * d, h - 0.7 * d), name=f"leg {index} up",
        )  # fmt: skip
        cord.spans[f"loop {index}"] = first, len(cord.led) - 1
        cord.lead((x + 1.5 * d, 0.0, h + 0.5 * d))
        if index:
            holds += [Hold(("needle", f"loop {index - 1}"), ("needle", f"leg {index} {leg}")) for leg in ("down", "up")]
    return StitchThreads((cord.laid(),), tuple(holds), tuple((index * p, 0.0) for index in range(count + 1)))
