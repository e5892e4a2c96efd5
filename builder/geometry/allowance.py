"""The second line of a piece with a seam allowance: the cut edge outside its seam line, or the seam line inside.

One allowance all round is the parallel ring of offset.py. Here are allowances that differ from edge to edge: each
side gets its own parallel, and they are joined anew.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass

from builder.geometry.measure import carriers_cross
from builder.geometry.offset import BLUNT_DEG, MITRE_LIMIT, inset_outline
from builder.geometry.outline import Outline, Vertex, polygon
from builder.geometry.segment import Arc, Line, Segment
from builder.geometry.vector import TOUCH, GeometryFault, Point, distance, dot, said, sub, turn_deg

_SMOOTH_DEG = 0.01


@dataclass(frozen=True, slots=True)
class _Side:
    """A side with its name, how far outward it moves, and its parallel."""

    source: Segment
    name: str | None
    out: float
    beside: Segment


@dataclass(frozen=True, slots=True)
class _Joint:
    """How one side goes on to the next: one corner with its radius, or two with a straight step between."""

    end: Point
    start: Point
    radius: float = 0.0

    @property
    def stepped(self) -> bool:
        return distance(self.end, self.start) > TOUCH


def moved_out(outline: Outline, out_of: Callable[[str | None], float]) -> Outline:
    """The outline with each edge moved outward by its own distance, mm; below 0 inward. Edges keep their names.

    out_of : distance of a named edge, or of the sides without a name (None)

    Corners are mitred; one that would reach farther than MITRE_LIMIT × the larger distance is cut off straight, and
    where nearly straight sides have different distances the line steps square to them. A rounded corner keeps its
    centre where both sides move alike; else its radius changes by the smaller distance outward and by the larger
    one inward, so that it is nowhere nearer to the old line than the nearer of its two sides.
    GeometryFault when a side is used up or the new line crosses itself.
    """
    names = _names(outline)
    corners = [_is_corner(outline, names, number) for number in range(len(names))]
    numbers = [number for number, corner in enumerate(corners) if not corner]
    outs = {out_of(names[number]) for number in numbers}
    if len(outs) <= 1:
        return inset_outline(outline, -outs.pop()) if outs else inset_outline(outline, -out_of(None))
    sides = [_moved(outline.segments[number], names[number], out_of(names[number])) for number in numbers]
    joints: list[_Joint] = []
    for index, side in enumerate(sides):
        number, after = numbers[index], sides[(index + 1) % len(sides)]
        following = (number + 1) % len(names)
        arc = outline.segments[following] if corners[following] else None
        joints.append(_joint(side, after, arc if isinstance(arc, Arc) else None))
    return _ring(sides, joints)


def _names(outline: Outline) -> list[str | None]:
    found: list[str | None] = [None] * len(outline.segments)
    for name, (first, beyond) in outline.edges.items():
        found[first:beyond] = [name] * (beyond - first)
    return found


def _is_corner(outline: Outline, names: Sequence[str | None], number: int) -> bool:
    """Is this the arc of a rounded corner: it has no name and runs smoothly into straight sides or named ones?"""
    count = len(names)
    here = outline.segments[number]
    if names[number] is not None or not isinstance(here, Arc) or count < 3:
        return False
    before, after = outline.segments[number - 1], outline.segments[(number + 1) % count]
    smooth = (
        abs(turn_deg(before.tangent_at(1), here.tangent_at(0))) < _SMOOTH_DEG
        and abs(turn_deg(here.tangent_at(1), after.tangent_at(0))) < _SMOOTH_DEG
    )
    sides = ((before, names[number - 1]), (after, names[(number + 1) % count]))
    return smooth and all(isinstance(one, Line) or name is not None for one, name in sides)


def _moved(source: Segment, name: str | None, out: float) -> _Side:
    beside = source.parallel(-out)
    if beside is None:
        raise _used_up(source.start)
    return _Side(source, name, out, beside)


def _joint(a: _Side, b: _Side, arc: Arc | None) -> _Joint:
    near = _corner_of(a, b, arc)
    turn = turn_deg(a.source.tangent_at(1), b.source.tangent_at(0))
    if a.out == b.out and arc is None and distance(a.beside.end, b.beside.start) <= TOUCH:
        return _Joint(a.beside.end, a.beside.end)
    places = carriers_cross(a.beside, b.beside)
    meet = min(places, key=lambda place: distance(place, near), default=None)
    if arc is not None:
        if meet is None:
            raise _used_up(near)
        radius = arc.radius + (-max(a.out, b.out) if arc.clockwise else min(a.out, b.out))
        return _Joint(meet, meet, radius if radius > TOUCH else 0.0)
    reach = MITRE_LIMIT * max(abs(a.out), abs(b.out))
    opens = turn * (a.out + b.out) > 0
    if meet is None or abs(turn) < BLUNT_DEG or (opens and distance(meet, near) > reach):
        return _Joint(a.beside.end, b.beside.start)
    return _Joint(meet, meet)


def _corner_of(a: _Side, b: _Side, arc: Arc | None) -> Point:
    """The corner between two sides, before it was rounded."""
    if arc is None:
        return a.source.end
    places = carriers_cross(a.source, b.source)
    return min(places, key=lambda place: distance(place, arc.point_at(0.5)), default=arc.point_at(0.5))


def _ring(sides: Sequence[_Side], joints: Sequence[_Joint]) -> Outline:
    vertices: list[Vertex] = []
    names: list[str | None] = []
    for index, side in enumerate(sides):
        arriving, leaving = joints[index - 1], joints[index]
        vertices.append(Vertex(arriving.start, _bulge(side, arriving.start, leaving.end), _radius(arriving)))
        names.append(side.name)
        if leaving.stepped:
            vertices.append(Vertex(leaving.end))
            names.append(None)
    return polygon(vertices, names)


def _radius(joint: _Joint) -> float:
    return 0.0 if joint.stepped else joint.radius


def _bulge(side: _Side, start: Point, end: Point) -> float:
    """tan(θ/4) of the side between its new ends. GeometryFault when they have passed each other."""
    beside = side.beside
    if isinstance(beside, Line):
        if dot(sub(end, start), beside.tangent_at(0)) <= TOUCH:
            raise _used_up(side.source.point_at(0.5))
        return 0.0
    if (beside.share_of(end) - beside.share_of(start)) * beside.length <= TOUCH:
        raise _used_up(side.source.point_at(0.5))
    return math.tan(Arc(start, end, beside.centre, beside.clockwise).sweep / 4)


def _used_up(at: Point) -> GeometryFault:
    return GeometryFault(f"The allowances leave nothing of the side at {said(at)}.", at)
