"""Names for the edges of a drawn outline: an edge runs from corner to corner, its name is given by a place near it."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from itertools import pairwise

from builder.geometry.measure import distance_point_segment
from builder.geometry.outline import Outline
from builder.geometry.segment import Segment
from builder.geometry.vector import GeometryFault, Point, said, turn_deg

CORNER_DEG = 15.0
"""Where a drawn outline turns by more than this, one edge ends and the next begins."""

_SIDES = ("bottom", "right", "top", "left")


def with_edges(outline: Outline, places: Mapping[str, Point]) -> Outline:
    """The outline with its edges named: each place names the edge nearest to it, the others follow.

    Of four edges those nobody named are bottom, right, top and left, beginning with the one whose middle is lowest;
    else they are edge-1, edge-2 … counter-clockwise from the lower left. GeometryFault for two names of one edge.
    """
    segments = _from_a_corner(outline.segments)
    edges = _split(segments)
    named: dict[int, str] = {}
    for name, place in places.items():
        number = min(range(len(edges)), key=lambda one: _apart(place, edges[one]))
        if number in named:
            raise GeometryFault(f"{named[number]} and {name} are one edge: both lie nearest to it.", place)
        named[number] = name
    ranges: dict[str, tuple[int, int]] = {}
    first = 0
    for number, name in enumerate(_all_names(edges, named)):
        if name in ranges:
            raise GeometryFault(
                f"Two edges would be called {name}; give the one at {said(edges[number][0].start)} a name."
            )
        ranges[name] = (first, first + len(edges[number]))
        first += len(edges[number])
    return Outline(segments, ranges)


def _from_a_corner(segments: Sequence[Segment]) -> tuple[Segment, ...]:
    """The ring begun at the corner nearest to the lower left of its box; where it has none, at its lowest start."""
    corners = [number for number in range(len(segments)) if _turns(segments[number - 1], segments[number])]
    starts = [segment.start for segment in segments]
    if corners:
        left, bottom = min(x for x, _ in starts), min(y for _, y in starts)
        at = min(corners, key=lambda number: (starts[number][0] - left) + (starts[number][1] - bottom))
    else:
        at = min(range(len(segments)), key=lambda number: (starts[number][1], starts[number][0]))
    return (*segments[at:], *segments[:at])


def _turns(before: Segment, after: Segment) -> bool:
    return abs(turn_deg(before.tangent_at(1), after.tangent_at(0))) > CORNER_DEG


def _split(segments: Sequence[Segment]) -> list[list[Segment]]:
    edges: list[list[Segment]] = [[segments[0]]]
    for before, after in pairwise(segments):
        if _turns(before, after):
            edges.append([])
        edges[-1].append(after)
    return edges


def _apart(place: Point, edge: Sequence[Segment]) -> float:
    return min(distance_point_segment(place, segment) for segment in edge)


def _all_names(edges: Sequence[Sequence[Segment]], named: Mapping[int, str]) -> list[str]:
    if len(edges) == 4:
        lowest = min(range(4), key=lambda number: _middle(edges[number])[1])
        given = {(lowest + turn) % 4: side for turn, side in enumerate(_SIDES)}
    else:
        given = {number: f"edge-{number + 1}" for number in range(len(edges))}
    return [named.get(number, given[number]) for number in range(len(edges))]


def _middle(edge: Sequence[Segment]) -> Point:
    """The point half-way along an edge."""
    half = sum(segment.length for segment in edge) / 2
    for segment in edge:
        if segment.length >= half:
            return segment.point_at(half / segment.length)
        half -= segment.length
    return edge[-1].end
