"""Where a part lies on another: turned over or not, turned, moved. A rigid motion: no size ever changes."""

from __future__ import annotations

from dataclasses import dataclass

from builder.geometry.outline import Outline, turned_round
from builder.geometry.path import Path
from builder.geometry.segment import Arc, Line, Segment
from builder.geometry.vector import Point, add, rotate, scale


@dataclass(frozen=True, slots=True)
class Placing:
    """First turned over if `flipped`, then turned about the origin, then moved.

    x, y     : the move, mm
    turn_deg : the turn, degrees counter-clockwise
    flipped  : mirrored about the vertical axis (x → −x), as a part is turned over sideways like a page
    """

    x: float = 0.0
    y: float = 0.0
    turn_deg: float = 0.0
    flipped: bool = False

    def point(self, point: Point) -> Point:
        """The point after the motion."""
        flat = (-point[0], point[1]) if self.flipped else point
        return add(rotate(flat, self.turn_deg), (self.x, self.y))

    def segment(self, segment: Segment) -> Segment:
        """The segment after the motion, travelled the same way; turning over swaps the sense of an arc."""
        start, end = self.point(segment.start), self.point(segment.end)
        if isinstance(segment, Line):
            return Line(start, end)
        return Arc(start, end, self.point(segment.centre), segment.clockwise != self.flipped)

    def path(self, path: Path) -> Path:
        """The path after the motion, in the same sewing order."""
        return Path(tuple(self.segment(run) for run in path.runs))

    def outline(self, outline: Outline) -> Outline:
        """The outline after the motion, counter-clockwise again. An edge keeps its name wherever it lies."""
        moved = Outline(tuple(self.segment(segment) for segment in outline.segments), outline.edges)
        return turned_round(moved) if self.flipped else moved

    def then(self, outer: Placing) -> Placing:
        """This motion, followed by the outer one, as one motion."""
        # Mirroring turns a turn round: F·R(θ) = R(−θ)·F.
        turn = -self.turn_deg if outer.flipped else self.turn_deg
        x, y = outer.point((self.x, self.y))
        return Placing(x, y, (outer.turn_deg + turn) % 360, self.flipped != outer.flipped)

    def inverse(self) -> Placing:
        """The motion that undoes this one."""
        back = Placing(turn_deg=self.turn_deg if self.flipped else -self.turn_deg, flipped=self.flipped)
        x, y = scale(back.point((self.x, self.y)), -1)
        return Placing(x, y, back.turn_deg, back.flipped)


IN_PLACE = Placing()
"""The motion that moves nothing."""


def compose(outer: Placing, inner: Placing) -> Placing:
    """The inner motion followed by the outer one."""
    return inner.then(outer)
