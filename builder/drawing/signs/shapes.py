"""Outlines that several signs share, as path data: polygons, gears, arrows, flames.

Not the pictograms themselves: those stand by kind in the files beside this one.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

from builder.drawing.signs.pen import Point, number


def _pair(point: Point) -> str:
    return f"{number(point[0])} {number(point[1])}"


def on_circle(x: float, y: float, radius: float, degrees: float) -> Point:
    """The point of a circle at an angle: 0 is right, 90 is down."""
    a = math.radians(degrees)
    return x + radius * math.cos(a), y + radius * math.sin(a)


def polygon(*points: Point) -> str:
    """A closed polygon."""
    return "M" + "L".join(_pair(p) for p in points) + "Z"


def polyline(*points: Point) -> str:
    """An open line."""
    return "M" + "L".join(_pair(p) for p in points)


def circle(x: float, y: float, radius: float) -> str:
    """A circle as a path, for use as a hole."""
    left, right = _pair((x - radius, y)), _pair((x + radius, y))
    r = f"{number(radius)} {number(radius)}"
    return f"M{left}A{r} 0 1 1 {right}A{r} 0 1 1 {left}Z"


def block(left: float, top: float, right: float, bottom: float, radius: float = 0.0) -> str:
    """A rectangle by its edges, corners rounded."""
    return rounded([(left, top), (right, top), (right, bottom), (left, bottom)], radius)


def rounded(corners: Sequence[Point], radius: float) -> str:
    """A closed polygon whose corners are arcs; the radius shrinks where an edge is too short for it."""
    if radius <= 0:
        return polygon(*corners)
    pieces = [_corner(corners[i - 1], corners[i], corners[(i + 1) % len(corners)], radius) for i in range(len(corners))]
    first = pieces[0][0]
    body = "".join(f"L{_pair(a)}A{number(r)} {number(r)} 0 0 {sweep} {_pair(b)}" for a, b, r, sweep in pieces)
    return f"M{_pair(first)}{body}Z"


def _corner(before: Point, at: Point, after: Point, radius: float) -> tuple[Point, Point, float, int]:
    """Where the arc of one corner starts and ends, its radius, and which way it runs."""
    back, on = math.dist(before, at), math.dist(at, after)
    u = ((before[0] - at[0]) / back, (before[1] - at[1]) / back)
    v = ((after[0] - at[0]) / on, (after[1] - at[1]) / on)
    half = math.acos(max(-1.0, min(1.0, u[0] * v[0] + u[1] * v[1]))) / 2
    reach = min(radius / math.tan(half), back / 2, on / 2)
    sweep = 0 if u[0] * v[1] - u[1] * v[0] > 0 else 1
    start = (at[0] + u[0] * reach, at[1] + u[1] * reach)
    end = (at[0] + v[0] * reach, at[1] + v[1] * reach)
    return start, end, reach * math.tan(half), sweep


def gear(x: float, y: float, radius: float, teeth: int, hole: float) -> str:
    """A gear wheel: trapezoid teeth a fifth of the radius high, and a round hole."""
    root, step = 0.78 * radius, 360.0 / teeth
    points: list[Point] = []
    for i in range(teeth):
        middle = i * step - 90.0
        points += [
            on_circle(x, y, root, middle - 0.30 * step),
            on_circle(x, y, radius, middle - 0.19 * step),
            on_circle(x, y, radius, middle + 0.19 * step),
            on_circle(x, y, root, middle + 0.30 * step),
        ]
    return polygon(*points) + circle(x, y, hole)


def arrow(tail: Point, tip: Point, shaft: float, head: float, length: float) -> str:
    """A straight arrow: width of the shaft, width and length of the head."""
    whole = math.dist(tail, tip)
    ux, uy = (tip[0] - tail[0]) / whole, (tip[1] - tail[1]) / whole
    nx, ny = -uy, ux
    neck = (tip[0] - ux * length, tip[1] - uy * length)

    def beside(p: Point, w: float) -> Point:
        return p[0] + nx * w / 2, p[1] + ny * w / 2

    return polygon(
        beside(tail, shaft),
        beside(neck, shaft),
        beside(neck, head),
        tip,
        beside(neck, -head),
        beside(neck, -shaft),
        beside(tail, -shaft),
    )


def arc_arrow(x: float, y: float, radius: float, start: float, end: float, shaft: float, head: float) -> str:
    """An arrow bent round a centre from one angle to another (end > start: clockwise on the page).

    The head is as long as it is wide and lies beyond `end`.
    """
    way = 1 if end > start else -1
    outer, inner = radius + shaft / 2, radius - shaft / 2
    large = 1 if abs(end - start) > 180 else 0
    sweep, back = (1, 0) if way > 0 else (0, 1)
    # 0.9: a full head length along the tangent looks too long on a tight bend.
    tip = on_circle(x, y, radius, end + way * math.degrees(0.9 * head / radius))
    o, i = f"{number(outer)} {number(outer)}", f"{number(inner)} {number(inner)}"
    return (
        f"M{_pair(on_circle(x, y, outer, start))}A{o} 0 {large} {sweep} {_pair(on_circle(x, y, outer, end))}"
        f"L{_pair(on_circle(x, y, radius + head / 2, end))}L{_pair(tip)}"
        f"L{_pair(on_circle(x, y, radius - head / 2, end))}L{_pair(on_circle(x, y, inner, end))}"
        f"A{i} 0 {large} {back} {_pair(on_circle(x, y, inner, start))}Z"
    )


# A flame about (50, 50), 64 wide and 92 high: a tall tongue, a short one at its left.
FLAME = (
    "M54 4C56 18 82 36 82 62C82 82 68 96 50 96C32 96 18 83 18 64C18 50 26 41 31 31C34 39 37 43 42 46C40 30 43 14 54 4Z"
)
# The hollow in it, open to below.
FLAME_HEART = (
    "M53 52C56 60 67 66 67 78C67 89 60 96 50 96C40 96 34 89 34 81C34 72 40 68 43 62C45 65 47 67 50 68"
    "C49 62 50 57 53 52Z"
)
# A drop about (50, 50), 44 wide and 78 high.
DROP = "M50 10C58 30 72 46 72 64C72 78 62 88 50 88C38 88 28 78 28 64C28 46 42 30 50 10Z"
