"""Where seams lie along edges, and beside other features: `seam: along`, `of: pocket`, `off: 3 mm`."""

from __future__ import annotations

from collections.abc import Mapping
from itertools import pairwise

from builder.geometry.beside import path_beside
from builder.geometry.offset import inset_outline, inset_path
from builder.geometry.outline import Outline
from builder.geometry.path import Path
from builder.geometry.places import Lengths
from builder.geometry.seam_line import along_seam_line, started_midway
from builder.geometry.segment import Segment
from builder.geometry.shape import FeatureShape
from builder.geometry.vector import GeometryFault
from builder.model import Seam


def all_round(start: str | None, ground: Outline, inset: float, line: Outline | None = None) -> Path:
    """All round, `inset` mm inside or, below 0, outside, from the middle of an edge: in a corner a pleat is left.

    start : the edge, the first when left out
    line  : a seam line to follow instead of a parallel of the edges
    """
    edge = ground.edge(start) if start is not None else ground.edge(next(iter(ground.edges)))
    if not edge:
        raise GeometryFault(f"the seam can't start on edge {start}: its corners leave nothing of it")
    runs = line.segments if line is not None else inset_outline(ground, inset).segments
    return started_midway(runs, edge[len(edge) // 2].point_at(0.5))


def along_edges(
    edges: tuple[str, ...], ground: Outline, inset: float, gaps: tuple[float, float], line: Outline | None = None
) -> Path:
    """Along edges in the order named, 0 mm or more inside: against the ring when that is how they follow each other.

    line : a seam line to follow instead of a parallel of the edges
    """
    forward = _forward(edges, ground)
    if line is not None:
        path = along_seam_line(ground, line, *((edges[0], edges[-1]) if forward else (edges[-1], edges[0])))
        return (path if forward else path.reversed()).shortened(*gaps)
    if forward:
        return inset_path(ground, edges[0], edges[-1], inset, start_gap=gaps[0], end_gap=gaps[1])
    return inset_path(ground, edges[-1], edges[0], inset, start_gap=gaps[1], end_gap=gaps[0]).reversed()


def _forward(edges: tuple[str, ...], ground: Outline) -> bool:
    # A flipped outline keeps the names of its edges, not their order round the ring.
    names = sorted(ground.edges, key=lambda name: ground.edges[name][0])
    for edge in edges:
        ground.edge(edge)
    return all(names[(names.index(one) + 1) % len(names)] == other for one, other in pairwise(edges))


def seam_beside(name: str, feature: Seam, before: Mapping[str, FeatureShape], lengths: Lengths) -> tuple[Path, ...]:
    """Paths of a `seam: along`: beside the area of a feature, else beside each of its lines.

    Inside an area its ends run to the area's edge, as of a seam along edges; outside they stop square to its corners.
    """
    other = before.get(feature.of or "")
    if other is None:
        raise GeometryFault(f"{name} runs along {feature.of}, which stands below it in the file or has no shape")
    off = lengths.mm(feature.off, 0.0, f"{name}.off")
    gaps = (
        lengths.mm(feature.start_gap, 0.0, f"{name}.start-gap"),
        lengths.mm(feature.end_gap, 0.0, f"{name}.end-gap"),
    )
    if has_sides(other):
        return (_beside_area(feature, other.regions[0], off, gaps),)
    if feature.sides:
        raise GeometryFault(f"{name} names sides of {feature.of}, which is a line and has none: take `sides` out")
    if not other.paths:
        raise GeometryFault(f"{name} runs along {feature.of}, which is neither an area nor a line")
    return tuple(path_beside(path, off).shortened(*gaps) for path in other.paths)


def has_sides(feature: FeatureShape) -> bool:
    """Whether a seam runs along the sides of a feature's area; of pleats and darts it follows the lines."""
    return bool(feature.regions) and feature.kind not in ("pleat", "dart")


def _beside_area(feature: Seam, area: Outline, off: float, gaps: tuple[float, float]) -> Path:
    if not feature.sides or feature.sides == ("all",):
        return all_round(feature.start, area, off).shortened(*gaps)
    if off >= 0:
        return along_edges(feature.sides, area, off, gaps)
    if _forward(feature.sides, area):
        return path_beside(Path(_walked(area, feature.sides[0], feature.sides[-1])), off).shortened(*gaps)
    back = path_beside(Path(_walked(area, feature.sides[-1], feature.sides[0])), off)
    return back.reversed().shortened(*gaps)


def _walked(area: Outline, first: str, last: str) -> tuple[Segment, ...]:
    """The segments from the start of one edge to the end of another, counter-clockwise."""
    start, beyond = area.edges[first][0], area.edges[last][1]
    if beyond <= start:
        beyond += len(area.segments)
    return tuple(area.segments[number % len(area.segments)] for number in range(start, beyond))


def refuse_beside(name: str, feature: Seam) -> None:
    """Raise GeometryFault where two ways to say where a seam lies are mixed."""
    if feature.seam == ("along",):
        if feature.of is None:
            raise GeometryFault(f"{name} runs along nothing: name the feature with `of:`")
        if feature.on is not None:
            raise GeometryFault(f"{name} has `of` and `on`: `seam: along` needs `of` alone, `on` goes with named edges")
        if feature.inset is not None or feature.points:
            raise GeometryFault(f"{name} runs along {feature.of}: its distance is `off`, without inset and points")
        return
    typed = next((key for key in ("of", "off", "sides") if getattr(feature, key) not in (None, ())), None)
    if typed is not None:
        raise GeometryFault(f"{name} has `{typed}`, which only a `seam: along` has")
