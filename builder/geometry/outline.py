"""The outline of a cut piece: a closed ring of segments, counter-clockwise, with names for its edges.

Built by `rectangle`, `polygon` or `ring`, which refuse what can't be cut out. Area, centroid and inside are
exact for arcs. No holes, no seams: those are paths (path.py) and insets (offset.py).
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from functools import cached_property
from types import MappingProxyType

from builder.geometry.measure import (
    bounds_union,
    carriers_cross,
    distance_point_segment,
    first_crossing,
    ring_area,
    ring_centroid,
    ring_winding,
)
from builder.geometry.segment import Arc, Bounds, Line, Segment, arc_from_bulge
from builder.geometry.vector import (
    TOUCH,
    GeometryFault,
    Point,
    add,
    cross,
    distance,
    lerp,
    said,
    scale,
    sub,
    turn_deg,
    unit,
)

__all__ = ["GeometryFault", "Outline", "Vertex", "polygon", "rectangle", "ring"]

_LEAST_AREA = 1e-6


@dataclass(frozen=True)
class Outline:
    """A closed ring, interior to the left. Use `ring` for segments that haven't been checked yet.

    segments : each ends where the next begins, the last where the first begins
    edges    : name → (first, beyond): the edge is segments[first:beyond]. An edge eaten up by its rounded
               corners is an empty range. Corner arcs between edges belong to none.
    """

    segments: tuple[Segment, ...]
    edges: Mapping[str, tuple[int, int]] = field(default_factory=dict, hash=False)

    def __post_init__(self) -> None:
        object.__setattr__(self, "edges", MappingProxyType(dict(self.edges)))

    def __reduce__(self) -> tuple[type[Outline], tuple[tuple[Segment, ...], dict[str, tuple[int, int]]]]:
        # A read-only mapping can't be pickled, and worker processes are handed outlines.
        return Outline, (self.segments, dict(self.edges))

    def edge(self, name: str) -> tuple[Segment, ...]:
        """The segments of a named edge, counter-clockwise. GeometryFault for an unknown name."""
        if name not in self.edges:
            known = ", ".join(self.edges) or "none"
            raise GeometryFault(f"The outline has no edge named {name}; its edges: {known}.")
        first, beyond = self.edges[name]
        return self.segments[first:beyond]

    def corners(self) -> tuple[Point, ...]:
        """Where the segments meet, starting with the start of the first."""
        return tuple(segment.start for segment in self.segments)

    def area(self) -> float:
        """Area, mm², exact for arcs."""
        return ring_area(self.segments)

    def perimeter(self) -> float:
        """Length all round, mm."""
        return sum(segment.length for segment in self.segments)

    def bounds(self) -> Bounds:
        """Box around it: left, bottom, right, top in mm."""
        return self._bounds

    @cached_property
    def _bounds(self) -> Bounds:
        return bounds_union(box for _, box in self.boxes)

    @cached_property
    def boxes(self) -> tuple[tuple[Segment, Bounds], ...]:
        """Each segment with the box around it."""
        return tuple((segment, segment.bounds()) for segment in self.segments)

    def centroid(self) -> Point:
        """Centre of area, exact for arcs."""
        return ring_centroid(self.segments)

    def contains(self, point: Point, tolerance: float = 0.0) -> bool:
        """Is the point inside, or within `tolerance` mm of the boundary?

        Without tolerance a point of the boundary itself may fall to either side.
        """
        if ring_winding(self.segments, point) != 0:
            return True
        return tolerance > 0 and self.distance_to_boundary(point) <= tolerance

    def distance_to_boundary(self, point: Point) -> float:
        """Distance to the nearest point of the ring, mm, never negative."""
        return min(distance_point_segment(point, segment) for segment in self.segments)

    def to_polyline(self, tolerance: float) -> list[Point]:
        """The ring as points, the last equal to the first; chords leave arcs by at most `tolerance` mm."""
        points = [self.segments[0].start]
        for segment in self.segments:
            points += segment.to_polyline(tolerance)[1:]
        return [*points[:-1], points[0]]


@dataclass(frozen=True, slots=True)
class Vertex:
    """A corner of a polygon.

    at     : where it is, before any rounding
    bulge  : tan(θ/4) of the arc from this corner to the next, positive counter-clockwise as typed; 0 straight
    corner : radius the corner is rounded with, mm; 0 sharp
    """

    at: Point
    bulge: float = 0.0
    corner: float = 0.0


def rectangle(width: float, height: float, corner: float = 0.0) -> Outline:
    """A rectangle with its lower left corner at the origin; edges bottom, right, top, left.

    corner : radius of all four corners, mm
    GeometryFault when a size isn't above 0 or the radius doesn't fit.
    """
    if not (width > 0 and height > 0):
        raise GeometryFault(f"A rectangle of {width:.10g} × {height:.10g} mm has no area.")
    if TOUCH < corner < min(width, height) / 2 - TOUCH:
        return _rounded_rectangle(float(width), float(height), float(corner))
    places = ((0.0, 0.0), (float(width), 0.0), (float(width), float(height)), (0.0, float(height)))
    if corner == 0 and min(width, height) > TOUCH:
        # Four lines at right angles need none of a polygon's checks.
        sides = tuple(Line(place, places[(index + 1) % 4]) for index, place in enumerate(places))
        return Outline(sides, {"bottom": (0, 1), "right": (1, 2), "top": (2, 3), "left": (3, 4)})
    return polygon([Vertex(at, corner=corner) for at in places], ["bottom", "right", "top", "left"])


def _rounded_rectangle(width: float, height: float, corner: float) -> Outline:
    """Four lines and four quarter arcs, which need none of a polygon's checks."""
    near, right, top = corner, width - corner, height - corner
    lines = (
        Line((near, 0.0), (right, 0.0)),
        Line((width, near), (width, top)),
        Line((right, height), (near, height)),
        Line((0.0, top), (0.0, near)),
    )
    centres = ((right, near), (right, top), (near, top), (near, near))
    segments: list[Segment] = []
    for index, (line, centre) in enumerate(zip(lines, centres, strict=True)):
        segments += (line, Arc(line.end, lines[(index + 1) % 4].start, centre, clockwise=False))
    return Outline(tuple(segments), {"bottom": (0, 1), "right": (2, 3), "top": (4, 5), "left": (6, 7)})


def polygon(points: Sequence[Point | Vertex], names: Sequence[str | None] = ()) -> Outline:
    """The outline through corners, in either direction; it comes out counter-clockwise.

    points : corners in order round the piece, the last joined to the first; two will do if an edge is bulged
    names  : for each corner the name of the edge that leaves it towards the next, or None. Neighbouring edges
             of one name are one edge, a rounded corner between them included.
    GeometryFault: fewer than 3 corners, a corner twice running, no area, the ring crosses itself, a corner
    radius that doesn't fit its edges, a name used in two places.
    """
    vertices = [item if isinstance(item, Vertex) else Vertex(item) for item in points]
    labels = list(names) or [None] * len(vertices)
    if len(labels) != len(vertices):
        raise GeometryFault(f"{len(vertices)} corners need {len(vertices)} edge names, not {len(labels)}.")
    _refuse_bad_corners(vertices)
    segments, ranges = _rounded(vertices)
    first = _first_edge(labels)
    start, total = ranges[first][0], len(segments)
    ranges = [(a - start, b - start) for a, b in ranges[first:]] + [
        (a - start + total, b - start + total) for a, b in ranges[:first]
    ]
    edges = _named(labels[first:] + labels[:first], ranges)
    return ring(segments[start:] + segments[:start], edges)


def ring(segments: Sequence[Segment], edges: Mapping[str, tuple[int, int]] | None = None) -> Outline:
    """A checked outline from segments in either direction; a clockwise ring is turned, its names with it.

    GeometryFault: a gap between segments, no area, the ring crosses or touches itself.
    """
    if not segments:
        raise GeometryFault("An outline needs segments.")
    for index, segment in enumerate(segments):
        after = segments[(index + 1) % len(segments)]
        if distance(segment.end, after.start) > TOUCH:
            raise GeometryFault(
                f"The outline is open: one segment ends at {said(segment.end)}, "
                f"the next starts at {said(after.start)}.",
                segment.end,
            )
    _refuse_flat(segments)
    point = first_crossing(segments)
    if point is not None:
        raise GeometryFault(f"The outline crosses or touches itself at {said(point)}.", point)
    outline = Outline(tuple(segments), edges or {})
    area = outline.area()
    if abs(area) < _LEAST_AREA:
        raise GeometryFault(f"The outline at {said(segments[0].start)} has no area.", segments[0].start)
    return outline if area > 0 else turned_round(outline)


def turned_round(outline: Outline) -> Outline:
    """The same ring walked the other way, each edge keeping its name and place."""
    count = len(outline.segments)
    return Outline(
        tuple(segment.reversed() for segment in reversed(outline.segments)),
        {name: (count - beyond, count - first) for name, (first, beyond) in outline.edges.items()},
    )


def _refuse_bad_corners(vertices: Sequence[Vertex]) -> None:
    if len(vertices) < 3 and not (len(vertices) == 2 and any(vertex.bulge for vertex in vertices)):
        where = vertices[0].at if vertices else None
        raise GeometryFault(f"An outline needs at least 3 corners, not {len(vertices)}.", where)
    for index, vertex in enumerate(vertices):
        if not all(map(math.isfinite, (*vertex.at, vertex.bulge, vertex.corner))):
            raise GeometryFault(f"Corner {index + 1} is not a finite number.")
        if vertex.corner < 0:
            raise GeometryFault(
                f"Corner {index + 1} at {said(vertex.at)} has a radius below 0: {vertex.corner:.10g} mm.",
                vertex.at,
            )
        if distance(vertex.at, vertices[index - 1].at) <= TOUCH:
            before = index or len(vertices)
            raise GeometryFault(
                f"Corners {before} and {index + 1} are the same point {said(vertex.at)}; "
                "the ring closes itself, leave one out.",
                vertex.at,
            )


def _refuse_flat(segments: Sequence[Segment]) -> None:
    """A ring that lies on one line has no area; said before its sides are found to lie on each other."""
    origin = segments[0].start
    if all(isinstance(segment, Line) for segment in segments):
        far = max((segment.end for segment in segments), key=lambda end: distance(origin, end))
        way = unit(sub(far, origin))
        if all(abs(cross(way, sub(segment.end, origin))) <= TOUCH for segment in segments):
            raise GeometryFault(f"The outline from {said(origin)} to {said(far)} has no area.", origin)


def _first_edge(labels: Sequence[str | None]) -> int:
    """Where to begin, so that no edge of several segments wraps round the end of the list."""
    count = len(labels)
    for back in range(count):
        if labels[0] is None or labels[-back - 1] != labels[0]:
            return (count - back) % count
    return 0


def _named(labels: Sequence[str | None], ranges: Sequence[tuple[int, int]]) -> dict[str, tuple[int, int]]:
    """Ranges of names, neighbouring edges of one name joined."""
    edges: dict[str, tuple[int, int]] = {}
    before: str | None = None
    for label, (first, beyond) in zip(labels, ranges, strict=True):
        if label is not None:
            if label in edges and label != before:
                raise GeometryFault(f"Two edges that aren't neighbours are both named {label}.")
            edges[label] = (edges[label][0] if label == before else first, beyond)
        before = label
    return edges


def _rounded(vertices: Sequence[Vertex]) -> tuple[list[Segment], list[tuple[int, int]]]:
    """Segments of a ring with its rounded corners, and the range of each vertex's edge among them."""
    count = len(vertices)
    whole = [arc_from_bulge(v.at, vertices[(i + 1) % count].at, v.bulge) for i, v in enumerate(vertices)]
    arcs = [_corner_arc(index, v, whole[index - 1], whole[index]) for index, v in enumerate(vertices)]
    segments: list[Segment] = []
    ranges: list[tuple[int, int]] = []
    for index, edge in enumerate(whole):
        here, after = arcs[index], arcs[(index + 1) % count]
        first = len(segments)
        kept = _between(edge, here, after, index)
        if kept is not None:
            segments.append(kept)
        ranges.append((first, len(segments)))
        if after is not None:
            segments.append(after)
    return segments, ranges


def _between(edge: Segment, here: Arc | None, after: Arc | None, index: int) -> Segment | None:
    """What two rounded corners leave of an edge: all, some, or None when they meet on it."""
    start, end = here.end if here else edge.start, after.start if after else edge.end
    low, high = edge.share_of(start) if here else 0.0, edge.share_of(end) if after else 1.0
    left_over = (high - low) * edge.length
    if left_over < -TOUCH:
        raise GeometryFault(
            f"The rounded corners at both ends of edge {index + 1}, {said(edge.start)} to {said(edge.end)}, "
            f"need {edge.length - left_over:.6g} mm of its {edge.length:.6g} mm.",
            edge.start,
        )
    if left_over <= TOUCH:
        return None
    return Line(start, end) if isinstance(edge, Line) else Arc(start, end, edge.centre, edge.clockwise)


def _corner_arc(index: int, vertex: Vertex, before: Segment, after: Segment) -> Arc | None:
    """The arc that rounds a corner, touching the segments on both sides; None for a sharp corner.

    Its centre is as far from both as its radius, so it lies where their parallels cross; where those miss
    each other inside their lengths, the radius doesn't fit.
    """
    if vertex.corner == 0:
        return None
    turn = turn_deg(before.tangent_at(1), after.tangent_at(0))
    if abs(turn) < 1e-6 or abs(turn) > 180 - 1e-6:
        raise GeometryFault(f"There is no corner to round at {said(vertex.at)}.", vertex.at)
    side = vertex.corner if turn > 0 else -vertex.corner
    near, far = before.parallel(side), after.parallel(side)
    places = carriers_cross(near, far) if near and far else ()
    fitting = [p for p in places if _foot_fits(p, before) and _foot_fits(p, after)]
    if not fitting:
        raise GeometryFault(
            f"The radius {vertex.corner:.10g} mm of corner {index + 1} at {said(vertex.at)} "
            f"is too big for its edges of {before.length:.6g} and {after.length:.6g} mm.",
            vertex.at,
        )
    centre = min(fitting, key=lambda place: distance(place, vertex.at))
    return Arc(_foot(centre, before), _foot(centre, after), centre, clockwise=turn < 0)


def _foot_fits(point: Point, segment: Segment) -> bool:
    slack = TOUCH / segment.length
    return -slack <= segment.share_of(point) <= 1 + slack


def _foot(point: Point, segment: Segment) -> Point:
    """Foot of the perpendicular from a point on the line or the circle."""
    if isinstance(segment, Line):
        return lerp(segment.start, segment.end, segment.share_of(point))
    return add(segment.centre, scale(unit(sub(point, segment.centre)), segment.radius))
