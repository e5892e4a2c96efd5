"""The threads of a seam where it is cut across: where the needle's thread enters, and what holds it.

A thread that runs along the seam is met end on and drawn as a dot. Threads are cords of the drawing's own width. How
each type interlaces: ISO 4915:1991 as taught (memory); the picture is simplified, one stitch of each needle.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from builder.geometry import Arc, Line, Point, Segment
from builder.view.figure import Stroke

CORD = 1.25
_LOOP, _DOT = 0.95, 0.42
_OFF = 0.62
# Distance of two needles of one machine, mm. Common practice, no source.
_GAUGE_MM = {"406": 6.0, "407": 3.0, "512": 2.2, "514": 2.2, "516": 3.0, "602": 5.0, "605": 3.0, "607": 2.0}
_OVEREDGE = frozenset({"501", "503", "504", "512", "514", "516"})
_COVERED = frozenset({"602", "605", "607"})
_NEEDLES = {"406": 2, "407": 3, "512": 2, "514": 2, "516": 2, "602": 2, "605": 3, "607": 4}
_OWN_LOOP = frozenset({"101", "103", "107", "501"})
_CHAIN = frozenset({"401", "406", "407"})


@dataclass(frozen=True, slots=True)
class Place:
    """Where a stitch lies: its x, the faces of what it holds, the edge to the right of it, printed mm; `scale` is
    printed mm for a mm along the cut."""

    x: float
    bottom: float
    top: float
    edge: float
    scale: float


def threads(stitch: str, at: Place, when: str, width: float = 0.0) -> Iterator[Stroke]:
    """The cords of a stitch type, in the order they lie over each other. `width`: of a zigzag, printed mm."""
    for thread, path in _cords(stitch, at, width):
        # What was sewn earlier is grey, whichever thread it is.
        fill = "looper 2" if when == "earlier" and thread.startswith("needle") else thread
        yield Stroke("thread", when, path, fill=fill, width=CORD)


Cord = tuple[str, tuple[Segment, ...]]


def needle_places(stitch: str, at: Place) -> tuple[float, ...]:
    """Where each needle goes in. A seam's line is that of the left needle, of an overedge the one farther in."""
    count = _NEEDLES.get(stitch, 1)
    step = _GAUGE_MM.get(stitch, 0.0) * at.scale
    if stitch in _OVEREDGE:
        return tuple(at.x + number * step for number in range(count))
    return tuple(at.x + (number - (count - 1) / 2) * step for number in range(count))


def _cords(stitch: str, at: Place, width: float) -> Iterator[Cord]:
    if stitch in _OVEREDGE:
        yield from _overedge(stitch, at)
    elif stitch in _CHAIN or stitch in _COVERED:
        yield from _chain(stitch, at)
    elif stitch in _OWN_LOOP:
        yield from _looped("needle", "needle", at.x, at)
    else:
        yield from _lock(at, width)


def _lock(at: Place, width: float) -> Iterator[Cord]:
    """Needle and bobbin thread, linked in the middle of the goods; a zigzag goes through twice."""
    places = (at.x - width / 2, at.x + width / 2) if width > 2 * CORD else (at.x,)
    if len(places) > 1:
        low, high = at.bottom - _OFF * CORD, at.top + _OFF * CORD
        yield "bobbin", (Line((places[0], low), (places[1], low)),)
        yield "needle", (Line((places[0], high), (places[1], high)),)
    for x in places:
        yield from _linked(("needle", "bobbin"), x, (at.bottom + at.top) / 2, at)
        if len(places) == 1:
            yield "needle", _dot((x, at.top + _OFF * CORD))
            yield "bobbin", _dot((x, at.bottom - _OFF * CORD))


def _linked(names: tuple[str, str], x: float, middle: float, at: Place) -> Iterator[Cord]:
    """Two loops hooked into each other, the first from above: over on one side, under on the other."""
    off = _LOOP * 0.55
    up, down = (x, middle + off), (x, middle - off)
    upper = (Line((x, at.top + _OFF * CORD), (x, up[1] + _LOOP)), *_ring(up, _LOOP))
    lower = (Line((x, at.bottom - _OFF * CORD), (x, down[1] - _LOOP)), *_ring(down, _LOOP))
    yield names[0], upper
    yield names[1], lower
    side = (up[0] - _LOOP, up[1])
    yield names[0], (Arc((up[0], up[1] + _LOOP), side, up, False), Arc(side, (up[0], up[1] - _LOOP), up, False))


def _looped(name: str, held_by: str, x: float, at: Place) -> Iterator[Cord]:
    """A needle thread right through, its loop below held by the thread that passes through it."""
    centre = (x, at.bottom - 1.2 * CORD)
    radius = _LOOP * 1.05
    yield name, (Line((x, at.top + _OFF * CORD), (x, centre[1] + radius)), *_ring(centre, radius))
    yield name, _dot((x, at.top + _OFF * CORD))
    yield held_by, _dot((centre[0], centre[1]), 0.3)


def _chain(stitch: str, at: Place) -> Iterator[Cord]:
    """Needle loops held by a looper thread below, that lies across where there are several; a cover thread above."""
    places = needle_places(stitch, at)
    low, high = at.bottom - 1.15 * CORD, at.top + _OFF * CORD
    if len(places) > 1:
        yield "looper", (Line((places[0], low - 0.5 * CORD), (places[-1], low - 0.5 * CORD)),)
    for x in places:
        yield from _looped("needle", "looper", x, at)
    if stitch in _COVERED:
        yield "cover", (Line((places[0] - CORD, high + 0.5 * CORD), (places[-1] + CORD, high + 0.5 * CORD)),)


def _overedge(stitch: str, at: Place) -> Iterator[Cord]:
    """Looper threads round the edge, hooked into each other beside it, held by the needle's loops."""
    places = needle_places(stitch, at)
    start = places[0] if stitch != "516" else places[-1]
    out, middle = at.edge + 1.5 * CORD, (at.bottom + at.top) / 2
    high, low = at.top + _OFF * CORD, at.bottom - _OFF * CORD
    names = {"501": ("needle", "needle"), "503": ("looper", "looper")}.get(stitch, ("looper 2", "looper"))
    below = _round((start, low), (out, middle), 1)
    above = _round((start, high), (out, middle), -1)
    yield names[1], below
    yield names[0], above
    if names[0] != names[1]:
        centre = (out, middle)
        yield names[1], (Arc((out, middle - _LOOP), (out, middle + _LOOP), centre, False),)
    for x in places:
        if stitch == "516" and x == places[0]:
            yield from _looped("needle 2", "looper", x, at)
            continue
        name = "needle" if x == start else "needle 2"
        yield name, (Line((x, high + 0.2 * CORD), (x, low - 0.2 * CORD)),)
        yield name, _dot((x, high + 0.25 * CORD))
        yield name, _dot((x, low - 0.25 * CORD))


def _round(start: Point, end: Point, up: int) -> tuple[Segment, ...]:
    """Along a face and round to the middle of the edge."""
    radius = abs(end[1] - start[1])
    corner = min(radius, 2.2)
    turn = (end[0] - corner, start[1])
    centre = (turn[0], start[1] + up * corner)
    path: tuple[Segment, ...] = (Line(start, turn), Arc(turn, (end[0], centre[1]), centre, up < 0))
    return path if radius - corner < 1e-6 else (*path, Line((end[0], centre[1]), end))


def _ring(centre: Point, radius: float) -> tuple[Segment, ...]:
    """A circle from its highest point."""
    top, bottom = (centre[0], centre[1] + radius), (centre[0], centre[1] - radius)
    return Arc(top, bottom, centre, True), Arc(bottom, top, centre, True)


def _dot(centre: Point, radius: float = _DOT) -> tuple[Segment, ...]:
    return _ring(centre, radius * CORD)
