"""A seam that follows the seam line of its part, where the allowance differs from edge to edge.

A seam with one inset is a parallel of the cut edge (offset.py).
"""

from __future__ import annotations

from collections.abc import Sequence

from builder.geometry.offset import MITRE_LIMIT, boundary_ahead
from builder.geometry.outline import Outline
from builder.geometry.path import Path
from builder.geometry.segment import Arc, Line, Segment
from builder.geometry.vector import TOUCH, GeometryFault, Point, distance

_ON_THE_EDGE_MM = 1e-6


def along_seam_line(cut: Outline, line: Outline, from_edge: str, to_edge: str) -> Path:
    """The seam line from the first edge to the last, both included, counter-clockwise, run on to the cut edge.

    It runs on where the cut edge is near in its direction: at most MITRE_LIMIT × the allowance beside its end.
    GeometryFault for an unknown edge, or one whose corners leave nothing of it.
    """
    line.edge(from_edge), line.edge(to_edge)
    (first, first_beyond), (last, beyond) = line.edges[from_edge], line.edges[to_edge]
    if first == first_beyond or last == beyond:
        raise GeometryFault(f"Nothing of edge {from_edge if first == first_beyond else to_edge} is left to sew along.")
    if from_edge != to_edge and last < first:
        beyond += len(line.segments)
    runs = [line.segments[number % len(line.segments)] for number in range(first, beyond)]
    runs[0] = _run_on(cut, runs[0].reversed()).reversed()
    runs[-1] = _run_on(cut, runs[-1])
    return Path(tuple(runs))


def _run_on(cut: Outline, run: Segment) -> Segment:
    """A run with its end moved on to the cut edge, where that is near."""
    aside = cut.distance_to_boundary(run.end)
    if aside <= _ON_THE_EDGE_MM:
        return run
    try:
        end = boundary_ahead(cut, run, run.end, forward=True)
    except GeometryFault:
        return run
    far = distance(run.end, end)
    if far <= TOUCH or far > MITRE_LIMIT * max(aside, _widest(cut, run)):
        return run
    return Line(run.start, end) if isinstance(run, Line) else Arc(run.start, end, run.centre, run.clockwise)


def _widest(cut: Outline, run: Segment) -> float:
    """How far the cut edge lies beside a run, mm: the allowance of its edge."""
    return cut.distance_to_boundary(run.point_at(0.5))


def started_midway(runs: Sequence[Segment], aim: Point) -> Path:
    """A closed path that starts in the middle of the run nearest to a point: a start in a corner leaves a pleat."""
    at = min(range(len(runs)), key=lambda number: distance(runs[number].point_at(0.5), aim))
    first, last = runs[at].part(0.5, 1.0), runs[at].part(0.0, 0.5)
    return Path((first, *runs[at + 1 :], *runs[:at], last))
