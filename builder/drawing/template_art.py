"""A sheet of a template drawn at true size, and the small map that shows where it belongs.

A millimetre of the SVG is a millimetre of the thing and of the paper. All sheets are drawn from the same lines, each
through its own window, so a line that crosses a joint goes on where it left off, dashes included.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from builder.drawing import look
from builder.drawing.hatch import hatch
from builder.drawing.svg import XY, document, element, filled, lines_d, num, pair, polyline_d, stroke
from builder.drawing.symbol import arrowhead
from builder.drawing.template_look import (
    DIMENSION,
    GO_TINT,
    MAP_HERE,
    NO_GO_TINT,
    OTHER,
    PENS,
    Pen,
)
from builder.drawing.template_marks import clear_share, joint_place, square_place
from builder.drawing.template_paper import cross, joint_art, square_art, text_art
from builder.drawing.template_words import LETTERS, Label, down, places_of
from builder.geometry import Arc, Point, Segment
from builder.view import ChainDimension, TemplateLine, TemplateSheet, TemplateView, TemplateWords

_HEAD = (2.6, 0.9)


def template_sheet_svg(view: TemplateView, sheet: TemplateSheet) -> str:
    """One sheet's window, in mm: what is cut, the words, the check square, and the marks for joining."""
    left, bottom, right, top = sheet.window
    content = "".join(
        (
            *square_art(square_place(view, sheet)),
            *(art for line in view.lines for art in _line(line)),
            *(art for one in view.dimensions for art in _dimension(one, view)),
            *(art for one in view.words for art in _words(one, view)),
            *_piece_words(view),
            *(art for joint in sheet.joints for art in joint_art(joint, joint_place(view, joint), sheet)),
            *(cross(down(point)) for point in sheet.crosses),
        )
    )
    moved = element("g", content, transform=f"translate({num(-left)} {num(top)})")
    said = f"{view.number} {view.title}, sheet {sheet.number} of {len(view.sheets)}, at true size"
    return document(said, said, right - left, top - bottom, moved)


def template_map_svg(view: TemplateView, sheet: TemplateSheet, width_mm: float, height_mm: float) -> str:
    """All sheets small, with what is cut, this one marked."""
    boxes = [one.window for one in view.sheets]
    left, top = min(box[0] for box in boxes), max(box[3] for box in boxes)
    right, bottom = max(box[2] for box in boxes), min(box[1] for box in boxes)
    scale = min((width_mm - 1) / (right - left), (height_mm - 1) / (top - bottom))

    def at(point: Point) -> XY:
        return 0.5 + (point[0] - left) * scale, 0.5 + (top - point[1]) * scale

    art = []
    for one in view.sheets:
        (x, y), (x1, y1) = at((one.window[0], one.window[3])), at((one.window[2], one.window[1]))
        fill = MAP_HERE if one.number == sheet.number and len(view.sheets) > 1 else "none"
        art.append(element("rect", x=x, y=y, width=x1 - x, height=y1 - y, fill=fill, stroke=look.INK, stroke_width=0.2))
    for line in (one for one in view.lines if one.role == "cut edge"):
        points = [at(point) for segment in line.path for point in segment.to_polyline(0.5)]
        art.append(stroke(polyline_d(points, closed=True), look.INK, 0.5, join="round"))
    for one in view.sheets if len(view.sheets) > 1 else ():
        (x, y), (x1, y1) = at((one.window[0], one.window[3])), at((one.window[2], one.window[1]))
        if x1 - x > LETTERS.width(str(one.number), True) + 1 and y1 - y > LETTERS.above + 1:
            art.append(
                text_art(str(one.number), ((x + x1) / 2, (y + y1) / 2 + LETTERS.cap_mm / 2), bold=True, plate=True)
            )
    said = f"Map: {len(view.sheets)} sheets, this is sheet {sheet.number}"
    size = (right - left) * scale + 1, (top - bottom) * scale + 1
    return document(said, said, *size, "".join(art))


def _line(line: TemplateLine) -> Iterator[str]:
    if line.role in ("go", "no go"):
        yield from _zone(line)
        return
    if line.role == "pointer":
        yield filled(_data(line.path, closed=True), look.INK)
        return
    pen = PENS.get(line.role, OTHER)
    # Segments that go on from each other are one path, so that corners are sharp and dashes run through.
    yield _stroke(_data(line.path, line.closed), pen)
    if line.role == "hole":
        x, y = _centre(line.path)
        yield stroke(lines_d((((x - 4, y), (x + 4, y)), ((x, y - 4), (x, y + 4)))), look.INK, 0.15)


def _zone(line: TemplateLine) -> Iterator[str]:
    """The end of a gauge: GO tinted, NO GO tinted and hatched, each with its word where it has room."""
    corners = [down(segment.start) for segment in line.path]
    stop = line.role == "no go"
    yield filled(polyline_d(corners, closed=True), NO_GO_TINT if stop else GO_TINT)
    xs, ys = [x for x, _ in corners], [y for _, y in corners]
    wide, text = max(xs) - min(xs), "NO GO" if stop else "GO"
    if stop:
        yield stroke(lines_d(hatch(corners, 2.2)), look.INK, 0.2)
    x, y = (min(xs) + max(xs)) / 2, (min(ys) + max(ys)) / 2
    if wide > LETTERS.width(text, True) + 2:
        yield text_art(text, (x, y + LETTERS.cap_mm / 2), bold=True, plate=True)
    elif wide > LETTERS.cap_mm + 2:
        yield text_art(text, (x + LETTERS.cap_mm / 2, y), bold=True, plate=True, turned=True)


def _stroke(d: str, pen: Pen) -> str:
    return stroke(d, pen.colour, pen.width, dash=pen.dash or None, join="miter")


def _data(path: Sequence[Segment], closed: bool) -> str:
    """Path data of segments, a new piece where one doesn't begin at the end of the one before."""
    data, last = [], None
    for segment in path:
        start = down(segment.start)
        if last is None or math.dist(last, start) > 1e-4:
            data.append(f"M{pair(start)}")
        if isinstance(segment, Arc):
            # Two halves, because one arc of SVG can't be a whole circle; sweep 1 is clockwise to the eye.
            sweep, radius = int(segment.clockwise), num(segment.radius)
            data += [f"A{radius} {radius} 0 0 {sweep} {pair(down(segment.point_at(share)))}" for share in (0.5, 1.0)]
        else:
            data.append(f"L{pair(down(segment.end))}")
        last = down(segment.end)
    return "".join(data) + ("Z" if closed else "")


def _centre(path: Sequence[Segment]) -> XY:
    boxes = [segment.bounds() for segment in path]
    left, right = min(box[0] for box in boxes), max(box[2] for box in boxes)
    return (left + right) / 2, -(min(box[1] for box in boxes) + max(box[3] for box in boxes)) / 2


def _dimension(one: ChainDimension, view: TemplateView) -> Iterator[str]:
    """Extension lines from a little off the points, arrows, the text over the line or, where it is too long, beside."""
    (ax, ay), (bx, by) = start, end = down(one.start), down(one.end)
    length = math.dist(start, end)
    way = ((bx - ax) / length, (by - ay) / length)
    for foot, tip in zip(one.feet, (start, end), strict=True):
        fx, fy = down(foot)
        off = math.dist((fx, fy), tip)
        if off > 1.5:
            out = ((tip[0] - fx) / off, (tip[1] - fy) / off)
            from_, to = (fx + out[0], fy + out[1]), (tip[0] + out[0] * 1.2, tip[1] + out[1] * 1.2)
            yield stroke(lines_d(((from_, to),)), look.INK, DIMENSION.width)
    yield stroke(lines_d(((start, end),)), look.INK, DIMENSION.width)
    if length > 2.5 * _HEAD[0]:
        for tip, direction in ((start, (-way[0], -way[1])), (end, way)):
            yield filled(polyline_d(arrowhead(tip, direction, *_HEAD), closed=True), look.INK)
    else:
        for x, y in (start, end):
            tick = ((x - 1, y + 1), (x + 1, y - 1))
            yield stroke(lines_d((tick,)), look.INK, 0.3)
    turned = abs(way[1]) > abs(way[0])
    lines: tuple[str, ...] = (one.text,)
    if LETTERS.width(one.text) > length - 2 and " (" in one.text:
        first, _, rest = one.text.partition(" (")
        lines = (first, f"({rest}")
    if max(LETTERS.width(text) for text in lines) > length - 1:
        return  # the first of its kind and the whole stand in the chain's own line
    wide = max(LETTERS.width(text) for text in lines)
    share = clear_share(view, start, end, wide, of_dimension=True) or 0.5
    x, y = ax + (bx - ax) * share, ay + (by - ay) * share
    for number, text in enumerate(lines):
        down_by = -1.0 if number == 0 else LETTERS.cap_mm + 1.2
        yield text_art(text, (x + down_by, y) if turned else (x, y + down_by), turned=turned, plate=True)


def _words(one: TemplateWords, view: TemplateView) -> Iterator[str]:
    left, bottom, _, top = one.box
    if one.turned or one.either:
        yield _along(one, view)
        return
    lines = one.lines
    # Spread over the whole box, so that the first and the last line stand at its ends.
    step = ((top - bottom) - LETTERS.cap_mm - LETTERS.below - 1.5) / max(1, len(lines) - 1)
    for number, text in enumerate(lines):
        y = -top + 1.0 + LETTERS.cap_mm + number * step
        yield text_art(text.removeprefix("*"), (left, y), bold=text.startswith("*"), anchor="start")


def _along(one: TemplateWords, view: TemplateView) -> str:
    """The first of several ways to say a thing along an edge that has a clear place, else the last of them."""
    left, bottom, right, top = one.box
    middle = ((left + right) / 2, -(top + bottom) / 2)
    start, end = ((middle[0], -bottom), (middle[0], -top)) if one.turned else ((left, middle[1]), (right, middle[1]))
    room, half = math.dist(start, end), LETTERS.cap_mm / 2
    share: float | None = 0.5
    for text in one.lines:
        plain, bold = text.removeprefix("*"), text.startswith("*")
        share = clear_share(view, start, end, LETTERS.width(plain, bold))
        if share is not None and LETTERS.width(plain, bold) <= room - 1:
            break
    x, y = (a + (b - a) * (0.5 if share is None else share) for a, b in zip(start, end, strict=True))
    return text_art(plain, (x + half, y) if one.turned else (x, y + half), bold=bold, turned=one.turned)


def _piece_words(view: TemplateView) -> Iterator[str]:
    places = places_of(view)
    if places.label is not None:
        yield from _label(places.label)
    if places.arrow is not None:
        yield from _grain(*places.arrow)
    for name in places.names:
        yield from _label(name)


def _label(label: Label) -> Iterator[str]:
    box = label.box
    for number, text in enumerate(label.lines):
        plain, bold = text.removeprefix("*"), text.startswith("*")
        down_by = LETTERS.above + number * LETTERS.pitch
        if label.turned:
            yield text_art(plain, (box.x0 + down_by, box.centre[1]), bold=bold, turned=True)
        else:
            yield text_art(plain, (box.x0, box.y0 + down_by), bold=bold, anchor="start")


def _grain(start: XY, end: XY) -> Iterator[str]:
    length = math.dist(start, end)
    way = ((end[0] - start[0]) / length, (end[1] - start[1]) / length)
    yield stroke(lines_d(((start, end),)), look.INK, 0.35)
    for tip, direction in ((start, (-way[0], -way[1])), (end, way)):
        yield filled(polyline_d(arrowhead(tip, direction, 4.0, 1.4), closed=True), look.INK)
