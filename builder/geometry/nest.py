"""Pieces laid on a sheet: where each lies, which come too near to each other or to the edge, how much they cover.

Looked at from left to right, so that only pieces beside each other are compared.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from builder.geometry.measure import segments_cross
from builder.geometry.outline import Outline
from builder.geometry.placing import Placing
from builder.geometry.segment import Bounds
from builder.geometry.shape import PartShape
from builder.geometry.vector import GeometryFault, Point, add, left, scale
from builder.model import NestPieces

_TOUCH_MM = 1e-6
_NEAR_MM = 0.05


@dataclass(frozen=True, slots=True)
class LaidPiece:
    """A piece on the sheet. entry : the place of its line in the nest; number : its place in rows and columns."""

    entry: int
    number: int
    part: str
    outline: Outline


def laid_pieces(entry: int, typed: NestPieces, shape: PartShape) -> Iterator[LaidPiece]:
    """All pieces of one line of a nest, row by row. Raises GeometryFault for rows or columns without their pitch."""
    pitch, row_pitch = (float(one.value) if one is not None else 0.0 for one in (typed.pitch, typed.row_pitch))
    if (typed.columns > 1 and pitch <= 0) or (typed.rows > 1 and row_pitch <= 0):
        raise GeometryFault(f"{typed.part} lies in rows or columns without a pitch")
    turn = float(typed.turn.value) if typed.turn is not None else 0.0
    turned = Placing(0.0, 0.0, turn, typed.side == "wrong").outline(shape.outline)
    box = turned.bounds()
    x0, y0 = float(typed.left.value) - box[0], float(typed.bottom.value) - box[1]
    for number in range(typed.columns * typed.rows):
        row, column = divmod(number, typed.columns)
        placing = Placing(x0 + column * pitch, y0 + row * row_pitch, 0.0, False)
        yield LaidPiece(entry, number, typed.part, placing.outline(turned))


def too_near(pieces: Sequence[LaidPiece], gap: float) -> Iterator[tuple[LaidPiece, LaidPiece]]:
    """Pairs that overlap, or lie nearer to each other than the gap [mm]."""
    boxed = sorted(((one.outline.bounds(), one) for one in pieces), key=lambda pair: pair[0][0])
    open_: list[tuple[Bounds, LaidPiece]] = []
    for box, piece in boxed:
        open_ = [pair for pair in open_ if pair[0][2] + gap > box[0]]
        for other, before in open_:
            if other[1] - gap < box[3] and box[1] - gap < other[3] and _near(before.outline, piece.outline, gap):
                yield before, piece
        open_.append((box, piece))


def _near(a: Outline, b: Outline, gap: float) -> bool:
    if a.contains(b.segments[0].start, -_TOUCH_MM) or b.contains(a.segments[0].start, -_TOUCH_MM):
        return True
    if any(segments_cross(one, other) for one in a.segments for other in b.segments):
        # Pieces cut with one common line touch, and may where no gap is asked for.
        return gap > 0 or _over(a, b)
    return gap > 0 and min(_distance(a, b), _distance(b, a)) < gap - _TOUCH_MM


def _over(a: Outline, b: Outline) -> bool:
    """Does the goods' side of one's boundary, between the places where it crosses the other's, lie in the other?"""
    return any(_inside(point, b) for point in _stretches(a, b)) or any(_inside(point, a) for point in _stretches(b, a))


def _stretches(outline: Outline, other: Outline) -> Iterator[Point]:
    """A point just inside the middle of each stretch of a boundary between two crossings."""
    for segment in outline.segments:
        crossings = (point for edge in other.segments for point in segments_cross(segment, edge))
        shares = sorted({0.0, 1.0, *(min(max(segment.share_of(point), 0.0), 1.0) for point in crossings)})
        for first, last in pairwise(shares):
            share = (first + last) / 2
            inward = scale(left(segment.tangent_at(share)), 2 * _NEAR_MM)
            yield add(segment.point_at(share), inward)


def _inside(point: Point, outline: Outline) -> bool:
    return outline.contains(point) and outline.distance_to_boundary(point) > _NEAR_MM


def _distance(a: Outline, b: Outline) -> float:
    return min(b.distance_to_boundary(segment.point_at(share)) for segment in a.segments for share in (0.0, 0.5))


def beyond_sheet(pieces: Sequence[LaidPiece], length: float, width: float, gap: float) -> Iterator[LaidPiece]:
    """Pieces that leave the sheet, or come nearer to its edge than the gap. All in mm."""
    for piece in pieces:
        x0, y0, right, top = piece.outline.bounds()
        if min(x0, y0) < gap - _TOUCH_MM or right > length - gap + _TOUCH_MM or top > width - gap + _TOUCH_MM:
            yield piece


def covered_share(pieces: Sequence[LaidPiece], length: float, width: float) -> float:
    """Share of the sheet that the pieces cover, 0 to 1: Σ area / (length · width)."""
    return sum(one.outline.area() for one in pieces) / (length * width)
