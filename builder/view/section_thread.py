"""The threads of a seam where it is cut across: where the needle's thread enters, and what holds it.

A thread that runs along the seam is met end on and drawn as a dot. Threads are cords of the drawing's own width, and
are called as in the close-ups of geometry/stitch_types.py, which name how each type interlaces and the sources of that.
The picture is simplified: one stitch of each needle. The edge of an overedge lies to the right.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from builder.geometry import Arc, Line, Point, Segment
from builder.view.figure import Stroke

CORD = 1.25
_LOOP, _DOT = 0.95, 0.42
_HUNG = 1.1
# Middles of threads lie so many cords off the goods: on them, over a thread on them, in the middle of a loop below.
_OFF, _OVER, _BELOW = 0.62, 1.55, 1.35
# A thread looped round a needle's hole, or ending in a loop, reaches so many cords beyond it.
_BEYOND = 2.2
_CORNER = 2.2
# Distance of two needles of one machine, mm. Common practice, no source.
_GAUGE_MM = {"406": 6.0, "407": 3.0, "512": 2.2, "514": 2.2, "516": 3.0, "602": 5.0, "605": 3.0, "607": 2.0}
_OVEREDGE = frozenset({"501", "503", "504", "512", "514", "516"})
_COVERED = frozenset({"602", "605", "607"})
_NEEDLES = {"406": 2, "407": 3, "512": 2, "514": 2, "516": 2, "602": 2, "605": 3, "607": 4}
_OWN_LOOP = frozenset({"101", "107"})
# A blindstitch dips this share of the goods deep: into the lowest ply, not through it.
_DIP = 0.72
_CHAIN = frozenset({"401", "406", "407"})
# Of these the needle farther in misses the upper looper thread.
_MISSED = frozenset({"512"})


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


def needle_places(stitch: str, at: Place, width: float = 0.0) -> tuple[float, ...]:
    """Where thread goes through, from the left. A seam's line is that of the left needle of an overedge, else midway.

    width : of a zigzag, printed mm
    """
    count = _NEEDLES.get(stitch, 1)
    step = _GAUGE_MM.get(stitch, 0.0) * at.scale
    if stitch in _OVEREDGE:
        return tuple(at.x + number * step for number in range(count))
    if count == 1 and width > 2 * CORD:
        return at.x - width / 2, at.x + width / 2
    return tuple(at.x + (number - (count - 1) / 2) * step for number in range(count))


def needles(stitch: str, at: Place, width: float = 0.0) -> tuple[float, ...]:
    """Where needles stand: as many as the machine has; the one of a zigzag over its right-hand row."""
    if stitch == "103":
        return (at.x - _dip(at),)
    places = needle_places(stitch, at, width)
    return places if len(places) == _NEEDLES.get(stitch, 1) else places[-1:]


def _cords(stitch: str, at: Place, width: float) -> Iterator[Cord]:
    if stitch in _OVEREDGE:
        yield from _overedge(stitch, at)
    elif stitch in _CHAIN or stitch in _COVERED:
        yield from _chain(stitch, at)
    elif stitch in _OWN_LOOP:
        yield from _looped("needle", "needle", at.x, at)
    elif stitch == "103":
        yield from _blind(at)
    else:
        yield from _lock(needle_places(stitch, at, width), at)


def _lock(places: Sequence[float], at: Place) -> Iterator[Cord]:
    """Needle and bobbin thread, linked in the middle of the goods; a zigzag goes through twice."""
    middle = (at.bottom + at.top) / 2
    off = _LOOP * 0.55
    surfaces = at.top + _OFF * CORD, at.bottom - _OFF * CORD
    for name, sign, surface in (("needle", 1, surfaces[0]), ("bobbin", -1, surfaces[1])):
        rings = [(x, middle + sign * off) for x in places]
        ends = [(x, y + sign * _LOOP) for x, y in rings]
        way = [ends[0], *((x, surface) for x in places), *ends[1:]]
        yield name, (*_ring(rings[0], _LOOP, sign), *_rounded(way, 0.9), *_rings(rings[1:], sign))
        if len(places) == 1:
            yield name, _dot((places[0], surface))
    for x in places:
        # Hooked into each other: over on one side, under on the other.
        up = (x, middle + off)
        side = (x - _LOOP, up[1])
        yield "needle", (Arc((x, up[1] + _LOOP), side, up, False), Arc(side, (x, up[1] - _LOOP), up, False))


def _looped(name: str, held_by: str, x: float, at: Place) -> Iterator[Cord]:
    """A needle thread right through, its loop below held by the thread that passes through it along the seam."""
    yield from _hung(name, x, at, at.top + _OFF * CORD)
    yield held_by, _dot((x, at.bottom - _BELOW * CORD), 0.28)


def _blind(at: Place) -> Iterator[Cord]:
    """In and out from above on a curve that stays in the goods; each loop holds the next on their upper face.

    Source: ASTM D6193-16, type 103, as shown by a dealer in standards (read): through the top ply and through portions
    of the bottom one without penetrating its full depth, interlooped with itself on the top surface.
    """
    depth, high = _dip(at), at.top + _BELOW * CORD
    left, right = at.x - depth, at.x + depth
    curve = Arc((left, at.top), (right, at.top), (at.x, at.top), False)
    loop = (right, high)
    yield "needle", (Line((left, high), (left, at.top)), curve, Line((right, at.top), (right, high - _HUNG)))
    yield "needle", _ring(loop, _HUNG, -1)
    yield "needle", _dot(loop, 0.28)
    yield "needle", _dot((left, high))


def _dip(at: Place) -> float:
    return _DIP * (at.top - at.bottom)


def _hung(name: str, x: float, at: Place, high: float) -> Iterator[Cord]:
    """A needle thread that lies on the face at `high`, goes right through and hangs below as a loop."""
    centre = (x, at.bottom - _BELOW * CORD)
    yield name, (Line((x, high), (x, centre[1] + _HUNG)), *_ring(centre, _HUNG))
    yield name, _dot((x, high))


def _through(name: str, x: float, at: Place) -> Cord:
    """The near half of a loop that hangs below: laid over a thread, that one goes through the loop."""
    centre = (x, at.bottom - _BELOW * CORD)
    return name, (Arc((x, centre[1] + _HUNG), (x, centre[1] - _HUNG), centre, True),)


def _needle(number: int) -> str:
    """What the thread of a needle is called, counted from 0 as in the close-ups."""
    return "needle" if number == 0 else f"needle {min(number + 1, 3)}"


def _chain(stitch: str, at: Place) -> Iterator[Cord]:
    """Needle loops held by a looper thread below, that lies across where there are several; a cover thread above.

    The needle threads lie over the cover thread: it is held by them. The needle on the right is the first.
    """
    places = needle_places(stitch, at)
    if len(places) == 1:
        yield from _looped("needle", "looper", places[0], at)
        return
    names = [_needle(number) for number in reversed(range(len(places)))]
    covered = stitch in _COVERED
    surface, low = at.top + _OFF * CORD, at.bottom - _BELOW * CORD
    left, right = places[0] - _BEYOND * CORD, places[-1] + _BEYOND * CORD
    if covered:
        yield "cover", (Line((left, surface), (right, surface)),)
    for name, x in zip(names, places, strict=True):
        yield from _hung(name, x, at, at.top + _OVER * CORD if covered else surface)
    yield "looper", (Line((left, low), (right, low)),)
    for name, x in zip(names, places, strict=True):
        yield _through(name, x, at)


def _overedge(stitch: str, at: Place) -> Iterator[Cord]:
    """Needle loops below hold the lower looper thread; at the edge it holds the upper one, and that holds the needles.

    503 has no lower looper thread: the needle's own loop goes to the edge; 501 not even an upper one.
    """
    places = needle_places(stitch, at)
    if stitch == "516":
        yield from _looped("needle 2", "looper 3", places[0], at)
        places = places[1:]
    surface, middle = at.top + _OFF * CORD, (at.bottom + at.top) / 2
    above = {"501": "needle", "503": "looper"}.get(stitch, "looper 2")
    held = places[1:] if stitch in _MISSED else places
    out = at.edge + 1.6 * CORD
    yield above, _to_edge((held[0] - _BEYOND * CORD, surface), (out, middle), 1)
    if stitch in ("501", "503"):
        low = at.bottom - _OFF * CORD
        yield (
            "needle",
            (
                *_rounded([(places[0], at.top + _OVER * CORD), (places[0], low), (places[0] + 2, low)], 0.9),
                *_to_edge((places[0] + 2, low), (out, middle), -1),
            ),
        )
        yield "needle", _dot((places[0], at.top + _OVER * CORD))
    else:
        for number, x in enumerate(places):
            yield from _hung(_needle(number), x, at, at.top + _OVER * CORD if x in held else surface)
        yield "looper", _to_edge((places[0] - _BEYOND * CORD, at.bottom - _BELOW * CORD), (out, middle), -1)
        for number, x in enumerate(places):
            yield _through(_needle(number), x, at)
    yield above, _half_hook((out, middle))


def _to_edge(start: Point, edge: Point, up: int) -> tuple[Segment, ...]:
    """Along a face and round the edge into a loop there. `up` 1 on the upper face, −1 on the lower."""
    centre = (edge[0], edge[1] + up * _LOOP * 0.55)
    end = (edge[0], centre[1] + up * _LOOP)
    return (*_rounded([start, (edge[0], start[1]), end], _CORNER), *_ring(centre, _LOOP, up))


def _half_hook(edge: Point) -> tuple[Segment, ...]:
    """The left half of the upper loop at the edge, laid over the lower one: they hook into each other."""
    centre = (edge[0], edge[1] + _LOOP * 0.55)
    side = (centre[0] - _LOOP, centre[1])
    top, bottom = (centre[0], centre[1] + _LOOP), (centre[0], centre[1] - _LOOP)
    return Arc(top, side, centre, False), Arc(side, bottom, centre, False)


def _rounded(points: Sequence[Point], radius: float) -> tuple[Segment, ...]:
    """Straight lines through the points with round corners, as large as fits up to `radius`."""
    path: list[Segment] = []
    at = points[0]
    for before, corner, after in zip(points, points[1:], points[2:], strict=False):
        back, ahead = math.dist(before, corner), math.dist(corner, after)
        r = min(radius, back, ahead)
        if r < 1e-6:
            continue
        (ux, uy), (vx, vy) = Line(before, corner).tangent_at(0), Line(corner, after).tangent_at(0)
        if abs(ux * vy - uy * vx) < 1e-9:
            continue
        first, last = (corner[0] - ux * r, corner[1] - uy * r), (corner[0] + vx * r, corner[1] + vy * r)
        if math.dist(at, first) > 1e-6:
            path.append(Line(at, first))
        path.append(Arc(first, last, (first[0] + vx * r, first[1] + vy * r), ux * vy - uy * vx < 0))
        at = last
    if math.dist(at, points[-1]) > 1e-6:
        path.append(Line(at, points[-1]))
    return tuple(path)


def _rings(centres: Sequence[Point], sign: int) -> Iterator[Segment]:
    for centre in centres:
        yield from _ring(centre, _LOOP, sign)


def _ring(centre: Point, radius: float, sign: int = 1) -> tuple[Segment, ...]:
    """A circle from its highest point; `sign` −1 from its lowest."""
    top, bottom = (centre[0], centre[1] + sign * radius), (centre[0], centre[1] - sign * radius)
    return Arc(top, bottom, centre, True), Arc(bottom, top, centre, True)


def _dot(centre: Point, radius: float = _DOT) -> tuple[Segment, ...]:
    return _ring(centre, radius * CORD)
