"""Marks of a size of their own, whatever the scale: holes, hardware, rings, starts and ends, arrowheads, breaks."""

from __future__ import annotations

import math

from builder.drawing import look
from builder.drawing.box import Box
from builder.drawing.svg import XY, circle, filled, lines_d, polyline_d, stroke


def arrowhead(tip: XY, way: XY, length: float, half: float) -> tuple[XY, XY, XY]:
    """The three corners of an arrowhead that points along `way`."""
    x, y = tip[0] - way[0] * length, tip[1] - way[1] * length
    return tip, (x - way[1] * half, y + way[0] * half), (x + way[1] * half, y - way[0] * half)


def direction_arrow(middle: XY, way: XY, colour: str) -> str:
    """The solid arrowhead of a sewing direction, centred on a point, edged in white so it stands off its line."""
    tip = (middle[0] + way[0] * look.ARROW_LENGTH / 2, middle[1] + way[1] * look.ARROW_LENGTH / 2)
    corners = arrowhead(tip, way, look.ARROW_LENGTH, look.ARROW_HALF)
    return filled(polyline_d(corners, closed=True), colour)


def drill_hole(centre: XY, radius: float, colour: str, width: float) -> str:
    """A circle with a cross through it."""
    arm = radius + 0.75
    (x, y) = centre
    cross = lines_d([((x - arm, y), (x + arm, y)), ((x, y - arm), (x, y + arm))])
    return circle(centre, radius, colour=colour, width=width) + stroke(cross, colour, width * 0.75)


def hardware(centre: XY, radius: float, colour: str, width: float) -> str:
    """A round fitting: two circles, the inner one open."""
    return circle(centre, radius, fill=look.GROUND, colour=colour, width=width) + circle(
        centre, radius * 0.52, colour=colour, width=width
    )


def ring(centre: XY) -> str:
    """The accent circle about a point to look at."""
    return circle(centre, look.RING_RADIUS, colour=look.ACCENT, width=look.RING)


def start_mark(centre: XY) -> str:
    """Where sewing starts: a filled dot with a thin white edge."""
    return circle(centre, look.START_RADIUS, fill=look.ACCENT)


def end_mark(centre: XY, way: XY) -> str:
    """Where sewing ends: a bar across the seam."""
    (x, y), (dx, dy) = centre, way
    reach = look.END_REACH
    bar = ((x - dy * reach, y + dx * reach), (x + dy * reach, y - dx * reach))
    return stroke(lines_d([bar]), look.ACCENT, 1.0)


def notch_points(mouth: XY, inward: XY, half: float, depth: float) -> tuple[XY, XY, XY]:
    """The V of a notch: one lip, the tip, the other lip."""
    (x, y), (dx, dy) = mouth, inward
    return (
        (x + dy * half, y - dx * half),
        (x + dx * depth, y + dy * depth),
        (x - dy * half, y + dx * half),
    )


def break_mark(box: Box, axis: int) -> tuple[str, list[list[XY]]]:
    """A break across a part: white between two zigzag lines. Returns the drawing and its two lines.

    box  : the space taken out, as wide as the gap and as long as the break lines
    axis : 0 when the part is broken along x
    """
    lines = [_zigzag_across(box, axis, share) for share in (0.0, 1.0)]
    gap = polyline_d([*lines[0], *reversed(lines[1])], closed=True)
    return filled(gap, look.GROUND) + "".join(
        stroke(polyline_d(line), look.INK, look.THIN, join="round") for line in lines
    ), lines


def _zigzag_across(box: Box, axis: int, share: float) -> list[XY]:
    """A straight line across the part with one sharp jog in the middle."""
    low, high = (box.y0, box.y1) if axis == 0 else (box.x0, box.x1)
    at = (box.x0 + box.width * share) if axis == 0 else (box.y0 + box.height * share)
    middle, jog = (low + high) / 2, min(1.5, (high - low) / 6)
    along = [(at, low), (at, middle - jog), (at - jog, middle - jog * 0.4), (at + jog, middle + jog * 0.4)]
    along += [(at, middle + jog), (at, high)]
    return along if axis == 0 else [(across, place) for place, across in along]


def way_between(a: XY, b: XY) -> XY:
    """Direction from a to b, length 1; to the right when they are one point."""
    size = math.dist(a, b)
    return ((b[0] - a[0]) / size, (b[1] - a[1]) / size) if size > 1e-9 else (1.0, 0.0)
