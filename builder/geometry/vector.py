"""Points and directions in the plane, and the one fault of this room.

x runs right, y runs UP, lengths in mm, angles in degrees counter-clockwise. Only arithmetic on pairs of
floats: no segments, no outlines, no rounding for show.
"""

from __future__ import annotations

import math

Point = tuple[float, float]

# Two points nearer than this are one point: a ten-thousandth of a micrometre, far under any cutter and far
# over the rounding of floats at the size of a cutting table.
TOUCH = 1e-7


class GeometryFault(ValueError):
    """A shape can't be built as asked.

    message : what is wrong, a full sentence with the coordinates
    at      : the point it happens at, mm, or None where no single point is to blame
    """

    def __init__(self, message: str, at: Point | None = None) -> None:
        super().__init__(message)
        self.message = message
        self.at = at


def said(point: Point) -> str:
    """The point as words for a message, rounded to 0.001 mm: `(12.5, 40)`."""
    x, y = (round(value, 3) + 0.0 for value in point)
    return f"({x:.10g}, {y:.10g})"


def add(a: Point, b: Point) -> Point:
    """a + b."""
    return a[0] + b[0], a[1] + b[1]


def sub(a: Point, b: Point) -> Point:
    """a − b: the way from b to a."""
    return a[0] - b[0], a[1] - b[1]


def scale(a: Point, factor: float) -> Point:
    """a stretched by the factor."""
    return a[0] * factor, a[1] * factor


def dot(a: Point, b: Point) -> float:
    """a · b, mm²."""
    return a[0] * b[0] + a[1] * b[1]


def cross(a: Point, b: Point) -> float:
    """a × b, mm²: positive when b points to the left of a."""
    return a[0] * b[1] - a[1] * b[0]


def length(a: Point) -> float:
    """Length of the vector, mm."""
    return math.hypot(a[0], a[1])


def distance(a: Point, b: Point) -> float:
    """Distance of two points, mm."""
    return math.hypot(a[0] - b[0], a[1] - b[1])


def unit(a: Point) -> Point:
    """The direction of a, length 1. GeometryFault for a vector without length."""
    size = length(a)
    if not size > 0:
        raise GeometryFault("A vector of no length has no direction.")
    return a[0] / size, a[1] / size


def left(a: Point) -> Point:
    """a turned a quarter to the left (counter-clockwise)."""
    return -a[1], a[0]


def lerp(a: Point, b: Point, share: float) -> Point:
    """The point at `share` of the way from a (0) to b (1); the ends come out exactly."""
    if share == 1:
        return b
    return a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share


def rotate(a: Point, turn_deg: float) -> Point:
    """a turned about the origin by degrees counter-clockwise; quarter turns are exact."""
    quarters, rest = divmod(turn_deg, 90)
    if rest == 0:
        # sin(180°) of a float isn't 0, and a panel turned over twice must come back to the same numbers.
        x, y = a
        return ((x, y), (-y, x), (-x, -y), (y, -x))[int(quarters) % 4]
    cos, sin = math.cos(math.radians(turn_deg)), math.sin(math.radians(turn_deg))
    return a[0] * cos - a[1] * sin, a[0] * sin + a[1] * cos


def angle_deg(a: Point) -> float:
    """Direction of a in degrees from the x axis, over −180 up to 180."""
    return math.degrees(math.atan2(a[1], a[0]))


def turn_deg(a: Point, b: Point) -> float:
    """Turn from direction a to direction b, −180 to 180, left is positive; straight back counts as +180."""
    turn = math.degrees(math.atan2(cross(a, b), dot(a, b)))
    return 180.0 if turn <= -180 + 1e-9 else turn
