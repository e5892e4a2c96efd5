"""Strokes of pleats, darts, zips and elastic: their lines by role, as pattern makers draw them."""

from __future__ import annotations

from collections.abc import Iterator

from builder.geometry import Arc, FeatureShape, Path, Placing, Point
from builder.view.figure import Stroke

SHAPING = ("pleat", "dart", "zip", "elastic")
"""Kinds drawn here."""
WHOLE = ("pleat arrow", "dart arrow", "zip slider", "zip stop")
"""Roles a detail's window shows whole or not at all."""

_DRILL_MM = 1.0


def shaping_strokes(feature: FeatureShape, when: str, placing: Placing, stitch: str, pitch: float) -> Iterator[Stroke]:
    """Strokes of one feature: the cloth it takes, or the band it covers, below its lines."""
    taking = feature.kind in ("pleat", "dart")
    for region in feature.regions:
        role, fill = ("taken", "taken") if taking else (f"{feature.kind} tape", "strip")
        yield Stroke(role, when, placing.outline(region).segments, closed=True, fill=fill)
    if feature.kind == "dart":
        for path in feature.paths:
            yield Stroke("seam", when, placing.path(path).runs, stitch=stitch, pitch=pitch)
        for point in feature.points:
            # The mark is made when the part is cut.
            yield Stroke("drill hole", "earlier", placing.path(_circle(point, _DRILL_MM / 2)).runs, closed=True)
    for role, path in feature.marks:
        yield Stroke(role, when, placing.path(path).runs, width=feature.size[0])


def _circle(centre: Point, radius: float) -> Path:
    x, y = centre
    east, west = (x + radius, y), (x - radius, y)
    return Path((Arc(east, west, centre, False), Arc(west, east, centre, False)))
