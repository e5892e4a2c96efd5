"""The threads of a stitch type of ISO 4915 as curves in space: which thread lies where, and what holds what."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace

from builder.geometry.stitch_chain import chain_row, single_chain_row
from builder.geometry.stitch_course import StitchSize, StitchThreads
from builder.geometry.stitch_cover import cover_row
from builder.geometry.stitch_lock import lock_row
from builder.geometry.stitch_overedge import overedge_row, two_thread_overedge
from builder.geometry.vector import GeometryFault

Maker = Callable[[int, StitchSize], StitchThreads]


def _safety_row(count: int, size: StitchSize) -> StitchThreads:
    """516: a chainstitch (401) a gauge inside an overedge (504)."""
    edge = overedge_row(count, size)
    chain = chain_row(count, size, size.width + size.gauge, "needle 2", "looper 3")
    return replace(
        edge, threads=edge.threads + chain.threads, holds=edge.holds + chain.holds, holes=edge.holes + chain.holes
    )


MAKERS: Mapping[str, Maker] = {
    "101": single_chain_row,
    "301": lock_row,
    "304": lambda count, size: lock_row(count, size, (-0.5, 0.5)),
    "308": lambda count, size: lock_row(count, size, (-0.5, 0.0, 0.5, 0.0)),
    "401": chain_row,
    "406": cover_row,
    "407": lambda count, size: cover_row(count, size, needles=3),
    "503": two_thread_overedge,
    "504": overedge_row,
    "512": lambda count, size: overedge_row(count, size, needles=2, both_held=False),
    "514": lambda count, size: overedge_row(count, size, needles=2),
    "516": _safety_row,
    "602": lambda count, size: cover_row(count, size, covered=True),
}
"""Stitch types whose threads are known here."""


def stitch_threads(stitch: str, count: int, size: StitchSize) -> StitchThreads:
    """The threads of a row of `count` stitches from x = 0, each as long as the stitch length.

    KeyError for a stitch type not in MAKERS. GeometryFault for a size its threads have no room in: a stitch length
    under 7 threads, goods under 4, rows less than 5 apart, a zigzag under 4 wide, the needle of an overedge nearer to
    its edge than 6 threads or 0.6 stitches.
    """
    if size.thread <= 0 or any(value < least * size.thread * (1 - 1e-9) for value, least in _room(stitch, size)):
        raise GeometryFault(f"Stitches of {size.length:g} mm have no room for threads of {size.thread:g} mm.")
    return MAKERS[stitch](count, size)


def _room(stitch: str, size: StitchSize) -> list[tuple[float, float]]:
    """Lengths of a stitch, each with the least number of threads it takes."""
    found = [(size.length, 7.0), (size.thickness, 4.0)]
    if stitch in ("304", "308"):
        found.append((size.width, 4.0))
    if stitch in ("406", "407", "512", "514", "516", "602"):
        found.append((size.gauge, 5.0))
    if stitch.startswith("5"):
        outer = size.width - (size.gauge if stitch in ("512", "514") else 0.0)
        found += [(outer, 6.0), (outer, 0.6 * size.length / size.thread)]
    return found
