"""Lines and arcs of a drawing to closed contours, and the one that is the outline.

Ends nearer than JOIN_MM are one point; what is drawn twice counts once. Every fault names the coordinates of the
drawing, in mm. What the edges are called is edge_names.py.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

from builder.geometry.outline import Outline, ring
from builder.geometry.segment import Segment, arc_from_bulge
from builder.geometry.vector import GeometryFault, Point, distance, said
from builder.reading import Piece

JOIN_MM = 0.05
"""Ends of a drawing nearer than this are meant to meet: no cutter shows it."""

_LEAST_MM = 1e-4
"""A piece shorter than this is a leftover of drawing, not a side."""


def outline_of(pieces: Sequence[Piece]) -> Outline:
    """The contour all others lie in, without names of edges.

    GeometryFault: an open contour (both its ends and the gap), lines that branch, a contour that crosses itself, a
    second contour beside the first, a contour inside it, nothing closed at all.
    """
    rings = sorted((ring(one) for one in _closed(pieces)), key=lambda one: -one.area())
    if not rings:
        raise GeometryFault("The layer has no closed contour.")
    outer, *others = rings
    for other in others:
        at = other.segments[0].start
        if outer.contains(other.segments[0].point_at(0.5)):
            raise GeometryFault(
                f"The layer has a contour inside the outline, at {said(at)}: a cut-out is typed as a hole, "
                "and marks lie on a layer of their own.",
                at,
            )
        raise GeometryFault(
            f"Two contours of the layer could be the outline: one at {said(outer.segments[0].start)}, "
            f"one at {said(at)}; leave one on it.",
            at,
        )
    return outer


@dataclass(slots=True)
class _Chain:
    """Pieces joined end to end: the nodes passed, one more than pieces, and each piece's bulge as it is passed."""

    nodes: list[int] = field(default_factory=list)
    bulges: list[float] = field(default_factory=list)


def _closed(pieces: Sequence[Piece]) -> Iterator[list[Segment]]:
    places = _Places()
    joined = list(_joined(pieces, places))
    at_node: dict[int, list[int]] = {}
    for number, (first, last, _) in enumerate(joined):
        at_node.setdefault(first, []).append(number)
        at_node.setdefault(last, []).append(number)
    for node, numbers in at_node.items():
        if len(numbers) > 2:
            raise GeometryFault(
                f"{len(numbers)} lines of the layer meet at {said(places.points[node])}; a contour has two.",
                places.points[node],
            )
    _refuse_open(joined, at_node, places)
    left = set(range(len(joined)))
    while left:
        chain = _walk(min(left), joined, at_node, left)
        points = [places.points[node] for node in chain.nodes]
        yield [arc_from_bulge(a, b, bulge) for a, b, bulge in zip(points, points[1:], chain.bulges, strict=False)]


class _Places:
    """Points of a drawing, those nearer than JOIN_MM one and the same."""

    def __init__(self) -> None:
        self.points: list[Point] = []
        self._cells: dict[tuple[int, int], list[int]] = {}

    def node(self, point: Point) -> int:
        """The number of the place a point is at."""
        x, y = math.floor(point[0] / JOIN_MM), math.floor(point[1] / JOIN_MM)
        near = [one for dx in (-1, 0, 1) for dy in (-1, 0, 1) for one in self._cells.get((x + dx, y + dy), ())]
        best = min(near, key=lambda one: distance(self.points[one], point), default=None)
        if best is not None and distance(self.points[best], point) <= JOIN_MM:
            return best
        self.points.append(point)
        self._cells.setdefault((x, y), []).append(len(self.points) - 1)
        return len(self.points) - 1


def _joined(pieces: Sequence[Piece], places: _Places) -> Iterator[tuple[int, int, float]]:
    """Each piece once, by the places of its ends; scraps and what is drawn over another piece are left out."""
    seen: set[tuple[int, int, int]] = set()
    for piece in pieces:
        if distance(piece.start, piece.end) <= _LEAST_MM:
            continue
        first, last = places.node(piece.start), places.node(piece.end)
        if first == last:
            continue  # shorter than what counts as one point
        # The rise of an arc over its chord, to a hundredth of a millimetre, tells arcs between two points apart.
        rise = round(50 * piece.bulge * distance(piece.start, piece.end))
        key = (first, last, rise) if first < last else (last, first, -rise)
        if key not in seen:
            seen.add(key)
            yield first, last, piece.bulge


def _refuse_open(joined: Sequence[tuple[int, int, float]], at_node: dict[int, list[int]], places: _Places) -> None:
    """Raise for a chain with two loose ends: where they are, and how far apart."""
    loose = next((node for node, numbers in at_node.items() if len(numbers) == 1), None)
    if loose is None:
        return
    node, number = loose, at_node[loose][0]
    while True:
        first, last, _ = joined[number]
        node = last if node == first else first
        onward = [one for one in at_node[node] if one != number]
        if not onward:
            break
        number = onward[0]
    start, end = places.points[loose], places.points[node]
    raise GeometryFault(
        f"A contour of the layer is open: it ends at {said(start)} and at {said(end)}, "
        f"{distance(start, end):.6g} mm apart.",
        start,
    )


def _walk(
    number: int, joined: Sequence[tuple[int, int, float]], at_node: dict[int, list[int]], left: set[int]
) -> _Chain:
    first, _, _ = joined[number]
    chain, node = _Chain([first]), first
    while number in left:
        left.discard(number)
        start, end, bulge = joined[number]
        chain.bulges.append(bulge if node == start else -bulge)
        node = end if node == start else start
        chain.nodes.append(node)
        number = next((one for one in at_node[node] if one in left), number)
    return chain
