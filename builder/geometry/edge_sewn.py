"""A part turned right side out: its edge is the seam now, and the allowance lies inside."""

from __future__ import annotations

from builder.geometry.measure import nearest_point
from builder.geometry.outline import Outline, turned_round
from builder.geometry.path import Path
from builder.geometry.segment import Line, Segment
from builder.geometry.vector import TOUCH, Point, distance

_LEAST_SHARE = 1e-9
Foot = tuple[int, float, Point]


def sewn_edge(outline: Outline, path: Path) -> Outline:
    """The outline with the stretch of its edge beside the seam replaced by the seam.

    path : of the seam, inside the outline; one all round is the new outline by itself
    """
    if path.closed:
        whole = Outline(path.runs)
        return whole if whole.area() > 0 else turned_round(whole)
    start, end = _foot(outline, path.start), _foot(outline, path.end)
    ahead, back = _stretch(outline, start, end), _stretch(outline, end, start)
    if not ahead or not back:
        return outline
    if _apart(ahead, path) > _apart(back, path):
        path, start, end, back = path.reversed(), end, start, ahead
    steps = [*_step(start[2], path.start), *path.runs, *_step(path.end, end[2]), *back]
    return Outline(tuple(steps))


def inside_edge(outline: Outline, path: Path, allowance: float) -> tuple[Segment, ...]:
    """Where the raw edges of a seam lie inside after turning: beside it, by the allowance, towards the goods."""
    found = []
    for run in path.runs:
        sides = [side for off in (allowance, -allowance) if (side := run.parallel(off)) is not None]
        found += [side for side in sides if outline.contains(side.point_at(0.5))][:1]
    return tuple(found)


def _foot(outline: Outline, point: Point) -> Foot:
    """The nearest place of the boundary: number of its segment, share along it, the place itself."""
    places = [nearest_point(point, segment) for segment in outline.segments]
    number = min(range(len(places)), key=lambda one: distance(places[one], point))
    return number, outline.segments[number].share_of(places[number]), places[number]


def _stretch(outline: Outline, first: Foot, last: Foot) -> list[Segment]:
    """The boundary from one place to another, the way the outline runs."""
    segments = outline.segments
    if first[0] == last[0] and first[1] < last[1]:
        return [segments[first[0]].part(first[1], last[1])]
    between = (last[0] - first[0] - 1) % len(segments)
    found = [segments[first[0]].part(first[1], 1.0)] if first[1] < 1 - _LEAST_SHARE else []
    found += [segments[(first[0] + 1 + number) % len(segments)] for number in range(between)]
    if last[1] > _LEAST_SHARE:
        found.append(segments[last[0]].part(0.0, last[1]))
    return found


def _apart(stretch: list[Segment], path: Path) -> float:
    """How far the seam lies from a stretch of the boundary, at the most over the middles of its segments."""
    return max(
        min(distance(one.point_at(0.5), nearest_point(one.point_at(0.5), run)) for run in path.runs) for one in stretch
    )


def _step(start: Point, end: Point) -> list[Segment]:
    return [Line(start, end)] if distance(start, end) > TOUCH else []
