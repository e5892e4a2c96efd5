"""Features to strokes: what is drawn of each, and when it was made."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from builder.geometry import Arc, FeatureShape, Path, Placing, Point, Segment, bartack_zigzag, piece_turn, polyline
from builder.model import Bartack, Hardware, Notch, PlantModel, Seam, SewnTag
from builder.view.figure import Stroke
from builder.view.strokes_shaping import SHAPING, shaping_strokes

STITCHED = frozenset({"seam", "box", "bartack", "dart"})
"""Kinds that go through the goods and show on both sides."""
THROUGH = STITCHED | {"hole", "drill hole", "slot", "notch", "fold", "hardware", "pleat"}
LAID_ON = ("strip", "tag", "zip", "elastic")
"""Kinds that lie on one side and are drawn below all others."""


def feature_strokes(
    feature: FeatureShape, when: str, placing: Placing, stitch: str, pitch: float, numbered: bool, hardware: str = ""
) -> Iterator[Stroke]:
    """Strokes of one feature, moved to where its part lies; `numbered` gives runs sewn now their order numbers.

    hardware : what hardware looks like: eyelet, snap, rivet, buckle; '' round
    """
    if feature.kind == "hardware":
        yield from _hardware(feature, when, placing, hardware)
        return
    if feature.kind in SHAPING:
        yield from shaping_strokes(feature, when, placing, stitch, pitch)
        return
    draw = _DRAWN[feature.kind]
    yield from draw(feature, when, placing, (stitch, pitch, numbered))


Look = tuple[str, float, bool]


def _notch(feature: FeatureShape, when: str, placing: Placing, look: Look) -> Iterator[Stroke]:
    spec = feature.feature
    cut = spec.cut if isinstance(spec, Notch) and spec.cut != "v" else ""
    for path in feature.paths:
        yield Stroke("notch", when, placing.path(path).runs, fill=cut)


def _holes(feature: FeatureShape, when: str, placing: Placing, look: Look) -> Iterator[Stroke]:
    for point in feature.points:
        yield Stroke(feature.kind, when, placing.path(circle(point, feature.size[0] / 2)).runs, closed=True)


def _slots(feature: FeatureShape, when: str, placing: Placing, look: Look) -> Iterator[Stroke]:
    for region in feature.regions:
        yield Stroke("slot", when, placing.outline(region).segments, closed=True)


def _hardware(feature: FeatureShape, when: str, placing: Placing, kind: str) -> Iterator[Stroke]:
    diameter, inner = feature.size
    for region in feature.regions:
        yield Stroke("hardware", when, placing.outline(region).segments, closed=True, fill=kind)
    for point in () if feature.regions else feature.points:
        path = placing.path(circle(point, diameter / 2)).runs
        yield Stroke("hardware", when, path, closed=True, fill=kind, width=inner)


def hardware_look(model: PlantModel, feature: FeatureShape) -> str:
    """What a piece of hardware looks like: as typed for it, else as its material says; '' for what is just round."""
    spec = feature.feature
    if not isinstance(spec, Hardware):
        return ""
    material = model.materials.get(spec.hardware)
    look = spec.look or (material.look if material is not None else None) or "round"
    return "" if look == "round" else look


def _tag(feature: FeatureShape, when: str, placing: Placing, look: Look) -> Iterator[Stroke]:
    spec = feature.feature
    words = spec.text or "" if isinstance(spec, SewnTag) else ""
    for region in feature.regions:
        yield Stroke("tag", when, placing.outline(region).segments, closed=True, fill="strip", text=words)
    for path in feature.paths:
        yield Stroke("tag fold", when, placing.path(path).runs)


def _strip(feature: FeatureShape, when: str, placing: Placing, look: Look) -> Iterator[Stroke]:
    for region in feature.regions:
        yield Stroke("strip", when, placing.outline(region).segments, closed=True, fill="strip")
    for path in feature.paths:
        yield Stroke("fold", when, placing.path(path).runs)


def _seam(feature: FeatureShape, when: str, placing: Placing, look: Look) -> Iterator[Stroke]:
    stitch, pitch, _ = look
    spec = feature.feature
    role = "binding" if isinstance(spec, Seam) and spec.binding is not None else "seam"
    for path in feature.paths:
        yield Stroke(role, when, placing.path(path).runs, closed=path.closed, stitch=stitch, pitch=pitch)


def _box(feature: FeatureShape, when: str, placing: Placing, look: Look) -> Iterator[Stroke]:
    stitch, pitch, numbered = look
    for path in feature.paths:
        drawn = placing.path(path).distinct()
        numbers = tuple("·".join(map(str, orders)) for _, orders in drawn) if numbered and when == "now" else ()
        yield Stroke("box", when, tuple(run for run, _ in drawn), stitch=stitch, pitch=pitch, numbers=numbers)


def _bartack(feature: FeatureShape, when: str, placing: Placing, look: Look) -> Iterator[Stroke]:
    spec = feature.feature
    assert isinstance(spec, Bartack)
    length, width = feature.size
    zigzag = bartack_zigzag(length, width, spec.bartack)
    turn = piece_turn(spec)
    for point in feature.points:
        centred = Placing(-length / 2, 0.0, 0.0, False)
        place = centred.then(Placing(0.0, 0.0, turn, False)).then(Placing(point[0], point[1], 0.0, False))
        yield Stroke("bartack", when, placing.path(place.path(polyline(zigzag))).runs)


def _fold(feature: FeatureShape, when: str, placing: Placing, look: Look) -> Iterator[Stroke]:
    for path in feature.paths:
        yield Stroke("fold", when, placing.path(path).runs)


_DRAWN: dict[str, Callable[[FeatureShape, str, Placing, Look], Iterator[Stroke]]] = {
    "notch": _notch,
    "hole": _holes,
    "drill hole": _holes,
    "slot": _slots,
    "tag": _tag,
    "strip": _strip,
    "seam": _seam,
    "box": _box,
    "bartack": _bartack,
    "fold": _fold,
}


def circle(centre: Point, radius: float) -> Path:
    """A full circle, counter-clockwise, as two half arcs."""
    x, y = centre
    east, west = (x + radius, y), (x - radius, y)
    return Path((Arc(east, west, centre, False), Arc(west, east, centre, False)))


def worked_route(feature: FeatureShape, placing: Placing) -> tuple[Segment, ...]:
    """The path sewn, in order with repeats. Only sewing has a start and a direction; a fold is made at once."""
    if feature.kind not in ("seam", "box", "dart"):
        return ()
    return tuple(run for path in feature.paths for run in placing.path(path).runs)
