"""Paths and rings parallel to an outline: the seam 10 mm inside the edge, the outline with its allowance.

Every segment gets its parallel, neighbours are joined again: at a corner the parallels are cut or lengthened
to where they meet (a mitre), a rounded corner stays concentric until its radius is used up, and a short edge
that its neighbours swallow drops out. What this can't do is split a piece in two: it raises GeometryFault,
and never hands back a line that is nearer to the edge than asked.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from builder.geometry.measure import (
    boundary_meets,
    carriers_cross,
    distance_point_segment,
    first_crossing,
    path_inside,
)
from builder.geometry.outline import Outline
from builder.geometry.path import Path
from builder.geometry.segment import Arc, Line, Segment
from builder.geometry.vector import (
    TOUCH,
    GeometryFault,
    Point,
    add,
    distance,
    dot,
    said,
    scale,
    sub,
    turn_deg,
)

# A mitre reaches at most this many times the distance from its corner; a sharper one is rounded instead,
# because its tip would stick out farther than anyone sews.
MITRE_LIMIT = 4.0
# Corners flatter than this aren't an edge in the way of a seam, degrees.
BLUNT_DEG = 15.0
# How much nearer to the edge than asked rounding may bring a point, mm.
_SLACK = 1e-6
# Smooth corners of rounded drawings miss each other by less than this, mm.
_RAGGED = 0.01


@dataclass(frozen=True, slots=True)
class _Side:
    """A segment of the outline, its number there, and its parallel."""

    number: int
    source: Segment
    beside: Segment


@dataclass(frozen=True, slots=True)
class _Joint:
    """How one side goes on to the next: where the first ends, where the next begins, and the arc between."""

    end: Point
    start: Point
    between: Arc | None = None


def inset_path(
    outline: Outline,
    from_edge: str | None,
    to_edge: str | None,
    distance: float,
    *,
    start_gap: float = 0.0,
    end_gap: float = 0.0,
) -> Path:
    """The path parallel to the outline, `distance` mm inside, walking counter-clockwise.

    from_edge, to_edge : first and last edge, both included; the same name twice is that edge alone. Without
                         to_edge it goes all round from the start of from_edge (without both, of the outline)
                         and closes.
    distance           : mm from the edge, 0 or more
    start_gap, end_gap : how far along the path from the cut edge sewing starts and ends, mm
    An open path runs on to the cut edge at both ends. Where no edge is in the way, because the outline turns
    outward there or by less than 15°, it stops square to the corner.
    GeometryFault: unknown edge, distance below 0, the path collapses or leaves the piece, gaps too long.
    """
    if not distance >= 0:
        raise GeometryFault(f"A path {distance:g} mm inside the edge would lie outside; give 0 or more.")
    if to_edge is None:
        path = _path_all_round(outline, from_edge, distance)
    else:
        first, beyond = _walk(outline, from_edge if from_edge is not None else to_edge, to_edge)
        path = _open_path(outline, first, beyond, distance)
    return path.shortened(start_gap, end_gap) if start_gap or end_gap else path


def inset_outline(outline: Outline, distance: float) -> Outline:
    """The whole outline `distance` mm smaller all round; below 0 larger. Edges keep their names.

    An edge that drops out loses its name. GeometryFault when nothing is left, or the piece would fall in two.
    """
    return _ring(outline, distance)[0]


def joined_sides(runs: Sequence[Segment], off: float, closed: bool) -> tuple[Segment, ...]:
    """The parallels of runs that follow each other, `off` mm to their left, joined at their corners.

    closed : the last run leads to the first. An open line ends square to where the runs end.
    GeometryFault when nothing is left.
    """
    sides, joints = _settled(_sides(list(enumerate(runs)), off), off, closed)
    if closed:
        around = [joints[-1], *joints]
    else:
        start, end = sides[0].beside.start, sides[-1].beside.end
        around = [_Joint(start, start), *joints, _Joint(end, end)]
        ends = ((sides[0], around[0], around[1]), (sides[-1], around[-2], around[-1]))
        for side, arriving, leaving in ends:
            if _signed_length(side.beside, arriving.start, leaving.end) <= TOUCH:
                raise _collapsed(off, leaving.end)
    return tuple(segment for _, segment in _pieces(sides, around))


def _path_all_round(outline: Outline, from_edge: str | None, inset: float) -> Path:
    first = _range_of(outline, from_edge)[0] if from_edge is not None else 0
    smaller, numbers = _ring(outline, inset)
    start = next((index for index, number in enumerate(numbers) if number >= first), 0)
    return Path(smaller.segments[start:] + smaller.segments[:start])


def _open_path(outline: Outline, first: int, beyond: int, inset: float) -> Path:
    """The path beside segments first … beyond − 1 (numbers may run past the end and start again)."""
    count = len(outline.segments)
    walked = [(number, outline.segments[number % count]) for number in range(first, beyond)]
    sides, joints = _settled(_sides(walked, inset), inset, closed=False)
    before, after = outline.segments[(first - 1) % count], outline.segments[beyond % count]
    start, end = _free_ends(outline, sides, joints, (before, after))
    pieces = _pieces(sides, [_Joint(start, start), *joints, _Joint(end, end)])
    path = Path(tuple(segment for _, segment in pieces))
    _refuse_strays(outline, path, [source for _, source in walked], inset)
    return path


def _walk(outline: Outline, from_edge: str, to_edge: str) -> tuple[int, int]:
    """First segment and the one beyond the last, walking counter-clockwise; it may pass the ring's end."""
    first, first_beyond = _range_of(outline, from_edge)
    last, beyond = _range_of(outline, to_edge)
    if from_edge != to_edge and last < first:
        beyond += len(outline.segments)
    if first == beyond or (first == first_beyond and from_edge == to_edge):
        raise GeometryFault(f"Nothing of edge {from_edge} is left between its rounded corners.")
    return first, beyond


def _range_of(outline: Outline, name: str) -> tuple[int, int]:
    outline.edge(name)
    return outline.edges[name]


def _sides(sources: Sequence[tuple[int, Segment]], inset: float) -> list[_Side]:
    """Each segment with its parallel; arcs whose radius is used up are left out."""
    found = [(number, source, source.parallel(inset)) for number, source in sources]
    return [_Side(number, source, beside) for number, source, beside in found if beside is not None]


def _ring(outline: Outline, inset: float) -> tuple[Outline, list[int]]:
    """The parallel ring, checked, and for each of its segments the number of the one it came from."""
    if abs(inset) <= TOUCH:
        return outline, list(range(len(outline.segments)))
    sides = _sides(list(enumerate(outline.segments)), inset)
    sides, joints = _settled(sides, inset, closed=True)
    pieces = _pieces(sides, [joints[-1], *joints])
    numbers = [number for number, _ in pieces]
    result = Outline(tuple(segment for _, segment in pieces), _edges_left(outline, numbers))
    if result.area() <= 0 or first_crossing(result.segments) is not None or not _clear(outline, result, inset):
        raise _collapsed(inset, outline.segments[0].start)
    return result, numbers


def _settled(sides: list[_Side], inset: float, closed: bool) -> tuple[list[_Side], list[_Joint]]:
    """Sides that keep a length, and the joints between them; closed: the last leads to the first side."""
    while sides:
        joints = _joints(sides, inset, closed)
        lengths = _lengths(sides, joints, closed)
        gone = [index for index, size in lengths.items() if size <= TOUCH]
        if not gone:
            return sides, joints
        # One at a time, the first to vanish as the distance grows: with it gone, its neighbours may last.
        flush = [_Side(side.number, side.source, side.source) for side in sides]
        before = _lengths(flush, _joints(flush, 0.0, closed), closed)
        first = min(gone, key=lambda index: _share_of_life(before[index], lengths[index]))
        sides = sides[:first] + sides[first + 1 :]
    raise _collapsed(inset, None)


def _share_of_life(before: float, after: float) -> float:
    """Share of the distance at which a length that shrinks evenly from before to after is used up."""
    return before / (before - after) if before > after else 0.0


def _lengths(sides: Sequence[_Side], joints: Sequence[_Joint], closed: bool) -> dict[int, float]:
    """Length of each side between its joints, below 0 when they have passed each other; not for free ends."""
    inner = range(len(sides)) if closed else range(1, len(sides) - 1)
    return {i: _signed_length(sides[i].beside, joints[i - 1].start, joints[i].end) for i in inner}


def _signed_length(carrier: Segment, start: Point, end: Point) -> float:
    if isinstance(carrier, Line):
        return dot(sub(end, start), carrier.tangent_at(0))
    if carrier.start == carrier.end and start == end:
        return carrier.length
    return (carrier.share_of(end) - carrier.share_of(start)) * carrier.length


def _joints(sides: Sequence[_Side], inset: float, closed: bool) -> list[_Joint]:
    pairs = list(pairwise(sides))
    if closed:
        pairs.append((sides[-1], sides[0]))
    return [_joint(a, b, inset) for a, b in pairs]


def _joint(a: _Side, b: _Side, inset: float) -> _Joint:
    """Where two parallels meet: their common end, else their mitre, else an arc about the corner."""
    end, start = a.beside.end, b.beside.start
    apart = distance(end, start)
    if apart <= TOUCH:
        return _Joint(end, end)
    meets = carriers_cross(a.beside, b.beside) if a is not b else ()
    meet = min(meets, key=lambda point: distance(point, end) + distance(point, start), default=None)
    corner = a.source.end
    neighbours = distance(corner, b.source.start) <= TOUCH
    if neighbours:
        turn = turn_deg(a.source.tangent_at(1), b.source.tangent_at(0))
        opens = turn * inset < 0 or abs(turn) == 180
        if opens and (meet is None or distance(meet, corner) > MITRE_LIMIT * abs(inset)):
            return _Joint(end, start, Arc(end, start, corner, clockwise=inset > 0))
    if meet is None and apart <= _RAGGED:
        meet = start if isinstance(b.beside, Arc) else end
    if meet is None:
        raise _collapsed(inset, corner)
    return _Joint(meet, meet)


def _pieces(sides: Sequence[_Side], joints: Sequence[_Joint]) -> list[tuple[int, Segment]]:
    """The sides cut to their joints; joints[i] leads to side i and joints[i + 1] away from it."""
    pieces: list[tuple[int, Segment]] = []
    for side, arriving, leaving in zip(sides, joints, joints[1:], strict=False):
        pieces.append((side.number, _cut(side.beside, arriving.start, leaving.end)))
        if leaving.between is not None:
            pieces.append((side.number, leaving.between))
    return pieces


def _cut(carrier: Segment, start: Point, end: Point) -> Segment:
    if isinstance(carrier, Line):
        return Line(start, end)
    return Arc(start, end, carrier.centre, carrier.clockwise)


def _free_ends(
    outline: Outline, sides: Sequence[_Side], joints: Sequence[_Joint], around: tuple[Segment, Segment]
) -> tuple[Point, Point]:
    """Where an open path starts and ends: at the cut edge in its way, else square to the corner."""
    first, last = sides[0].beside, sides[-1].beside
    # From a point of the path that is surely inside, the nearest boundary each way is where it ends.
    if joints:
        from_start, from_end = joints[0].end, joints[-1].start
    else:
        from_start = from_end = _inner_point(outline, first)
    start, end = first.start, last.end
    if _in_the_way(outline, around[0], sides[0].source, before=True):
        start = boundary_ahead(outline, first, from_start, forward=False)
    if _in_the_way(outline, around[1], sides[-1].source, before=False):
        end = boundary_ahead(outline, last, from_end, forward=True)
    for carrier, low, high in ((first, start, from_start), (last, from_end, end)):
        if _signed_length(carrier, low, high) <= TOUCH:
            raise GeometryFault(f"The path collapses at {said(low)}.", low)
    return start, end


def _in_the_way(outline: Outline, neighbour: Segment, source: Segment, before: bool) -> bool:
    """Does the outline turn inward here, by a corner or by the arc of a rounded one?"""
    if before:
        turn = turn_deg(neighbour.tangent_at(1), source.tangent_at(0))
    else:
        turn = turn_deg(source.tangent_at(1), neighbour.tangent_at(0))
    if turn >= BLUNT_DEG:
        return True
    smooth = abs(turn) < 1 and isinstance(neighbour, Arc) and not neighbour.clockwise
    return smooth and not _named(outline, neighbour)


def _named(outline: Outline, segment: Segment) -> bool:
    return any(segment in outline.segments[first:beyond] for first, beyond in outline.edges.values())


def _reach(outline: Outline) -> float:
    left, bottom, right, top = outline.bounds()
    return 2 * (right - left + top - bottom)


def _inner_point(outline: Outline, beside: Segment) -> Point:
    """A point of a single parallel that lies inside the outline, in the middle of its longest piece there."""
    meets = boundary_meets(outline, beside)
    shares = sorted({0.0, 1.0, *(share for point in meets if 0 < (share := beside.share_of(point)) < 1)})
    inner = [
        (high - low, (low + high) / 2)
        for low, high in pairwise(shares)
        if outline.contains(beside.point_at((low + high) / 2), TOUCH)
    ]
    if not inner:
        raise GeometryFault(f"The path beside {said(beside.start)} … {said(beside.end)} lies outside the piece.")
    return beside.point_at(max(inner)[1])


def boundary_ahead(outline: Outline, carrier: Segment, anchor: Point, forward: bool) -> Point:
    """The first point of the boundary met from the anchor on along the carrier."""
    ray: Segment
    if isinstance(carrier, Line):
        way = scale(carrier.tangent_at(0), _reach(outline) if forward else -_reach(outline))
        ray = Line(anchor, add(anchor, way))
    else:
        ray = Arc(anchor, anchor, carrier.centre, carrier.clockwise == forward)
    least = 2 * TOUCH / ray.length
    meets = boundary_meets(outline, ray)
    ahead = [(share, point) for point in meets if least < (share := ray.share_of(point)) < 1 - least]
    if not ahead:
        raise GeometryFault(f"From {said(anchor)} the path meets no edge of the piece.", anchor)
    return min(ahead)[1]


def _refuse_strays(outline: Outline, path: Path, sources: Sequence[Segment], inset: float) -> None:
    """Raise when an open path leaves the piece, or a corner of it is nearer to a walked edge than asked."""
    outside = path_inside(outline, path, _SLACK)
    if outside is not None:
        raise GeometryFault(f"The path {inset:.10g} mm inside leaves the piece at {said(outside)}.", outside)
    for run in path.runs[1:]:
        if any(distance_point_segment(run.start, source) < inset - _SLACK for source in sources):
            raise GeometryFault(f"The path {inset:.10g} mm inside collapses at {said(run.start)}.", run.start)


def _clear(outline: Outline, result: Outline, inset: float) -> bool:
    """Does the result keep its distance from the outline, on the right side of it?"""
    least = abs(inset) - _SLACK
    # Between two lines that don't cross, the least distance is at an end of one; an arc is probed along it.
    steps = [(segment, 8 if isinstance(segment, Arc) else 2) for segment in result.segments]
    probes = [segment.point_at(step / count) for segment, count in steps for step in range(count)]
    if any(outline.contains(probe) != (inset > 0) for probe in probes):
        return False
    return _all_clear(probes, outline, least) and _all_clear(outline.corners(), result, least)


def _all_clear(points: Sequence[Point], ring: Outline, least: float) -> bool:
    """Is every point at least that far from the ring? Only segments whose box is near are measured."""
    boxes = [(segment, *segment.bounds()) for segment in ring.segments]
    return not any(
        left - least < x < right + least
        and bottom - least < y < top + least
        and distance_point_segment((x, y), segment) < least
        for x, y in points
        for segment, left, bottom, right, top in boxes
    )


def _edges_left(outline: Outline, numbers: Sequence[int]) -> dict[str, tuple[int, int]]:
    """Ranges of the names among the pieces left, by the numbers of the segments they came from."""
    edges: dict[str, tuple[int, int]] = {}
    for name, (first, beyond) in outline.edges.items():
        mine = [index for index, number in enumerate(numbers) if first <= number < beyond]
        if mine:
            edges[name] = (mine[0], mine[-1] + 1)
    return edges


def _collapsed(inset: float, at: Point | None) -> GeometryFault:
    where = f" at {said(at)}" if at else ""
    way = "inward" if inset >= 0 else "outward"
    return GeometryFault(f"The outline collapses{where} when moved {abs(inset):.10g} mm {way}.", at)
