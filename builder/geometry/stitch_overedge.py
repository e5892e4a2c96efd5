"""Overedge stitches: needle loops under the goods hold a thread that goes to the edge and holds another there.

503 two threads, 504 three, 512 and 514 with a second needle, 516 with a chainstitch beside it.
Source: counts of threads and that 516 is 401 beside 504: ISO 4915 (see tests/published/test_stitch_types.py). 504: a
loop of the lower looper thread comes through the needle loop and goes to the edge; there a loop of the upper looper
thread comes through it and goes over the face to the next hole, where the needle goes through it: so in a public
description of sewing stitches by their threads (author not known, read), and in ISO 4915 (memory). 503, the needle
loop that goes to the edge itself; 512, the needle nearer the edge alone through the upper looper thread; 514, both:
memory.
Where each strand lies is ours. The edge is y = 0, the goods lie beyond it.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

from builder.geometry.stitch_course import Cord, Hold, Space, StitchSize, StitchThreads, straight

_OUT, _ARCH, _FOOT = 1.6, 1.15, 1.6
_BESIDE = 1.7
_SLANT = math.radians(30)
_COS, _SIN = math.cos(_SLANT), math.sin(_SLANT)
"""Needle loops stand at this angle to the seam, so that they are seen as loops along it and across it."""
LOWER, UPPER = "looper", "looper 2"


def overedge_row(count: int, size: StitchSize, needles: int = 1, both_held: bool = True) -> StitchThreads:
    """504, with two needles 514, or 512 where the inner needle misses the upper looper thread (`both_held` false)."""
    rows = _rows(size, needles)
    cords = [Cord("needle" if number == 0 else f"needle {number + 1}") for number in range(needles)]
    lower, upper = Cord(LOWER), Cord(UPPER)
    through = rows if both_held else rows[1:]
    holds = []
    for index in range(count + 1):
        for cord, y in zip(cords, rows, strict=True):
            _needle_loop(cord, index, size, y)
            holds += [Hold((cord.role, f"loop {index}"), (LOWER, f"bight {index} {way}")) for way in ("out", "back")]
        _lower_bight(lower, index, size, rows)
        _upper_bight(upper, index, size, through)
        holds += [Hold((LOWER, f"arch {index}"), (UPPER, f"bight {index} {way}")) for way in ("out", "back")]
        if index:
            holds += [
                Hold((UPPER, f"bight {index - 1}"), (cord.role, f"leg {index} {leg}"))
                for cord, y in zip(cords, rows, strict=True)
                for leg in ("down", "up")
                if y in through
            ]
    holes = tuple((index * size.length, y) for index in range(count + 1) for y in rows)
    threads = tuple(cord.laid() for cord in (*cords, lower, upper))
    return StitchThreads(threads, tuple(holds), holes, edge=0.0)


def two_thread_overedge(count: int, size: StitchSize) -> StitchThreads:
    """503: the needle loop itself goes to the edge under the goods; the looper thread comes through it there."""
    needle, looper = Cord("needle"), Cord(LOWER)
    d, h = size.thread, size.face
    holds = []
    for index in range(count + 1):
        x, y = index * size.length, size.width
        if index:
            needle.lead((x - size.length / 2, y, h + 0.9 * d))
        over = [(x + side * far * d, y, h + up * d) for side in (-1, 1) for far, up in ((1.9, 1.65), (0.98, 1.0))]
        down = straight((x - 0.62 * d, y, h - 0.5 * d), (x - 0.62 * d, y, -h + 0.2 * d), 2.5 * d)
        up = straight((x + 0.62 * d, y, -h + 0.2 * d), (x + 0.62 * d, y, h - 0.5 * d), 2.5 * d)
        needle.lead(*over[:2], *down, name=f"leg {index} down")
        _arch(needle, index, size, [(x - 0.75 * d, y - 1.3 * d)], [(x + 0.75 * d, y - 1.3 * d)])
        needle.lead(*up, *over[:1:-1], name=f"leg {index} up")
        _upper_bight(looper, index, size, [y])
        holds += [Hold(("needle", f"arch {index}"), (LOWER, f"bight {index} {way}")) for way in ("out", "back")]
        if index:
            legs = ("down", "up")
            holds += [Hold((LOWER, f"bight {index - 1}"), ("needle", f"leg {index} {leg}")) for leg in legs]
    holes = tuple((index * size.length, size.width) for index in range(count + 1))
    return StitchThreads((needle.laid(), looper.laid()), tuple(holds), holes, edge=0.0)


def _rows(size: StitchSize, needles: int) -> list[float]:
    """Places of the needles across, the innermost first."""
    return [size.width - number * size.gauge for number in range(needles)]


def _needle_loop(cord: Cord, index: int, size: StitchSize, y: float) -> None:
    d, h, x = size.thread, size.face, index * size.length

    def leg(along: float, height: float) -> Space:
        return x + along * _COS * d, y + along * _SIN * d, height

    if index:
        cord.lead((x - size.length / 2, y, h + 0.9 * d))
    down = straight(leg(-0.62, h - 0.5 * d), leg(-0.62, -h + 0.2 * d), 2.5 * d)
    up = straight(leg(0.62, -h + 0.2 * d), leg(0.62, h - 0.5 * d), 2.5 * d)
    first = len(cord.led) + 2
    cord.lead((x - 1.9 * d, y, h + 1.65 * d), (x - 0.98 * d, y, h + 1.0 * d), *down, name=f"leg {index} down")
    cord.lead(
        leg(-1.65, -h - 1.3 * d), leg(-1.3, -h - 2.35 * d), leg(0.0, -h - 2.85 * d), leg(1.3, -h - 2.35 * d),
        leg(1.65, -h - 1.3 * d),
    )  # fmt: skip
    cord.spans[f"loop {index}"] = first, len(cord.led) + len(up) - 1
    cord.lead(*up, (x + 0.98 * d, y, h + 1.0 * d), (x + 1.9 * d, y, h + 1.65 * d), name=f"leg {index} up")


def _lower_bight(cord: Cord, index: int, size: StitchSize, rows: Sequence[float]) -> None:
    """Through the needle loops towards the edge, up round it as an arch, and back through the loops."""
    d, x = size.thread, index * size.length
    low, inner, outer = -size.face - 1.55 * d, rows[0], rows[-1]
    ins = [(x - 0.58 * d, y) for y in (*rows, outer - 1.3 * d)]
    backs = [(x + 0.58 * d, y) for y in (outer - 1.3 * d, *reversed(rows))]
    cord.lead((x - 1.6 * d, inner + 2.2 * d, low))
    first = len(cord.led)
    cord.lead((x - 0.58 * d, inner + 1.3 * d, low), *((a, b, low) for a, b in ins), name=f"bight {index} out")
    _arch(cord, index, size, [], [])
    cord.lead(*((a, b, low) for a, b in backs), (x + 0.58 * d, inner + 1.3 * d, low), name=f"bight {index} back")
    cord.spans[f"bight {index}"] = first, len(cord.led) - 1
    cord.lead((x + 1.6 * d, inner + 2.2 * d, low))


def _arch(
    cord: Cord,
    index: int,
    size: StitchSize,
    before: Sequence[tuple[float, float]],
    after: Sequence[tuple[float, float]],
) -> None:
    """Under the goods to the edge, up outside it, across, and back: the loop that is held open at the edge."""
    d, back = size.thread, -size.face
    x = (index + 0.5) * size.length
    under = back - 0.6 * d
    first = len(cord.led)
    cord.lead(*((a, b, under) for a, b in before))
    cord.lead(
        (x - _FOOT * d, 1.2 * d, under), (x - _FOOT * d, -0.3 * d, under), (x - 1.55 * d, -1.15 * d, back + 0.3 * d),
        (x - 1.3 * d, -_OUT * d, 0.35 * d), (x, -1.95 * d, _ARCH * d), (x + 1.3 * d, -_OUT * d, 0.35 * d),
        (x + 1.55 * d, -1.15 * d, back + 0.3 * d), (x + _FOOT * d, -0.3 * d, under), (x + _FOOT * d, 1.2 * d, under),
    )  # fmt: skip
    cord.lead(*((a, b, under) for a, b in after))
    cord.spans[f"arch {index}"] = first, len(cord.led) - 1


def _upper_bight(cord: Cord, index: int, size: StitchSize, rows: Sequence[float]) -> None:
    """From outside through the arch at the edge, over the face, round the next holes, and back out through the arch."""
    d, face = size.thread, size.face
    x, after = (index + 0.5) * size.length, (index + 1) * size.length
    top = face + 0.55 * d
    inner, outer = max(rows), min(rows)

    def side(sign: float) -> list[Space]:
        return [
            (x + sign * 1.15 * d, -2.85 * d, -0.25 * d), (x + sign * 0.55 * d, -_OUT * d, -0.05 * d),
            (x + sign * 0.55 * d, -0.62 * d, 0.55 * d),
        ]  # fmt: skip

    def over(sign: float) -> list[Space]:
        climb = [(x + sign * 0.55 * d, -0.55 * d, face * 0.75), (x + sign * 0.55 * d, 0.25 * d, top)]
        places = (outer - 1.2 * d, outer, *((inner,) if inner > outer else ()))
        ahead = [(after + sign * _BESIDE * d, y, top) for y in places]
        return [*(climb if face > 1.4 * d else climb[1:]), *ahead]

    first = len(cord.led)
    cord.lead(*side(-1), name=f"bight {index} out")
    cord.lead(*over(-1), (after, inner + 1.9 * d, top), *reversed(over(1)))
    cord.lead(*reversed(side(1)), name=f"bight {index} back")
    cord.spans[f"bight {index}"] = first, len(cord.led) - 1
