"""Round, long and repeated features: where the pieces of a row or grid lie, and what each covers.

Not here: what kind of feature asks for what (features.py), labels (sewn_tag.py), notches (notch.py).
"""

from __future__ import annotations

import math
from typing import Protocol

from builder.geometry.outline import Outline, rectangle, ring
from builder.geometry.placing import Placing
from builder.geometry.segment import Arc, Line, Segment
from builder.geometry.shape import FeatureShape
from builder.geometry.vector import GeometryFault, Point, add, rotate, scale
from builder.model import Bartack, DrillHole, Expression, Hardware, Hole, Quantity, Row, Slot

ROUND_KINDS = frozenset({"hole", "drill hole", "hardware"})
"""Kinds of shapes whose pieces are discs, unless they have regions."""


class Reads(Protocol):
    """Reads typed lengths in mm."""

    def mm(self, typed: Quantity | Expression | None, default: float = 0.0, short: str = "") -> float: ...


def row_points(name: str, row: Row, first: Point, lengths: Reads) -> tuple[Point, ...]:
    """Places of all pieces, in working order. Raises GeometryFault where a pitch is missing."""
    pitch, row_pitch = lengths.mm(row.pitch, 0.0, f"{name}.pitch"), lengths.mm(row.row_pitch, 0.0, f"{name}.row-pitch")
    if row.count > 1 and pitch <= 0:
        raise GeometryFault(f"{name} is a row of {row.count} without a pitch")
    if row.rows > 1 and row_pitch == 0:
        raise GeometryFault(f"{name} is a grid of {row.rows} rows without a row pitch")
    stagger = lengths.mm(row.stagger, 0.0, f"{name}.stagger")
    along, aside = row_ways(row)
    found: list[Point] = []
    for number in range(row.rows):
        start = add(add(first, scale(aside, number * row_pitch)), scale(along, stagger if number % 2 else 0.0))
        points = [add(start, scale(along, step * pitch)) for step in range(row.count)]
        found += points[::-1] if number % 2 and row.order == "back and forth" else points
    return tuple(found)


def row_ways(row: Row) -> tuple[Point, Point]:
    """Unit vectors: along a row, and from row to row."""
    across, up = (1.0, 0.0), (0.0, 1.0)
    along, aside = (across, up) if row.direction == "across" else (up, across)
    turn = degrees(row.angle)
    return rotate(along, turn), rotate(aside, turn)


def first_of_row(feature: FeatureShape, number: int) -> Point:
    """Where a row of a grid begins, whichever way it is worked; below zero, counted from the last row."""
    row = feature.feature
    assert isinstance(row, Row)
    number %= row.rows
    backward = number % 2 and row.order == "back and forth"
    return feature.points[(number + 1) * row.count - 1 if backward else number * row.count]


def degrees(turn: Quantity | None) -> float:
    """A typed turn in degrees, 0 when there is none."""
    return float(turn.value) if turn is not None else 0.0


def round_shape(
    name: str, feature: Hole | DrillHole | Hardware, points: tuple[Point, ...], lengths: Reads
) -> FeatureShape:
    """Holes, drill holes and hardware. Hardware that isn't round has regions."""
    if isinstance(feature, Hole):
        return FeatureShape(
            name, "hole", feature, (), (), points, (lengths.mm(feature.hole, short=f"{name}.hole"), 0.0)
        )
    if isinstance(feature, DrillHole):
        size = lengths.mm(feature.drill_hole, short=f"{name}.drill-hole")
        return FeatureShape(name, "drill hole", feature, (), (), points, (size, 0.0))
    if feature.diameter is not None:
        diameter = lengths.mm(feature.diameter, short=f"{name}.diameter")
        inner = lengths.mm(feature.inner, 0.0, f"{name}.inner")
        if inner >= diameter:
            raise GeometryFault(f"{name} is open as wide as it is: its inner diameter is no less than its diameter")
        return FeatureShape(name, "hardware", feature, (), (), points, (diameter, inner))
    if feature.width is None or feature.height is None:
        raise GeometryFault(f"{name} has no size: type its diameter, or its width and height")
    width, height = lengths.mm(feature.width, short=f"{name}.width"), lengths.mm(feature.height, short=f"{name}.height")
    regions = tuple(_centred(rectangle(width, height), degrees(feature.turn), point) for point in points)
    return FeatureShape(name, "hardware", feature, (), regions, points, (width, height))


def slot_shape(name: str, feature: Slot, points: tuple[Point, ...], lengths: Reads) -> FeatureShape:
    """Slots: each has its outline as a region. Raises GeometryFault for one wider than long."""
    length, width = lengths.mm(feature.slot, short=f"{name}.slot"), lengths.mm(feature.width, short=f"{name}.width")
    if not 0 < width < length:
        raise GeometryFault(f"{name} is wider than long: `slot:` is its length, and the longer of the two")
    outline = rectangle(length, width) if feature.ends == "square" else _stadium(length, width)
    regions = tuple(_centred(outline, degrees(feature.turn), point) for point in points)
    return FeatureShape(name, "slot", feature, (), regions, points, (length, width))


def bartack_shape(name: str, feature: Bartack, points: tuple[Point, ...], lengths: Reads) -> FeatureShape:
    """Bartacks: each covers a rectangle."""
    length, width = lengths.mm(feature.length, short=f"{name}.length"), lengths.mm(feature.width, short=f"{name}.width")
    regions = tuple(_centred(rectangle(length, width), piece_turn(feature), point) for point in points)
    return FeatureShape(name, "bartack", feature, (), regions, points, (length, width))


def piece_turn(feature: Slot | Bartack | Hardware) -> float:
    """Degrees from across to the long side of a piece, counter-clockwise."""
    upright = 90.0 if isinstance(feature, Bartack) and feature.stands == "up" else 0.0
    return upright + degrees(feature.turn)


def _centred(outline: Outline, turn_deg: float, centre: Point) -> Outline:
    left, bottom, right, top = outline.bounds()
    middle = Placing(-(left + right) / 2, -(bottom + top) / 2)
    return middle.then(Placing(centre[0], centre[1], turn_deg)).outline(outline)


def _stadium(length: float, width: float) -> Outline:
    """Two half circles and what lies between them, its middle at the origin."""
    straight, radius = (length - width) / 2, width / 2
    right, left = (straight, 0.0), (-straight, 0.0)
    segments: tuple[Segment, ...] = (
        Line((-straight, -radius), (straight, -radius)),
        Arc((straight, -radius), (straight, radius), right, False),
        Line((straight, radius), (-straight, radius)),
        Arc((-straight, radius), (-straight, -radius), left, False),
    )
    return ring(segments)


def axis_of(feature: FeatureShape, number: int) -> tuple[Point, Point]:
    """The two ends of a piece along its length: a slot, a bartack. A round piece has both in its centre."""
    spec, centre = feature.feature, feature.points[number]
    if not isinstance(spec, Slot | Bartack):
        return centre, centre
    reach = rotate((feature.size[0] / 2, 0.0), piece_turn(spec))
    return add(centre, scale(reach, -1.0)), add(centre, reach)


def discs_of(feature: FeatureShape, number: int) -> tuple[tuple[Point, ...], float]:
    """Centres of equal discs that fill a piece, and their radius: one for a round piece, a chain for a long one.

    The corners of square ends are left out, 0.3 of the width each.
    """
    spec, centre = feature.feature, feature.points[number]
    if not isinstance(spec, Slot | Bartack):
        return (centre,), feature.size[0] / 2
    length, width = max(feature.size), min(feature.size)
    turn = piece_turn(spec) + (90.0 if feature.size[0] < feature.size[1] else 0.0)
    steps = max(math.ceil((length - width) / (width / 4)), 1)
    reach = (length - width) / 2
    ways = (rotate((reach * (2 * step / steps - 1), 0.0), turn) for step in range(steps + 1))
    return tuple(add(centre, way) for way in ways), width / 2
