"""Pieces laid out on the sheet they are cut from, and which of them overlap.

x runs across the roll, y along it. Overlaps are looked for among neighbours of a grid only, and pairs that lie alike
are compared once, so a sheet of a thousand pieces is as quick as a dozen.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property
from itertools import chain, pairwise

from builder.errors import TextFault
from builder.geometry.measure import boxes_meet, segments_cross
from builder.geometry.outline import Outline
from builder.geometry.placing import Placing
from builder.geometry.segment import Bounds
from builder.geometry.shape import PartShape
from builder.geometry.vector import Point, add, left, scale, sub
from builder.model import Expression, Nest, NestPiece, Quantity, Values, nest_length

MOST_PIECES = 2000
"""Pieces beyond so many are counted, not laid out."""
TOUCH_MM = 0.05
"""Pieces that reach into each other by less only touch: a cutter's kerf is wider."""
_SAME_MM = 1e-4


@dataclass(frozen=True, slots=True)
class NestFault:
    """Why a nest can't be laid out; `path` leads to it in the nest."""

    path: tuple[str | int, ...]
    message: str


@dataclass(frozen=True, slots=True)
class NestedPiece:
    """One piece on the sheet: of which entry of the nest, how its part lies, and its outline there."""

    group: int
    part: str
    placing: Placing
    outline: Outline


@dataclass(frozen=True)
class NestLayout:
    """A sheet with its pieces, in one size.

    width, length : across the roll and along it, mm; a length nobody typed is a whole one
    margin        : left free along the edges, mm
    counts        : pieces asked for, for each entry of the nest
    """

    width: float
    length: float
    margin: float
    pieces: tuple[NestedPiece, ...]
    counts: tuple[int, ...]

    @cached_property
    def used(self) -> float:
        """Area of the goods that becomes pieces, as a share of the sheet."""
        by_group = {one.group: one.outline.area() for one in self.pieces}
        return sum(area * self.counts[group] for group, area in by_group.items()) / (self.width * self.length)

    def outside(self) -> NestedPiece | None:
        """The first piece that isn't wholly between the margins."""
        low, across, along = self.margin - TOUCH_MM, self.width - self.margin, self.length - self.margin
        for one in self.pieces:
            x0, y0, x1, y1 = one.outline.bounds()
            if x0 < low or y0 < low or x1 > across + TOUCH_MM or y1 > along + TOUCH_MM:
                return one
        return None

    def overlaps(self) -> Iterator[tuple[int, int, Point]]:
        """For each two entries of the nest with pieces that overlap: numbers of the first two, and a point of both."""
        found: set[tuple[int, int]] = set()
        compared: dict[tuple[object, ...], Point | None] = {}
        for first, second in _neighbours(self.pieces):
            a, b = self.pieces[first], self.pieces[second]
            if (a.group, b.group) in found:
                continue
            key = (a.group, b.group, *(round(one / _SAME_MM) for one in sub(_origin(b), _origin(a))))
            if key not in compared:
                spot = _common(a.outline, b.outline)
                compared[key] = sub(spot, _origin(a)) if spot is not None else None
            at = compared[key]
            if at is not None:
                found.add((a.group, b.group))
                yield first, second, add(_origin(a), at)


def lay_out_nest(
    nest: Nest,
    bases: tuple[str, ...],
    values: Values,
    shape_of: Callable[[str], PartShape | None],
    goods_width: Quantity | None,
) -> NestLayout | NestFault | None:
    """The nest in the size of `values`; None when a part's shape can't be built.

    bases       : parts whose dimensions the nest's expressions may name
    goods_width : of the material cut, for a sheet whose width nobody typed
    """
    try:
        return _Layer(nest, bases, values, goods_width).laid(shape_of)
    except _Impossible as fault:
        return NestFault(fault.path, fault.message)


class _Impossible(Exception):
    """Ends the laying out."""

    def __init__(self, path: tuple[str | int, ...], message: str) -> None:
        super().__init__(message)
        self.path, self.message = path, message


@dataclass(slots=True)
class _Layer:
    """Lays out one nest. `top`: upper edge of what lies there so far."""

    nest: Nest
    bases: tuple[str, ...]
    values: Values
    goods_width: Quantity | None
    top: float = 0.0

    def mm(self, typed: Quantity | Expression | None, default: float, *path: str | int) -> float:
        if typed is None:
            return default
        try:
            return float(nest_length(typed, self.bases, self.values).value)
        except TextFault as fault:
            raise _Impossible(path, fault.message) from None
        except KeyError as missing:
            raise _Impossible(path, f"{missing.args[0]} has no value") from None

    def laid(self, shape_of: Callable[[str], PartShape | None]) -> NestLayout | None:
        nest = self.nest
        margin = self.mm(nest.margin, 0.0, "margin")
        gap = self.mm(nest.gap, 0.0, "gap")
        width = self.width()
        self.top = margin - gap
        pieces: list[NestedPiece] = []
        counts: list[int] = []
        for number, one in enumerate(nest.pieces):
            shape = shape_of(one.part)
            if shape is None:
                return None
            found, count = self.rows(number, one, shape.outline, width - margin, (margin, gap))
            pieces += found[: MOST_PIECES - len(pieces)]
            counts.append(count)
        length = (
            self.mm(nest.sheet[-1], 0.0, "sheet", len(nest.sheet) - 1)
            if nest.sheet
            else math.ceil(self.top + margin - TOUCH_MM)
        )
        if not length > 0:
            raise _Impossible(("sheet",), "a sheet must be longer than 0")
        return NestLayout(width, length, margin, tuple(pieces), tuple(counts))

    def width(self) -> float:
        typed = self.nest.sheet[0] if len(self.nest.sheet) == 2 else self.goods_width
        width = self.mm(typed, 0.0, "sheet", 0)
        if not width > 0:
            raise _Impossible((), "nobody says how wide the sheet is: neither `sheet:` nor the material's `width:`")
        return width

    def rows(
        self, number: int, one: NestPiece, outline: Outline, right: float, free: tuple[float, float]
    ) -> tuple[list[NestedPiece], int]:
        """The pieces of one entry, and how many are asked for."""
        margin, gap = free
        path = ("pieces", number)
        lying = Placing(0.0, 0.0, float(one.turn.value) if one.turn is not None else 0.0, one.side == "wrong")
        box = lying.outline(outline).bounds()
        wide, tall = box[2] - box[0], box[3] - box[1]
        x = self.mm(one.at.left if one.at else None, margin, *path, "at", "left")
        y = self.mm(one.at.bottom if one.at else None, self.top + gap, *path, "at", "bottom")
        pitch = self.mm(one.pitch, wide + gap, *path, "pitch")
        row_pitch = self.mm(one.row_pitch, tall + gap, *path, "row pitch")
        fitting = 1 + math.floor((right + TOUCH_MM - x - wide) / pitch) if pitch > 0 else 1
        columns = one.columns or max(1, fitting)
        count = one.count or columns * (one.rows or 1)
        self.top = max(self.top, y + tall + row_pitch * ((count - 1) // columns))
        found = []
        for place in range(min(count, MOST_PIECES)):
            row, column = divmod(place, columns)
            at = Placing(x + column * pitch - box[0], y + row * row_pitch - box[1], lying.turn_deg, lying.flipped)
            found.append(NestedPiece(number, one.part, at, at.outline(outline)))
        return found, count


def _origin(one: NestedPiece) -> Point:
    return one.placing.x, one.placing.y


def _neighbours(pieces: Sequence[NestedPiece]) -> Iterator[tuple[int, int]]:
    """Numbers of pieces whose boxes meet, each pair once, by a grid of cells as large as a middling piece."""
    boxes = [one.outline.bounds() for one in pieces]
    if not boxes:
        return
    sides = sorted(max(x1 - x0, y1 - y0) for x0, y0, x1, y1 in boxes)
    cell = max(sides[len(sides) // 2], sides[-1] / 50)
    grid: dict[tuple[int, int], list[int]] = {}
    for number, box in enumerate(boxes):
        near: set[int] = set()
        for key in _cells(box, cell):
            near.update(grid.setdefault(key, []))
            grid[key].append(number)
        yield from ((other, number) for other in sorted(near) if boxes_meet(boxes[other], box))


def _cells(box: Bounds, cell: float) -> Iterator[tuple[int, int]]:
    x0, y0, x1, y1 = (math.floor(one / cell) for one in box)
    yield from ((x, y) for x in range(x0, x1 + 1) for y in range(y0, y1 + 1))


def _common(a: Outline, b: Outline) -> Point | None:
    """A point inside both, deeper than a touch; None where they only touch or lie apart."""
    return next(chain(_points_in(a, b), _points_in(b, a)), None)


def _points_in(one: Outline, other: Outline) -> Iterator[Point]:
    """Points just inside one outline that lie within the other."""
    within = other.bounds()
    for segment, box in one.boxes:
        if not boxes_meet(box, within):
            continue
        shares = {0.0, 1.0}
        for across, around in other.boxes:
            if boxes_meet(box, around):
                shares.update(share for p in segments_cross(segment, across) if 0 < (share := segment.share_of(p)) < 1)
        for first, last in pairwise(sorted(shares)):
            if (last - first) * segment.length > TOUCH_MM:
                middle = (first + last) / 2
                # An outline runs counter-clockwise: its inside lies to the left.
                inward = scale(left(segment.tangent_at(middle)), TOUCH_MM)
                point = add(segment.point_at(middle), inward)
                if other.contains(point) and other.distance_to_boundary(point) > TOUCH_MM / 10:
                    yield point
