"""Pleats, darts, zips and elastic on a flat part, and what they take of an edge.

A row of pleats is placed as a box is, by the cloth it is folded from. Beside each crease its part is told: the `outer`
crease is laid on the line it `meets`, the `inner` one lies under it. What is drawn of them is view's.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator

from builder.geometry.beside import band, part_of, path_beside, point_along, smooth_only
from builder.geometry.measure import boundary_meets, distance_point_segment
from builder.geometry.offset import inset_path
from builder.geometry.outline import Outline, polygon, ring
from builder.geometry.path import Path
from builder.geometry.places import Lengths
from builder.geometry.segment import Line, Segment
from builder.geometry.shape import FeatureShape, PartShape
from builder.geometry.vector import TOUCH, GeometryFault, Point, add, distance, left, lerp, scale
from builder.model import Dart, Elastic, Laid, Pleat, Zip

DRILL_MM = 12.0
"""The mark of a dart lies so far before its point. Common practice, no source."""
ZIP_MM, ELASTIC_MM = 32.0, 20.0
"""Width of a zip with its tapes, and of elastic, where the material doesn't say. Common practice, no source."""
SLIDER_MM = 9.0
"""Length of a slider, stops included. Common practice, no source."""

# Lines of a pleat by their distance from its first one, in depths; an arrow from the outer crease to what it meets.
_KNIFE = (("meets", 0), ("inner", 1), ("outer", 2)), ((2, 0),)
_KNIFE_BACK = (("outer", 0), ("inner", 1), ("meets", 2)), ((0, 2),)
_BOX = (("meets", 0), ("inner", 1), ("outer", 2), ("outer", 4), ("inner", 5), ("meets", 6)), ((2, 0), (4, 6))
_INVERTED = (("outer", 0), ("inner", 1), ("meets", 2), ("inner", 3), ("outer", 4)), ((0, 2), (4, 2))
# A line this near to an edge ends on it, mm.
_ON_EDGE = 0.5
_INSIDE = 1e-6


def pleat_shape(name: str, feature: Pleat, ground: Outline, lengths: Lengths) -> FeatureShape:
    """A row of pleats: creases as paths, other lines and arrows as marks, the cloth each fold takes as regions.

    Raises GeometryFault for a row without room between its pleats, and for one beyond the part.
    """
    depth = lengths.mm(feature.pleat, short=f"{name}.pleat")
    lines, arrows = _plan(feature)
    extent = lines[-1][1] * depth
    if not depth > 0:
        raise GeometryFault(f"{name} has no depth")
    pitch = lengths.mm(feature.pitch, 0.0, f"{name}.pitch")
    if feature.count > 1 and pitch < extent - TOUCH:
        raise GeometryFault(f"{name} is folded from {extent:.6g} mm each and repeats after {pitch:.6g} mm")
    typed = lengths.mm(feature.length, 0.0, f"{name}.length") if feature.length is not None else None
    size = (extent, typed or 0.0) if feature.along == "up" else (typed or 0.0, extent)
    corner = lengths.corner(feature.at, ground.bounds(), size, name)
    paths: list[Path] = []
    marks: list[tuple[str, Path]] = []
    regions: list[Outline] = []
    for number in range(feature.count):
        first = corner[0 if feature.along == "up" else 1] + number * pitch
        drawn = [(role, _crease(name, feature, first + at * depth, corner, typed, ground)) for role, at in lines]
        paths += [Path((line,)) for role, line in drawn if role != "meets"]
        marks += [(f"pleat {role}", Path((line,))) for role, line in drawn]
        by_place = {at: line for (_, at), (_, line) in zip(lines, drawn, strict=True)}
        marks += [("pleat arrow", one) for pair in arrows for one in _arrows(by_place[pair[0]], by_place[pair[1]])]
        regions += [_between(by_place[min(pair)], by_place[max(pair)]) for pair in arrows]
    take = feature.depths_taken / feature.count * depth
    return FeatureShape(name, "pleat", feature, tuple(paths), tuple(regions), (), (depth, take), tuple(marks))


def _plan(feature: Pleat) -> tuple[tuple[tuple[str, int], ...], tuple[tuple[int, int], ...]]:
    match feature.kind:
        case "box":
            return _BOX
        case "inverted":
            return _INVERTED
    return _KNIFE if feature.first_way else _KNIFE_BACK


def _crease(name: str, feature: Pleat, at: float, corner: Point, length: float | None, ground: Outline) -> Line:
    """A crease at its place: of its typed length, or from edge to edge."""
    up = feature.along == "up"
    if length is not None:
        low = corner[1 if up else 0]
        return Line((at, low), (at, low + length)) if up else Line((low, at), (low + length, at))
    left_, bottom, right, top = ground.bounds()
    low, high = (left_, right) if up else (bottom, top)
    if not low - TOUCH <= at <= high + TOUCH:
        raise GeometryFault(f"{name} leaves the part: it has a crease at {at:.6g} mm of {low:.6g} to {high:.6g} mm")
    # A crease on the edge itself would lie along it and meet it nowhere.
    held = min(max(at, low + _INSIDE), high - _INSIDE)
    ray = Line((held, bottom - 1), (held, top + 1)) if up else Line((left_ - 1, held), (right + 1, held))
    ends = sorted(point[1 if up else 0] for point in boundary_meets(ground, ray))
    if len(ends) < 2 or ends[-1] - ends[0] <= TOUCH:
        raise GeometryFault(f"{name} has a crease at {at:.6g} mm, where there is no part")
    return Line((at, ends[0]), (at, ends[-1])) if up else Line((ends[0], at), (ends[-1], at))


def _arrows(outer: Line, meets: Line) -> Iterator[Path]:
    """From the crease that moves to the line it meets: one in the middle, two on long pleats."""
    apart = distance(outer.start, meets.start)
    shares = (0.2, 0.8) if outer.length > 4 * apart else (0.5,)
    yield from (Path((Line(outer.point_at(share), meets.point_at(share)),)) for share in shares)


def _between(first: Line, last: Line) -> Outline:
    points = [first.start, last.start, last.end, first.end]
    return polygon(points if first.start[0] < last.start[0] - TOUCH else points[::-1])


def dart_shape(name: str, feature: Dart, ground: Outline, on_edge: Point, lengths: Lengths) -> FeatureShape:
    """A dart whose mouth has its middle at a point of its edge: the sewn leg as its path, from the edge to the point.

    Of a straight edge both legs are √(depth² + (width/2)²) long. Raises GeometryFault for one wider than its edge.
    """
    width, depth = lengths.mm(feature.dart, short=f"{name}.dart"), lengths.mm(feature.depth, short=f"{name}.depth")
    edge = Path(ground.edge(feature.edge))
    middle = _gone(edge, on_edge)
    if not (width > 0 and depth > 0):
        raise GeometryFault(f"{name} takes nothing: its width and its depth must be above 0")
    if middle - width / 2 < -TOUCH or middle + width / 2 > edge.length + TOUCH:
        raise GeometryFault(f"{name} is {width:.6g} mm wide and reaches beyond the end of edge {feature.edge}")
    mouth = part_of(edge, middle - width / 2, width)
    run, share = point_along(edge, middle)
    point = add(run.point_at(share), scale(left(run.tangent_at(share)), depth))
    drill = lengths.mm(feature.drill, min(DRILL_MM, depth / 2), f"{name}.drill")
    if drill >= depth:
        raise GeometryFault(f"{name} is {depth:.6g} mm deep, and its mark lies {drill:.6g} mm before its point")
    one, other = Line(mouth.start, point), Line(mouth.end, point)
    fold = Line(on_edge, point)
    marks = (
        ("dart leg", Path((other,))),
        ("dart fold", Path((fold,))),
        ("dart arrow", Path((Line(other.point_at(0.14), one.point_at(0.14)),))),
    )
    region = ring((*mouth.runs, other, one.reversed()))
    mark = (lerp(point, on_edge, drill / depth),) if drill > 0 else ()
    return FeatureShape(name, "dart", feature, (Path((one,)),), (region,), mark, (width, depth), marks)


def _gone(edge: Path, point: Point) -> float:
    """How far along an edge a point of it lies, mm."""
    gone = 0.0
    for run in edge.runs:
        if distance_point_segment(point, run) <= TOUCH:
            return gone + run.share_of(point) * run.length
        gone += run.length
    raise GeometryFault("The point doesn't lie on the edge.", point)


def zip_shape(name: str, feature: Zip, line: Path | None, ground: Outline, lengths: Lengths) -> FeatureShape:
    """A zip: the middle of its chain as its path, its tapes as its region; stops, slider and chain as marks."""
    width, length = _size(name, feature, ZIP_MM, lengths)
    chain = smooth_only(_laid_line(name, feature, line, ground, length, lengths), name)
    slider = min(SLIDER_MM, chain.length / 3)
    stop = slider / 4
    start = {"start": stop, "middle": (chain.length - slider) / 2, "end": chain.length - slider - stop}[feature.slider]
    marks = [("zip tape", chain)]
    before, after = start, chain.length - start - slider
    if before > TOUCH:
        marks.append(("zip chain", part_of(chain, 0.0, before)))
    if after > TOUCH:
        marks.append(("zip parted" if feature.open else "zip chain", part_of(chain, start + slider, after)))
    marks += [("zip stop", part_of(chain, at, stop)) for at in (0.0, chain.length - stop)]
    marks.append(("zip slider", part_of(chain, start, slider)))
    tape = band(_longer(chain, lengths.mm(feature.ends, 0.0, f"{name}.ends")), width)
    return FeatureShape(name, "zip", feature, (chain,), (tape,), (), (width, 0.0), tuple(marks))


def _longer(path: Path, by: float) -> Path:
    """A path that goes on straight at both ends."""
    if by <= 0:
        return path
    before = scale(path.runs[0].tangent_at(0), -by)
    after = scale(path.runs[-1].tangent_at(1), by)
    first, last = Line(add(path.start, before), path.start), Line(path.end, add(path.end, after))
    return Path((first, *path.runs, last))


def elastic_shape(name: str, feature: Elastic, line: Path | None, ground: Outline, lengths: Lengths) -> FeatureShape:
    """Elastic stretched on its line. Raises GeometryFault where it is longer relaxed than its line is."""
    width, _ = _size(name, feature, ELASTIC_MM, lengths)
    path = smooth_only(_laid_line(name, feature, line, ground, None, lengths), name)
    relaxed = lengths.mm(feature.relaxed, short=f"{name}.relaxed")
    if not 0 < relaxed <= path.length + TOUCH:
        raise GeometryFault(
            f"{name} is {relaxed:.6g} mm relaxed, on a line of {path.length:.6g} mm: it isn't stretched"
        )
    marks = (("elastic", path),)
    return FeatureShape(name, "elastic", feature, (path,), (band(path, width),), (), (width, relaxed), marks)


def stretch(feature: FeatureShape) -> float:
    """How many times its relaxed length elastic is stretched to."""
    return feature.paths[0].length / feature.size[1]


def _size(name: str, feature: Laid, width: float, lengths: Lengths) -> tuple[float, float | None]:
    """Width of what is laid, and its length where it is a part of its own."""
    part = lengths.component_shape(feature.material)
    if part is not None:
        left_, bottom, right, top = part.bounds
        return top - bottom, right - left_
    return lengths.mm(None, width, f"{name}.width"), None


def _laid_line(
    name: str, feature: Laid, line: Path | None, ground: Outline, own: float | None, lengths: Lengths
) -> Path:
    """The line along an edge, to the right or up, or that through points; the typed length of it, else its own."""
    if (line is None) == (feature.along is None):
        raise GeometryFault(f"{name} lies nowhere: type either the edge it runs `along`, or its `points`")
    path = line if line is not None else _edge_line(name, feature, ground, lengths)
    length = lengths.mm(feature.length, own or 0.0, f"{name}.length") or None
    gap = lengths.mm(feature.start_gap, 0.0, f"{name}.start-gap")
    if length is None:
        return part_of(path, gap, path.length - gap)
    return part_of(path, gap if feature.start_gap is not None else (path.length - length) / 2, length)


def _edge_line(name: str, feature: Laid, ground: Outline, lengths: Lengths) -> Path:
    inset = lengths.mm(feature.inset, 0.0, f"{name}.inset")
    edge = feature.along or ""
    path = inset_path(ground, edge, edge, inset) if inset > 0 else path_beside(Path(ground.edge(edge)), inset)
    dx, dy = path.end[0] - path.start[0], path.end[1] - path.start[1]
    return path.reversed() if (dx if abs(dx) >= abs(dy) else dy) < 0 else path


def taken_at(shape: PartShape, edge: str, features: Collection[str] | None = None) -> float:
    """How much of an edge its pleats and darts take once they are made, mm.

    Twice its depth for each outer crease that ends on the edge, and the mouth of each dart on it. `features` are those
    that count, all when left out; what lies on a strip takes nothing of the part.
    """
    sides = shape.outline.edge(edge)
    total = 0.0
    for one in shape.features.values():
        if (features is not None and one.name not in features) or one.feature.on is not None:
            continue
        if isinstance(one.feature, Dart) and one.feature.edge == edge:
            total += one.size[0]
        elif isinstance(one.feature, Pleat):
            outer = [path for role, path in one.marks if role == "pleat outer"]
            total += 2 * one.size[0] * sum(_ends_on(path, sides) for path in outer)
    return total


def _ends_on(path: Path, sides: tuple[Segment, ...]) -> bool:
    return any(distance_point_segment(end, side) <= _ON_EDGE for end in (path.start, path.end) for side in sides)


def finished_edge(shape: PartShape, edge: str, features: Collection[str] | None = None) -> float:
    """Length of an edge once its pleats and darts are made, mm."""
    return sum(side.length for side in shape.outline.edge(edge)) - taken_at(shape, edge, features)
