"""Lines beside other lines: a path at a distance from a path, and from the area of a feature.

Corners are joined as inset paths have them (offset.py); an open path ends square to where the other one ends.
"""

from __future__ import annotations

from builder.geometry.measure import distance_point_segment
from builder.geometry.offset import joined_sides
from builder.geometry.outline import Outline, ring
from builder.geometry.path import Path
from builder.geometry.segment import Line, Segment
from builder.geometry.vector import TOUCH, GeometryFault, said

_SHARP_DEG = 25.0
"""A zip or an elastic band bends round such a corner without a pleat. Common practice, no source."""
# How much nearer than asked rounding may bring a point, mm.
_SLACK = 1e-6


def path_beside(path: Path, off: float) -> Path:
    """The path `off` mm to the left of another, below 0 to its right.

    GeometryFault where it collapses, or for a path that lies on itself, as a box with a cross does.
    """
    if abs(off) <= TOUCH:
        return path
    if len(path.distinct()) < len(path.runs):
        raise GeometryFault(f"A line beside a path that goes over {said(path.start)} twice has no side of its own.")
    found = Path(joined_sides(path.runs, off, closed=path.closed and len(path.runs) > 1))
    for run in found.runs:
        if any(distance_point_segment(run.point_at(0.5), one) < abs(off) - _SLACK for one in path.runs):
            raise GeometryFault(f"The line {abs(off):.10g} mm beside collapses at {said(run.start)}.", run.start)
    return found


def band(path: Path, width: float) -> Outline:
    """The area `width` mm wide with the path in its middle; its edges are named left, right, bottom and top.

    The names are those of the sides as they lie, seen from the middle of the whole. GeometryFault for a width not above
    0, a closed path, or one that turns too sharply for its width.
    """
    if not width > 0:
        raise GeometryFault(f"A band of {width:g} mm has no area.")
    if path.closed:
        raise GeometryFault("A band can't close on itself; leave a gap.", path.start)
    right, left = path_beside(path, -width / 2), path_beside(path, width / 2).reversed()
    sides: tuple[tuple[Segment, ...], ...] = (
        right.runs,
        (Line(right.end, left.start),),
        left.runs,
        (Line(left.end, right.start),),
    )
    names = _names(path)
    segments: list[Segment] = []
    edges: dict[str, tuple[int, int]] = {}
    for name, side in zip(names, sides, strict=True):
        edges[name] = (len(segments), len(segments) + len(side))
        segments += side
    return ring(segments, edges)


def _names(path: Path) -> tuple[str, str, str, str]:
    """Names of the side to the right, the end, the side to the left and the start of a path."""
    (x0, y0), (x1, y1) = path.start, path.end
    dx, dy = x1 - x0, y1 - y0
    if abs(dx) >= abs(dy):
        return ("bottom", "right", "top", "left") if dx >= 0 else ("top", "left", "bottom", "right")
    return ("right", "top", "left", "bottom") if dy >= 0 else ("left", "bottom", "right", "top")


def part_of(path: Path, start: float, length: float) -> Path:
    """`length` mm of a path from `start` mm on. GeometryFault where it isn't that long."""
    rest = path.length - start - length
    if rest < -TOUCH:
        raise GeometryFault(
            f"{length:.10g} mm from {start:.10g} mm on are more than the {path.length:.6g} mm of the line."
        )
    if start <= TOUCH and rest <= TOUCH:
        return path
    return path.shortened(max(start, 0.0), max(rest, 0.0))


def point_along(path: Path, gone: float) -> tuple[Segment, float]:
    """The run of a path after `gone` mm, and the share of it there."""
    for run in path.runs:
        if gone <= run.length:
            return run, max(gone, 0.0) / run.length
        gone -= run.length
    return path.runs[-1], 1.0


def smooth_only(path: Path, name: str) -> Path:
    """The path, if what lies along it can follow it: it turns no sharp corner. Raises GeometryFault."""
    for before, angle in zip(path.runs, path.corner_angles(), strict=False):
        if abs(angle) > _SHARP_DEG:
            raise GeometryFault(f"{name} can't turn the corner of {abs(angle):.0f}° at {said(before.end)}: round it.")
    return path
