"""The ways a word can be placed: beside its point, in the part's corner, along a run, with a grain arrow.

Only lists the ways and what each costs; label_place.py chooses.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from builder.drawing import look
from builder.drawing.box import Box, Trace, box_about, box_round
from builder.drawing.font import Lettering
from builder.drawing.hatch import inside
from builder.drawing.label_place import Candidate
from builder.drawing.lettered import LabelArt, TextBlock, block_size, broken_in_two
from builder.drawing.run import Run
from builder.drawing.svg import XY

Way = tuple[Candidate, LabelArt]

_DISTANCES = (0.0, 1.0, 2.2, 4.0, 6.0, 8.5, 11.5, 15.0, 19.0, 24.0, 30.0)
_ANGLES = 16
# To the right reads best, then above and below; ties are broken in this order, so the result is always the same.
_WORSE = (0.0, 0.15, 0.2, 0.3, 0.25, 0.45, 0.5, 0.55, 0.4, 0.55, 0.5, 0.45, 0.3, 0.3, 0.2, 0.15)
_LONG_LABEL = 24.0


def word_ways(
    at: XY, text: str, keep_off: float, lettering: Lettering, *, accent: bool = False, bold: bool = False
) -> Iterator[Way]:
    """A word about a point, with a leader where it stands farther off than one and a half text heights.

    keep_off : radius of what is drawn at the point, mm
    """
    forms = [(text,)]
    if lettering.width(text, bold) > _LONG_LABEL and len(broken_in_two(text, lettering)) > 1:
        forms.append(broken_in_two(text, lettering, bold))
    for lines in forms:
        width, height = block_size(lines, bold, lettering)
        extra = 1.0 * (len(lines) - 1)
        for step in _DISTANCES:
            for number in range(_ANGLES):
                angle = 2 * math.pi * number / _ANGLES
                box = _box_towards(at, (math.cos(angle), -math.sin(angle)), keep_off + 0.9 + step, width, height)
                off = math.dist(at, box.nearest(at)) - keep_off
                cost = 0.4 * max(off, 0.0) + _WORSE[number] + extra
                yield _word(at, lines, box, cost, keep_off, lettering, accent, bold)


def _box_towards(at: XY, way: XY, off: float, width: float, height: float) -> Box:
    centre = (at[0] + way[0] * (off + width / 2), at[1] + way[1] * (off + height / 2))
    return box_about(centre, width, height)


def _word(
    at: XY, lines: tuple[str, ...], box: Box, cost: float, keep_off: float, lettering: Lettering, accent: bool, bold: bool
) -> Way:
    colour = look.ACCENT if accent else look.INK
    anchor = "start" if box.x0 > at[0] else "end" if box.x1 < at[0] else "middle"
    text = TextBlock(lines, box, colour, bold, anchor)
    if math.dist(at, box.nearest(at)) - keep_off <= 1.5 * lettering.cap_mm:
        return Candidate((box,), (), cost), LabelArt((text,), colour=colour)
    piece = _leader(at, box, keep_off, lettering)
    art = LabelArt((text,), (piece,), dot=piece[1] if keep_off == 0 else None, colour=colour, width=0.25)
    return Candidate((box,), (Trace(*piece[0], *piece[1], weight=1.2),), cost + 1.5), art


def _leader(at: XY, box: Box, keep_off: float, lettering: Lettering) -> tuple[XY, XY]:
    """From the side of the text nearest to its point, to the point or the symbol drawn there."""
    middle = box.y0 + lettering.above - lettering.cap_mm / 2
    ends = [(box.x0 - 0.5, middle), (box.x1 + 0.5, middle)]
    ends += [(box.centre[0], box.y0 - 0.5), (box.centre[0], box.y1 + 0.4)]
    begin = min(ends, key=lambda end: (round(math.dist(end, at), 6), end))
    size = math.dist(begin, at)
    share = max(0.0, 1 - keep_off / size) if size > 0 else 0.0
    return begin, (begin[0] + (at[0] - begin[0]) * share, begin[1] + (at[1] - begin[1]) * share)


def corner_ways(text: str, area: Sequence[XY], lettering: Lettering) -> Iterator[Way]:
    """The word of the side shown: in the lower left corner of the part, else elsewhere in it, else under it."""
    size = block_size((text,), False, lettering)
    xs, ys = [x for x, _ in area], [y for _, y in area]
    home = Box(min(xs), min(ys), max(xs), max(ys))
    inset = 1.7
    for row in range(10):
        for column in range(12):
            x0, y1 = home.x0 + inset + 3.0 * column, home.y1 - inset - 3.0 * row
            box = Box(x0, y1 - size[1], x0 + size[0], y1)
            if box.x1 > home.x1 - 1 or box.y0 < home.y0 + 1:
                continue
            if all(inside(corner, area) for corner in _corners(box)):
                yield _plain(text, box, 0.9 * row + 0.5 * column)
    for x0 in (home.x0, (home.x0 + home.x1 - size[0]) / 2, home.x1 - size[0]):
        for off in (1.2, 4.0, 7.0, 10.0, 14.0, 18.0):
            below = Box(x0, home.y1 + off, x0 + size[0], home.y1 + off + size[1])
            above = Box(x0, home.y0 - off - size[1], x0 + size[0], home.y0 - off)
            yield _plain(text, below, 14 + off)
            yield _plain(text, above, 16 + off)


def _corners(box: Box) -> tuple[XY, ...]:
    return (box.x0, box.y0), (box.x1, box.y0), (box.x1, box.y1), (box.x0, box.y1)


def _plain(text: str, box: Box, cost: float) -> Way:
    return Candidate((box,), (), cost), LabelArt((TextBlock((text,), box, anchor="start"),))


def disc_ways(number: str, run: Run, lettering: Lettering) -> Iterator[Way]:
    """The order number of a run, in a disc beside it, with a leader when it stands farther off."""
    width, height = block_size((number,), True, lettering)
    tall = lettering.cap_mm + 1.9
    wide = max(width + 1.7, tall)
    for share, worse in ((0.5, 0.0), (0.36, 0.3), (0.64, 0.3), (0.22, 0.7), (0.78, 0.7), (0.1, 1.2), (0.9, 1.2)):
        at, way = run.at(share)
        for side in (1.0, -1.0):
            normal = (-way[1] * side, way[0] * side)
            for off in (0.6, 1.4, 2.6, 4.0, 6.0, 8.0, 11.0, 15.0):
                for slide in (0.0,) if off < 2 else (0.0, 0.5, -0.5, 1.0, -1.0):
                    yield _disc(number, at, _slid(normal, way, slide), off, (wide, tall), (width, height), worse, lettering)


def _slid(normal: XY, way: XY, slide: float) -> XY:
    x, y = normal[0] + way[0] * slide, normal[1] + way[1] * slide
    size = math.hypot(x, y)
    return x / size, y / size


def _disc(
    number: str, at: XY, way: XY, off: float, disc: XY, text: XY, worse: float, lettering: Lettering
) -> Way:
    flat = box_about((0, 0), *disc)
    # A disc is round: its reach in any direction is its radius, a longer number adds its straight part.
    reach = disc[1] / 2 + abs(way[0]) * (disc[0] - disc[1]) / 2
    centre = (at[0] + way[0] * (off + reach), at[1] + way[1] * (off + reach))
    box = flat.moved(*centre)
    top = centre[1] - lettering.cap_mm / 2 - (lettering.above - lettering.cap_mm)
    words = TextBlock((number,), Box(centre[0] - text[0] / 2, top, centre[0] + text[0] / 2, top + text[1]), look.ACCENT, True)
    cost = 0.45 * off + worse
    if off < 2:
        return Candidate((box_round([box, words.box]),), (), cost), LabelArt((words,), disc=box, colour=look.ACCENT)
    piece = ((at[0] + way[0] * off, at[1] + way[1] * off), at)
    art = LabelArt((words,), (piece,), dot=at, disc=box, colour=look.ACCENT, width=0.25)
    # The leader begins on its run, so its first stretch is no crossing.
    near = (at[0] + way[0] * 0.4, at[1] + way[1] * 0.4)
    return Candidate((box_round([box, words.box]),), (Trace(*piece[0], *near, weight=1.4),), cost + 1.0), art


def grain_ways(text: str, turn_deg: float, area: Sequence[XY], home: Box, lettering: Lettering) -> Iterator[Way]:
    """The grain arrow, thin and double-headed, with its word: in a free place of the part, else beside it."""
    way = (math.cos(math.radians(turn_deg)), -math.sin(math.radians(turn_deg)))
    for length, extra in ((13.0, 0.0), (10.0, 0.8), (8.0, 1.6)):
        for row in range(9):
            for column in range(13):
                centre = (home.x0 + home.width * (column + 0.5) / 13, home.y0 + home.height * (row + 0.5) / 9)
                if not inside(centre, area):
                    continue
                # The upper right is seldom used by the words of the other labels.
                cost = extra + 0.12 * (12 - column) + 0.15 * abs(row - 2)
                yield from _grain_at(text, centre, way, length, cost, lettering, area)
        for off in (4.0, 7.0, 11.0, 16.0, 22.0):
            for x, y in (
                (home.x1 + off, home.y0 + home.height / 2),
                (home.x0 - off, home.y0 + home.height / 2),
                (home.x0 + home.width / 2, home.y0 - off),
                (home.x0 + home.width / 2, home.y1 + off),
                (home.x1 - 12, home.y1 + off),
                (home.x1 - 12, home.y0 - off),
            ):
                yield from _grain_at(text, (x, y), way, length, extra + 9 + 0.3 * off, lettering, None)


def _grain_at(
    text: str, centre: XY, way: XY, length: float, cost: float, lettering: Lettering, area: Sequence[XY] | None
) -> Iterator[Way]:
    half = length / 2
    ends = [(centre[0] + way[0] * half * sign, centre[1] + way[1] * half * sign) for sign in (1, -1)]
    if area is not None and not all(inside(end, area) for end in ends):
        return
    size = block_size((text,), False, lettering)
    flat = box_about((0, 0), *size)
    normal = (-way[1], way[0])
    places = [((normal[0] * side, normal[1] * side), flat.reach(normal) + 0.8) for side in (-1, 1)]
    places += [((way[0] * sign, way[1] * sign), half + flat.reach(way) + 0.9) for sign in (1, -1)]
    for number, (to, off) in enumerate(places):
        box = flat.moved(centre[0] + to[0] * off, centre[1] + to[1] * off)
        heads = ((ends[0], way), (ends[1], (-way[0], -way[1])))
        art = LabelArt((TextBlock((text,), box),), ((ends[0], ends[1]),), heads, width=0.3)
        # The arrow must cross nothing: it would read as a dimension.
        line = Trace(*ends[0], *ends[1], weight=25.0)
        yield Candidate((box,), (line,), cost + 0.2 * number), art
