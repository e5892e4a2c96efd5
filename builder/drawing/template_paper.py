"""What a template's sheets bear beside the thing itself: check squares, joints, crosses; and its lettering."""

from __future__ import annotations

from collections.abc import Iterator

from builder.drawing import look
from builder.drawing.svg import XY, circle, element, lines_d, num, polyline_d, stroke, words
from builder.drawing.template_look import CROSS, JOINT, SQUARE, SQUARE_GREY
from builder.drawing.template_marks import DIAMOND_MM, SQUARE_MM
from builder.drawing.template_words import LETTERS, down
from builder.view import SheetJoint, TemplateSheet


def square_art(corner: XY) -> Iterator[str]:
    """The check squares: 4 in, and 100 mm in its lower left corner, so that one rule laid there measures both."""
    x, y = corner
    for side in (SQUARE_MM, 100.0):
        rest = SQUARE_MM - side
        yield element(
            "rect",
            x=x,
            y=y + rest,
            width=side,
            height=side,
            fill="none",
            stroke=SQUARE.colour,
            stroke_width=SQUARE.width,
        )
    low = y + SQUARE_MM - 3
    for number, text in enumerate(("outer line 4.00 in", "inner line 100.0 mm", "Check square, no cut")):
        yield text_art(
            text, (x + 3, low - number * LETTERS.pitch), anchor="start", bold=number == 2, colour=SQUARE_GREY
        )


def joint_art(joint: SheetJoint, place: XY, sheet: TemplateSheet) -> Iterator[str]:
    """The line through the overlap; a diamond with the letter on either side of it; which sheet it meets."""
    a, b = down(joint.line[0]), down(joint.line[1])
    yield stroke(lines_d(((a, b),)), JOINT.colour, JOINT.width, dash=JOINT.dash)
    x, y = place
    upright = abs(a[0] - b[0]) < abs(a[1] - b[1])
    size = DIAMOND_MM
    corners = ((x - size, y), (x, y - size), (x + size, y), (x, y + size))
    yield element("path", d=polyline_d(corners, closed=True), fill=look.GROUND, stroke=look.INK, stroke_width=0.25)
    yield stroke(lines_d(((a, b),)), JOINT.colour, JOINT.width, dash=JOINT.dash)
    half = LETTERS.cap_mm / 2
    spots = ((x - 2.6, y + half), (x + 2.6, y + half)) if upright else ((x, y - 1.2), (x, y + 1.2 + 2 * half))
    for spot in spots:
        yield text_art(joint.letter, spot, bold=True)
    # Words stand on this sheet's own side of the line, `cut off` on the strip that goes.
    own = _own_side((x, y), upright, sheet)
    said = f"{joint.letter} meets sheet {joint.other}"
    along = size + 2 + LETTERS.width(said) / 2
    yield text_art(said, _beside((x, y), along, own, upright), turned=upright, plate=True)
    if joint.cut:
        yield text_art("cut off", _beside((x, y), along, -own, upright), turned=upright, plate=True)


def _own_side(middle: XY, upright: bool, sheet: TemplateSheet) -> int:
    """1 when the sheet's own middle lies to the right of the line, or below it; −1 otherwise."""
    left, bottom, right, top = sheet.window
    return 1 if ((left + right) / 2 > middle[0] if upright else -(bottom + top) / 2 > middle[1]) else -1


def _beside(middle: XY, along: float, side: int, upright: bool) -> XY:
    """The base line's middle of a text beside a joint line."""
    x, y = middle
    off = LETTERS.cap_mm + 1.4 if side > 0 else -1.4
    return (x + off, y - along) if upright else (x + along, y + off)


def cross(at: XY) -> str:
    x, y = at
    arms = lines_d((((x - 5, y), (x + 5, y)), ((x, y - 5), (x, y + 5))))
    return stroke(arms, CROSS.colour, CROSS.width) + circle(at, 2.2, colour=CROSS.colour, width=CROSS.width)


def text_art(
    text: str,
    at: XY,
    *,
    bold: bool = False,
    turned: bool = False,
    anchor: str = "middle",
    plate: bool = False,
    colour: str = look.INK,
) -> str:
    """A line of text on its base line; `plate` lays white under it."""
    x, y = at
    turn = f"rotate(-90 {num(x)} {num(y)})" if turned else None
    wide = LETTERS.width(text, bold)
    back = ""
    if plate:
        from_x = x - wide / 2 if anchor == "middle" else x
        back = element(
            "rect",
            x=from_x - 0.5,
            y=y - LETTERS.above - 0.3,
            width=wide + 1,
            height=LETTERS.above + LETTERS.below * 0.6 + 0.3,
            fill=look.GROUND,
            transform=turn,
        )
    return back + element(
        "text",
        words(text),
        x=x,
        y=y,
        font_family=LETTERS.family.name,
        font_size=LETTERS.em(bold),
        font_weight="700" if bold else None,
        text_anchor=None if anchor == "start" else anchor,
        fill=colour,
        transform=turn,
    )
