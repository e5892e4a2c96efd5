"""Typed outlines to shapes: the cut edge, the seam line where the part has an allowance, and its centre line.

Reads typed lengths; the mathematics is in corners.py (arcs, halves), allowance.py (the second line) and
contours.py (drawings).
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Protocol

from builder.geometry.allowance import moved_out
from builder.geometry.contours import outline_of
from builder.geometry.corners import Spot, ring_of, whole_of_half
from builder.geometry.edge_names import with_edges
from builder.geometry.outline import Outline, rectangle
from builder.geometry.placing import Placing
from builder.geometry.segment import Bounds, Line
from builder.geometry.vector import GeometryFault, Point
from builder.model import ALL, At, Expression, Quantity
from builder.model import Corner as TypedCorner
from builder.model import Outline as TypedOutline
from builder.reading import DrawingLines


class Lengths(Protocol):
    """Reads typed lengths and places, and what is drawn of the part; the part builder is one.

    drawn : raises KeyError when the drawing can't be used, which is reported elsewhere
    """

    def mm(self, typed: Quantity | Expression | None, default: float = 0.0, short: str = "") -> float: ...

    def corner(self, at: At | None, box: Bounds, size: tuple[float, float], owner: str) -> Point: ...

    def drawn(self) -> DrawingLines: ...


@dataclass(frozen=True, slots=True)
class Cut:
    """The lines of a piece: its cut edge, its seam line if it has an allowance, its centre line if it was mirrored.

    typed_seam : the line whose sizes are typed is the seam line
    drawn      : a hash of the drawing's lines, '' for an outline that isn't drawn
    """

    edge: Outline
    seam_line: Outline | None = None
    centre_line: Line | None = None
    typed_seam: bool = False
    drawn: str = ""


def cut_of(typed: TypedOutline, lengths: Lengths) -> Cut:
    """The lines of a typed outline. GeometryFault when they can't be built, KeyError for a length without a value."""
    outline, centre = _typed_line(typed, lengths)
    drawn = lengths.drawn().digest if typed.drawing is not None else ""
    if not typed.allowance:
        return Cut(outline, None, centre, drawn=drawn)
    unknown = [name for name in typed.allowance if name != ALL and name not in outline.edges]
    if unknown:
        raise GeometryFault(f"No edge is called {unknown[0]} for an allowance; edges: {', '.join(outline.edges)}.")
    out = _allowances(typed, lengths)
    if typed.typed == "seam line":
        return Cut(moved_out(outline, out), outline, centre, True, drawn)
    return Cut(outline, moved_out(outline, lambda name: -out(name)), centre, drawn=drawn)


def _allowances(typed: TypedOutline, lengths: Lengths) -> Callable[[str | None], float]:
    """The allowance of each edge, mm."""
    by_name: Mapping[str, float] = {
        edge: lengths.mm(value, short="allowance" if edge == ALL else f"allowance.{edge}")
        for edge, value in typed.allowance.items()
    }

    def of(edge: str | None) -> float:
        return by_name.get(edge or ALL, by_name.get(ALL, 0.0))

    return of


def _typed_line(typed: TypedOutline, lengths: Lengths) -> tuple[Outline, Line | None]:
    if typed.rectangle is not None:
        one = typed.rectangle
        corner = lengths.mm(one.corner, short="corner")
        return rectangle(lengths.mm(one.width, short="width"), lengths.mm(one.height, short="height"), corner), None
    if typed.strip is not None:
        return rectangle(lengths.mm(typed.strip.length, short="length"), lengths.mm(None, short="width")), None
    if typed.drawing is not None:
        return _drawn(typed, lengths), None
    spots = [_spot(corner, number, lengths) for number, corner in enumerate(typed.corners, start=1)]
    if typed.half is not None:
        around, centre = whole_of_half(spots)
        return ring_of(around), centre
    return ring_of(spots), None


def _drawn(typed: TypedOutline, lengths: Lengths) -> Outline:
    """The outline of a drawing, the lower left corner of its box moved to the origin, its edges named."""
    outline = outline_of(lengths.drawn().pieces)
    left, bottom, _, _ = outline.bounds()
    outline = Placing(-left, -bottom).outline(outline)
    box = outline.bounds()
    places = {name: lengths.corner(at, box, (0.0, 0.0), f"{name}-edge") for name, at in typed.edges.items()}
    return with_edges(outline, places)


def _spot(corner: TypedCorner, number: int, lengths: Lengths) -> Spot:
    def mm(name: str) -> float:
        return lengths.mm(getattr(corner, name), short=f"corner-{number}.{name}")

    return Spot(
        (mm("x"), mm("y")),
        mm("corner"),
        corner.edge,
        mm("radius") if corner.radius is not None else None,
        mm("bow") if corner.bow is not None else None,
    )
