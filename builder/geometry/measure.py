"""Measuring segments and rings of them: crossings, distances, area, a point or a path inside.

Asks only; makes no new shape. Two things within TOUCH of each other touch.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Sequence
from itertools import pairwise
from typing import TYPE_CHECKING

from builder.geometry.segment import Arc, Bounds, Line, Segment
from builder.geometry.vector import (
    TOUCH,
    GeometryFault,
    Point,
    add,
    cross,
    distance,
    left,
    lerp,
    scale,
    sub,
    unit,
)

if TYPE_CHECKING:
    from builder.geometry.outline import Outline
    from builder.geometry.path import Path

# Circles and lines this near to touching do touch: the root of a rounding error would otherwise tear one
# point of contact into two, a thousand times farther apart.
_TANGENT = 1e-9
# Sine of the angle under which two lines count as parallel.
_PARALLEL = 1e-12
# Lines that meet at a steeper angle than this sine and farther from all ends than this many mm meet plainly.
_STEEP = 0.05
_END = 1e-4
# Neighbours of a ring meet at their corner. Crossings this near to it are the corner itself, not a fault:
# rounded coordinates make a smooth corner cross itself by less than this, far under what a knife can cut.
_CORNER = 1e-3


def bounds_union(boxes: Iterable[Bounds]) -> Bounds:
    """The box around all boxes. GeometryFault when there is none."""
    every = list(boxes)
    if not every:
        raise GeometryFault("There is nothing to put a box around.")
    lefts, bottoms, rights, tops = zip(*every, strict=True)
    return min(lefts), min(bottoms), max(rights), max(tops)


def distance_point_segment(point: Point, segment: Segment) -> float:
    """Shortest distance from a point to a line or an arc, mm."""
    return distance(point, nearest_point(point, segment))


def nearest_point(point: Point, segment: Segment) -> Point:
    """The point of the segment nearest to the given one."""
    if isinstance(segment, Line):
        (ax, ay), (bx, by), (px, py) = segment.start, segment.end, point
        wx, wy = bx - ax, by - ay
        share = ((px - ax) * wx + (py - ay) * wy) / (wx * wx + wy * wy)
        if share <= 0:
            return segment.start
        return segment.end if share >= 1 else (ax + wx * share, ay + wy * share)
    if point == segment.centre:
        return segment.start
    on_circle = add(segment.centre, scale(unit(sub(point, segment.centre)), segment.radius))
    if segment.holds(on_circle):
        return on_circle
    return min(segment.start, segment.end, key=lambda end: distance(point, end))


def segments_cross(a: Segment, b: Segment) -> tuple[Point, ...]:
    """The points two segments share, touching ends included.

    Segments that lie on each other along a stretch give the two ends of the stretch. Order: along a.
    """
    if not boxes_meet(a.bounds(), b.bounds()):
        return ()
    return _crossings(a, b)


def _crossings(a: Segment, b: Segment) -> tuple[Point, ...]:
    """`segments_cross` of two segments whose boxes are known to meet."""
    plain: tuple[Point, ...] | None = None
    if isinstance(a, Line):
        plain = _lines_meet_plainly(a, b) if isinstance(b, Line) else _line_misses(a, b)
    elif isinstance(b, Line):
        plain = _line_misses(b, a)
    if plain is not None:
        return plain
    found: list[Point] = []
    # Ends first: they are exact, and they alone tell of segments lying on each other.
    candidates = [end for end in (a.start, a.end) if distance_point_segment(end, b) <= TOUCH]
    candidates += [end for end in (b.start, b.end) if distance_point_segment(end, a) <= TOUCH]
    candidates += [point for point in carriers_cross(a, b) if _within(point, a) and _within(point, b)]
    for point in candidates:
        if all(distance(point, other) > TOUCH for other in found):
            found.append(point)
    return tuple(sorted(found, key=a.share_of))


def _lines_meet_plainly(a: Line, b: Line) -> tuple[Point, ...] | None:
    """The crossing of two lines, or () when they miss, where no end of one is near the other; else None.

    It settles nearly all pairs with a dozen multiplications.
    """
    (ax, ay), (bx, by) = a.start, b.start
    ux, uy = a.end[0] - ax, a.end[1] - ay
    vx, vy = b.end[0] - bx, b.end[1] - by
    spread = ux * vy - uy * vx
    size_a, size_b = math.hypot(ux, uy), math.hypot(vx, vy)
    if abs(spread) <= _STEEP * size_a * size_b:
        return None
    along_a = ((bx - ax) * vy - (by - ay) * vx) / spread
    along_b = ((bx - ax) * uy - (by - ay) * ux) / spread
    near_a, near_b = _END / size_a, _END / size_b
    if along_a < -near_a or along_a > 1 + near_a or along_b < -near_b or along_b > 1 + near_b:
        return ()
    if near_a < along_a < 1 - near_a and near_b < along_b < 1 - near_b:
        return (lerp(a.start, a.end, along_a),)
    return None


def _line_misses(line: Line, arc: Arc) -> tuple[()] | None:
    """() where an endless line keeps clear of a whole circle, or a line stays inside it; else None."""
    (ax, ay), (bx, by), (cx, cy) = line.start, line.end, arc.centre
    wx, wy = bx - ax, by - ay
    radius = arc.radius
    apart = abs(wx * (cy - ay) - wy * (cx - ax)) / math.hypot(wx, wy)
    if apart > radius + _END:
        return ()
    inner = radius - _END
    return () if math.hypot(ax - cx, ay - cy) < inner and math.hypot(bx - cx, by - cy) < inner else None


def boundary_meets(outline: Outline, segment: Segment) -> Iterator[Point]:
    """All points a segment shares with the boundary of an outline."""
    box = segment.bounds()
    for other, its in outline.boxes:
        if boxes_meet(box, its):
            yield from _crossings(segment, other)


def carriers_cross(a: Segment, b: Segment) -> list[Point]:
    """Where the endless lines or whole circles two segments lie on cross; none for one and the same."""
    if isinstance(a, Line):
        return _lines_cross(a, b) if isinstance(b, Line) else _line_circle_cross(a, b)
    return _line_circle_cross(b, a) if isinstance(b, Line) else _circles_cross(a, b)


def _within(point: Point, segment: Segment) -> bool:
    """Does a point of the segment's endless carrier lie on the segment itself?"""
    if isinstance(segment, Arc):
        return segment.holds(point)
    slack = TOUCH / segment.length
    return -slack <= segment.share_of(point) <= 1 + slack


def _lines_cross(a: Line, b: Line) -> list[Point]:
    way_a, way_b = sub(a.end, a.start), sub(b.end, b.start)
    spread = cross(way_a, way_b)
    if abs(spread) <= _PARALLEL * a.length * b.length:
        return []
    return [lerp(a.start, a.end, cross(sub(b.start, a.start), way_b) / spread)]


def _line_circle_cross(line: Line, arc: Arc) -> list[Point]:
    way, radius = line.tangent_at(0), arc.radius
    foot_distance = cross(way, sub(arc.centre, line.start))
    foot = add(arc.centre, scale(left(way), -foot_distance))
    gap = abs(foot_distance) - radius
    return _either_side(foot, way, gap, radius * radius - foot_distance * foot_distance)


def _circles_cross(a: Arc, b: Arc) -> list[Point]:
    apart = distance(a.centre, b.centre)
    if apart <= _TANGENT:
        return []
    way = unit(sub(b.centre, a.centre))
    along = (apart * apart + a.radius * a.radius - b.radius * b.radius) / (2 * apart)
    foot = add(a.centre, scale(way, along))
    gap = max(apart - (a.radius + b.radius), abs(a.radius - b.radius) - apart)
    return _either_side(foot, left(way), gap, a.radius * a.radius - along * along)


def _either_side(foot: Point, way: Point, gap: float, square: float) -> list[Point]:
    """The two points √square to either side of the foot; one where they touch, none across a gap."""
    if abs(gap) <= _TANGENT:
        return [foot]
    if gap > 0:
        return []
    reach = math.sqrt(max(0.0, square))
    return [add(foot, scale(way, reach)), add(foot, scale(way, -reach))]


def first_crossing(ring: Sequence[Segment]) -> Point | None:
    """A point where a closed ring of segments crosses or touches itself, None when it doesn't.

    The corners where neighbours join don't count. A sweep along the longer side of the ring: only segments
    whose boxes overlap are compared, so a few thousand segments take well under a second.
    """
    boxes = [segment.bounds() for segment in ring]
    whole = bounds_union(boxes)
    axis = 0 if whole[2] - whole[0] >= whole[3] - whole[1] else 1
    active: list[int] = []
    for index in sorted(range(len(ring)), key=lambda i: boxes[i][axis]):
        reached = boxes[index][axis] - TOUCH
        active = [other for other in active if boxes[other][axis + 2] >= reached]
        for other in active:
            if boxes_meet(boxes[index], boxes[other]):
                point = _fault_of_pair(ring, min(index, other), max(index, other))
                if point is not None:
                    return point
        active.append(index)
    return None


def boxes_meet(a: Bounds, b: Bounds) -> bool:
    """Do two boxes touch?"""
    return a[0] <= b[2] + TOUCH and b[0] <= a[2] + TOUCH and a[1] <= b[3] + TOUCH and b[1] <= a[3] + TOUCH


def _fault_of_pair(ring: Sequence[Segment], first: int, second: int) -> Point | None:
    """A crossing of two segments of the ring, whose boxes meet, away from the corners they share."""
    a, b = ring[first], ring[second]
    corners = []
    if second == first + 1:
        corners.append(a.end)
    if first == 0 and second == len(ring) - 1:
        corners.append(b.end)
    if len(corners) == 1 and _meet_once(a, b):
        return None
    for point in _crossings(a, b):
        if all(distance(point, corner) > _CORNER for corner in corners):
            return point
    return None


def _meet_once(a: Segment, b: Segment) -> bool:
    """Whether neighbours of a ring share their corner and can share no other point: two lines at an angle."""
    if not (isinstance(a, Line) and isinstance(b, Line)):
        return False
    spread = cross(sub(a.end, a.start), sub(b.end, b.start))
    return abs(spread) > _STEEP * a.length * b.length


def path_inside(outline: Outline, path: Path, tolerance: float) -> Point | None:
    """The first point of a path that lies outside the outline by more than `tolerance` mm, else None.

    Each run is cut where it meets the boundary, so with no tolerance the answer is exact. A piece outside is
    probed at 17 places, so one that strays farther than the tolerance only between them may be missed.
    """
    allowed = max(tolerance, TOUCH)
    around = path.bounds()
    boxes = [(segment, box) for segment, box in outline.boxes if boxes_meet(box, around)]
    if not boxes and _joined(path) and outline.contains(path.start):
        return None  # nothing of the boundary is near: the whole path lies where its first point does
    for run in path.runs:
        for low, high in pairwise(_shares_at_boundary(boxes, run)):
            # A piece between two crossings lies on one side altogether; most are settled by their middle.
            if outline.contains(run.point_at((low + high) / 2)):
                continue
            inside = low
            for share in (low + (high - low) * step / 16 for step in range(17)):
                if not outline.contains(run.point_at(share), allowed):
                    return _leaves_at(outline, run, inside, share, allowed)
                inside = share
    return None


def _joined(path: Path) -> bool:
    return all(distance(a.end, b.start) <= TOUCH for a, b in pairwise(path.runs))


def _shares_at_boundary(boundary: Sequence[tuple[Segment, Bounds]], run: Segment) -> list[float]:
    """0, 1 and the shares of a run where it meets the boundary, in order."""
    box = run.bounds()
    meets = (point for other, its in boundary if boxes_meet(box, its) for point in _crossings(run, other))
    return sorted({0.0, 1.0, *(share for point in meets if 0 < (share := run.share_of(point)) < 1)})


def _leaves_at(outline: Outline, run: Segment, inside: float, outside: float, allowed: float) -> Point:
    """The first point outside, between a share inside and one outside, by halving."""
    for _ in range(48):
        middle = (inside + outside) / 2
        if outline.contains(run.point_at(middle), allowed):
            inside = middle
        else:
            outside = middle
    return run.point_at(outside)


def smallest_radius(path: Path) -> float:
    """Radius of the tightest arc of a path, mm; infinite when it has only straight runs."""
    return min((run.radius for run in path.runs), default=math.inf)


def ring_area(segments: Sequence[Segment]) -> float:
    """Area of a closed ring, mm², negative for a clockwise one.

    Green's theorem: the polygon of the chords plus the piece between each arc and its chord.
    """
    return _chord_area(segments) + sum(_area_over_chord(segment) for segment in segments)


def ring_centroid(segments: Sequence[Segment]) -> Point:
    """Centre of area of a closed ring, exact for arcs: area moments over area."""
    origin = segments[0].start
    moment = (0.0, 0.0)
    for segment in segments:
        a, b = sub(segment.start, origin), sub(segment.end, origin)
        moment = add(moment, scale(add(a, b), cross(a, b) / 6))
        moment = add(moment, _moment_over_chord(segment, origin))
    return add(origin, scale(moment, 1 / ring_area(segments)))


def _chord_area(segments: Sequence[Segment]) -> float:
    """Area of the polygon of the chords, mm², from a corner so that a far ring loses no digits."""
    origin = segments[0].start
    return sum(cross(sub(s.start, origin), sub(s.end, origin)) for s in segments) / 2


def _area_over_chord(segment: Segment) -> float:
    """Signed area between an arc and its chord, mm²: r²(θ − sin θ)/2; 0 for a line."""
    if isinstance(segment, Line):
        return 0.0
    sweep = segment.sweep
    return segment.radius**2 * (sweep - math.sin(sweep)) / 2


def _moment_over_chord(segment: Segment, origin: Point) -> Point:
    """First moment of the area between an arc and its chord about the origin, mm³.

    About the arc's own centre it is ⅔ r³ sin³(θ/2) towards the middle of the arc.
    """
    if isinstance(segment, Line):
        return 0.0, 0.0
    outward = unit(sub(segment.point_at(0.5), segment.centre))
    own = 2 / 3 * (segment.radius * math.sin(segment.sweep / 2)) ** 3
    return add(scale(sub(segment.centre, origin), _area_over_chord(segment)), scale(outward, own))


def ring_winding(segments: Sequence[Segment], point: Point) -> int:
    """How often the ring goes round the point: the polygon of the chords, corrected by each arc's bulge."""
    turns = 0
    for segment in segments:
        side = cross(sub(segment.end, segment.start), sub(point, segment.start))
        if segment.start[1] <= point[1] < segment.end[1]:
            turns += side > 0
        elif segment.end[1] <= point[1] < segment.start[1]:
            turns -= side < 0
        if isinstance(segment, Arc) and distance(point, segment.centre) < segment.radius:
            turns += _between_arc_and_chord(segment, side)
    return turns


def _between_arc_and_chord(arc: Arc, side: float) -> int:
    """Turns of the loop of arc and chord about a point of its circle on that side of the chord."""
    way = sub(arc.end, arc.start)
    # A point on the chord must fall to the side the winding above puts it: a hair right, a smaller hair up.
    side = side or -way[1] or way[0]
    if arc.clockwise:
        return -1 if side > 0 or way == (0, 0) else 0
    return 1 if side < 0 or way == (0, 0) else 0
