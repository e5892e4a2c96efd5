"""Where a label lies: caught in an edge, or laid on."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Protocol

from builder.geometry.arrays import degrees
from builder.geometry.outline import Outline, rectangle
from builder.geometry.path import Path
from builder.geometry.placing import Placing
from builder.geometry.shape import FeatureShape
from builder.geometry.vector import GeometryFault, Point, add, angle_deg, left, scale
from builder.model import Expression, Quantity, SewnTag


class Reads(Protocol):
    """Reads typed lengths in mm."""

    def mm(self, typed: Quantity | Expression | None, default: float = 0.0, short: str = "") -> float: ...


def tag_size(name: str, tag: SewnTag, lengths: Reads) -> tuple[float, float]:
    """Width and height as placed, mm."""
    return lengths.mm(tag.width, short=f"{name}.width"), lengths.mm(tag.height, short=f"{name}.height")


def laid_on(name: str, tag: SewnTag, corner: Point, lengths: Reads) -> FeatureShape:
    """A label laid on; `corner` is the lower left corner of its box after it is turned."""
    width, height = tag_size(name, tag, lengths)
    turn = degrees(tag.turn)
    box = Placing(turn_deg=turn).outline(rectangle(width, height)).bounds()
    placing = Placing(corner[0] - box[0], corner[1] - box[1], turn)
    return _shape(name, tag, placing, (width, height))


def turned_size(name: str, tag: SewnTag, lengths: Reads) -> tuple[float, float]:
    """Size of the box a label laid on takes after it is turned."""
    width, height = tag_size(name, tag, lengths)
    box = Placing(turn_deg=degrees(tag.turn)).outline(rectangle(width, height)).bounds()
    return box[2] - box[0], box[3] - box[1]


def caught(name: str, tag: SewnTag, at: Point, along: Point, lengths: Reads) -> FeatureShape:
    """A label whose ends are caught in an edge at a place, `along` its direction there (goods to its left).

    It lies inward, its caught ends on the edge, moved out by its overhang. Raises GeometryFault where none is caught.
    """
    width, height = tag_size(name, tag, lengths)
    overhang = lengths.mm(tag.overhang, 0.0, f"{name}.overhang")
    if overhang >= height:
        raise GeometryFault(f"{name} stands out by its whole height: the seam of edge {tag.in_} doesn't catch it")
    inward = left(along)
    start = add(add(at, scale(along, -width / 2)), scale(inward, -overhang))
    outward = overhang > height / 2
    return _shape(name, tag, Placing(start[0], start[1], angle_deg(along)), (width, height), outward)


def _shape(name: str, tag: SewnTag, placing: Placing, size: tuple[float, float], outward: bool = False) -> FeatureShape:
    outline = placing.outline(rectangle(*size))
    return FeatureShape(name, "tag", tag, tuple(_folds(tag, outline, outward)), (outline,), (), size)


def _folds(tag: SewnTag, outline: Outline, outward: bool) -> Iterator[Path]:
    """Its folded sides. A loop's fold is the side farther from the edge that catches it."""
    sides = {"centre": ("bottom" if outward else "top",), "ends": ("left", "right"), "none": ()}[tag.folded]
    for side in sides:
        yield Path(outline.edge(side))
