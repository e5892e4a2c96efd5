"""Thread of a seam, by its stitch type: needle threads apart from bobbin and looper threads. No tension, no waste.

Factors are mm of thread per mm of seam, from the stitches per mm S, the thickness under the foot T and, for an
overedge, its bight W. Where texts disagree both ends of an interval are kept. Which figure counts: an unravelled
sample, else geometry, else a ratio of the trade. Ends and tacks are added apart.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass

from builder.model import STITCHES

Span = tuple[float, float]
"""Least and most; equal where there is one figure."""


@dataclass(frozen=True, slots=True)
class ThreadUse:
    """Thread of the needles, and of what lies under and over the goods: bobbin, looper and cover threads together.

    Both in mm, or in mm per mm of seam; `times` turns one into the other.
    """

    needle: Span = (0.0, 0.0)
    under: Span = (0.0, 0.0)

    @property
    def total(self) -> Span:
        """All threads together."""
        return _sum(self.needle, self.under)

    def plus(self, other: ThreadUse) -> ThreadUse:
        """The thread of both."""
        return ThreadUse(_sum(self.needle, other.needle), _sum(self.under, other.under))

    def times(self, factor: float) -> ThreadUse:
        """So many times as much, factor >= 0."""
        needle, under = self.needle, self.under
        return ThreadUse((needle[0] * factor, needle[1] * factor), (under[0] * factor, under[1] * factor))


def _sum(a: Span, b: Span) -> Span:
    return a[0] + b[0], a[1] + b[1]


GEOMETRIC = ("101", "301", "401", "504", "514", "516")
"""Stitch types whose thread follows from geometry."""

OVEREDGE = ("504", "514", "516")
"""Those of them that need the bight."""

_ANOTHER_CONSTANT = 2.0
# Texts print 3 or 5 as the constant of 504; the lower one is derived, so what lies between is given to the loopers.


def thread_factors(stitch: str, stitches_per_mm: float, thickness_mm: float, bight_mm: float = 0.0) -> ThreadUse | None:
    """mm of thread per mm of seam from geometry; None for a stitch type without a formula.

    101  needle 3 + 2TS
    301  needle 1 + TS, bobbin 1 + TS
    401  needle 1 + 2TS, looper 3
    504  needle 1 + 2TS, each of two loopers 1 + 2WS + TS (sum 3 + 4WS + 4TS; other texts 5 + 4WS + 4TS)
    514  504 with a second needle thread
    516  401 beside 504

    stitches_per_mm : S > 0; thickness_mm : T >= 0; bight_mm : W >= 0, of an overedge
    Raises ValueError outside these ranges.
    Source: 101 textileblog.com, "Sewing Thread Consumption Guide", read; 301 and 401 textilecalculation.blogspot.com
    2015, read; 504 textilecalculations.com, read. Split of 401, 514, and what disagrees in 504 given to the loopers:
    ours. 516 is 401 and 504 by its definition in ISO 4915; the sum is ours.
    """
    if not (stitches_per_mm > 0 and thickness_mm >= 0 and bight_mm >= 0):
        raise ValueError("a seam has stitches, and neither its thickness nor its bight is below 0")
    ts, ws = thickness_mm * stitches_per_mm, bight_mm * stitches_per_mm
    chain = 1 + 2 * ts
    loopers = 2 + 4 * ws + 2 * ts
    overedge = (loopers, loopers + _ANOTHER_CONSTANT)
    found = {
        "101": ThreadUse(_one(3 + 2 * ts)),
        "301": ThreadUse(_one(1 + ts), _one(1 + ts)),
        "401": ThreadUse(_one(chain), _one(3.0)),
        "504": ThreadUse(_one(chain), overedge),
        "514": ThreadUse(_one(2 * chain), overedge),
        "516": ThreadUse(_one(2 * chain), _sum(overedge, _one(3.0))),
    }
    return found.get(stitch)


def _one(value: float) -> Span:
    return value, value


RATIOS: Mapping[str, tuple[float, ...]] = {
    "101": (4.0, 5.0),
    "103": (4.5,),
    "301": (2.5,),
    "304": (7.0, 5.5),
    "401": (5.5,),
    "406": (18.0,),
    "503": (12.0,),
    "504": (14.0,),
    "512": (18.0,),
    "516": (20.0,),
    "602": (25.0,),
    "605": (28.0,),
    "606": (32.0,),
}
"""mm of thread per mm of seam, averages of the trade: tables A and B of tests/published/test_thread.py."""

NEEDLE_SHARES: Mapping[str, float] = {
    "101": 1.0,
    "103": 1.0,
    "301": 0.5,
    "304": 0.5,
    "401": 0.25,
    "406": 0.3,
    "503": 0.55,
    "504": 0.2,
    "512": 0.25,
    "516": 0.2,
    "602": 0.2,
    "605": 0.3,
}
"""What of a ratio the needle threads take. Companion columns of table A, memory; 103 has a needle thread alone."""


def ratio_factors(stitch: str) -> ThreadUse | None:
    """mm of thread per mm of seam as the trade's tables have it, whatever the goods; None where they are silent.

    Source: Carr and Latham, *The Technology of Clothing Manufacture*, as tabulated in a public paper, and a thread
    maker's guide, both read; where they differ, the interval. Splits: memory.
    """
    ratios, share = RATIOS.get(stitch), NEEDLE_SHARES.get(stitch)
    if ratios is None or share is None:
        return None
    span = min(ratios), max(ratios)
    return ThreadUse((span[0] * share, span[1] * share), (span[0] * (1 - share), span[1] * (1 - share)))


def sampled_factors(needle: float, bobbin: float) -> ThreadUse:
    """mm of thread per mm of seam of an unravelled sample: thread drawn out of it over its length, both >= 0."""
    return ThreadUse(_one(needle), _one(bobbin))


def bartack_thread(
    stitches: int, length_mm: float, width_mm: float, thickness_mm: float, underlay: tuple[int, int] | None = None
) -> ThreadUse:
    """Thread of one bartack of n stitches, L x W, without its tails: needle and bobbin take the same.

    path = kL + c·√(W² + (L/c)²), each thread path + nT, with c = n - u cover stitches

    underlay : (u, k): stitches beneath the cover, and passes they run along it. Unknown: the interval between all
               cover and a third of the stitches run there and back beneath it (common practice, no source)
    Raises ValueError without stitches, or without cover stitches over an underlay.
    Source: ours.
    """
    if underlay is not None:
        found = _one(_bartack_path(stitches, length_mm, width_mm, *underlay))
    else:
        ends = [_bartack_path(stitches, length_mm, width_mm, *under) for under in ((0, 0), (stitches // 3, 2))]
        found = min(ends), max(ends)
    through = stitches * thickness_mm
    each = found[0] + through, found[1] + through
    return ThreadUse(each, each)


def _bartack_path(stitches: int, length_mm: float, width_mm: float, beneath: int, passes: int) -> float:
    cover = stitches - beneath
    if cover <= 0:
        raise ValueError("a bartack has cover stitches")
    return passes * length_mm + cover * math.hypot(width_mm, length_mm / cover)


def tack_thread(factors: ThreadUse, stitches: int, stitch_mm: float, ends: int) -> ThreadUse:
    """Thread of sewing back and forth again over n stitches at so many ends of a seam: 2·n stitches each. Ours."""
    return factors.times(ends * 2 * stitches * stitch_mm)


def tail_thread(stitch: str, tail_mm: float) -> ThreadUse:
    """Thread ends of one seam: `tail_mm` for start and end together, of each thread the stitch has. Ours."""
    one = STITCHES[stitch]
    return ThreadUse(_one(one.needles * tail_mm), _one((one.lower + one.cover) * tail_mm))
