"""The ways a dimension can be drawn, after drafting practice: extension lines with a gap and an overshoot, an
arrowed line, the text above or beside it, arrows outside where there is no room.

Only lists the ways and what each costs; label_place.py chooses. Dimensions outside the part are tried in
tiers, one text line apart, so several on one side stand outside each other. Source of the forms: common
practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import partial

from builder.drawing import look
from builder.drawing.box import Box, Trace, box_about
from builder.drawing.font import Lettering
from builder.drawing.frame import Frame, way_on_paper
from builder.drawing.label_cost import Batch, Candidate
from builder.drawing.lettered import HEAD_LENGTH, LabelArt, TextBlock, block_size, broken_at_bracket
from builder.drawing.svg import XY
from builder.view import DimensionLine

_GAP, _OVERSHOOT = 0.9, 1.0
_TAIL = 4.2
_TEXT_GAP = 0.9
_NEAR_LEVELS = (4.0, 6.5, 9.5, 13.0, 17.0, 21.5)
# A dimension line inside the part is second best.
_INSIDE = 2.5
_OVERHANG_PER_MM = 0.3
_TIER = 1.4
_FIRST_TIER, _TIERS = 3.2, 16


@dataclass(frozen=True, slots=True)
class Measure:
    """A dimension on paper: its two points, the direction it is measured along, and the one away from the part."""

    start: XY
    end: XY
    along: XY
    away: XY
    length: float


def measure_of(line: DimensionLine, frame: Frame) -> Measure:
    """A dimension on paper; along runs from start to end."""
    start, end = frame.at(line.start), frame.at(line.end)
    away = way_on_paper(line.away)
    along = (-away[1], away[0])
    length = _dot((end[0] - start[0], end[1] - start[1]), along)
    if length < 0:
        start, end, length = end, start, -length
    return Measure(start, end, along, away, length)


def dimension_ways(line: DimensionLine, frame: Frame, lettering: Lettering) -> Iterator[Batch]:
    """Every way to draw a dimension, with its cost: extension length, place of the text, lines of text."""
    measure = measure_of(line, frame)
    base = max(_dot(measure.start, measure.away), _dot(measure.end, measure.away))
    outer = _dot(frame.box.centre, measure.away) + frame.box.reach(measure.away)
    near = [(0.22 * step + _INSIDE, base + step) for step in _NEAR_LEVELS if base + step < outer - 1]
    tiers = (max(outer, base) + _FIRST_TIER + _TIER * tier for tier in range(_TIERS))
    for cost, level in sorted([*near, *((0.22 * (level - base), level) for level in tiers)]):
        yield Batch(cost, list(_ways_at(line, measure, level, cost, frame.box, lettering)))


def _ways_at(
    line: DimensionLine, measure: Measure, level: float, own: float, part: Box, lettering: Lettering
) -> Iterator[Candidate]:
    first, last = _at_level(measure.start, measure, level), _at_level(measure.end, measure, level)
    outside = measure.length < 2 * HEAD_LENGTH + 1.2
    tail = _TAIL if outside else 0.0
    pieces = _lines(measure, level, first, last, tail)
    heads = _heads(first, last, measure.along, outside)
    # The dimension line itself must cross nothing; extension lines may.
    traces = tuple(Trace(*a, *b, weight=0.5 if number else 2.0) for number, (a, b) in enumerate(pieces))
    for text, cost in _texts(line, measure, first, last, tail, lettering):
        cost += own + _OVERHANG_PER_MM * _overhang(text.box, part, measure.along)
        yield Candidate((text.box,), traces, cost, partial(_art, text, pieces, heads, line.strong))


def _overhang(text: Box, part: Box, along: XY) -> float:
    """How far a text sticks out beyond the part along its dimension, mm: it would make the drawing larger."""
    off = _dot(text.centre, along) - _dot(part.centre, along)
    return max(0.0, abs(off) + text.reach(along) - part.reach(along))


def _art(
    text: TextBlock, pieces: tuple[tuple[XY, XY], ...], heads: tuple[tuple[XY, XY], ...], strong: bool
) -> LabelArt:
    colour, width = (look.ACCENT, 0.3) if strong else (look.INK, look.HAIR)
    return LabelArt((text,), pieces, heads, colour=colour, width=width)


def _dot(a: XY, b: XY) -> float:
    return a[0] * b[0] + a[1] * b[1]


def _at_level(point: XY, measure: Measure, level: float) -> XY:
    """The point moved away from the part as far as the dimension line."""
    return _stepped(point, measure.away, level - _dot(point, measure.away))


def _stepped(point: XY, way: XY, by: float) -> XY:
    return point[0] + way[0] * by, point[1] + way[1] * by


def _lines(measure: Measure, level: float, first: XY, last: XY, tail: float) -> tuple[tuple[XY, XY], ...]:
    """The dimension line, and the two extension lines where the point isn't on it already."""
    lines = [(_stepped(first, measure.along, -tail), _stepped(last, measure.along, tail))]
    for point, foot in ((measure.start, first), (measure.end, last)):
        if level - _dot(point, measure.away) > _GAP + 0.5:
            lines.append((_stepped(point, measure.away, _GAP), _stepped(foot, measure.away, _OVERSHOOT)))
    return tuple(lines)


def _heads(first: XY, last: XY, along: XY, outside: bool) -> tuple[tuple[XY, XY], ...]:
    back = (-along[0], -along[1])
    return ((first, along), (last, back)) if outside else ((first, back), (last, along))


def _texts(
    line: DimensionLine, measure: Measure, first: XY, last: XY, tail: float, lettering: Lettering
) -> Iterator[tuple[TextBlock, float]]:
    """Every place of the text about a dimension line, with its cost."""
    forms: list[tuple[str, ...]] = [(line.text,)]
    if len(broken_at_bracket(line.text)) > 1:
        forms.append(broken_at_bracket(line.text))
    upright = abs(measure.away[0]) > 0.7
    for lines in forms:
        width, height = block_size(lines, line.strong, lettering)
        extra = 1.2 * (len(lines) - 1)
        for box, cost, anchor in _places(measure, first, last, tail, width, height):
            yield _block(lines, box, line.strong, anchor), cost + extra
        if upright:
            for box, cost, _ in _places(measure, first, last, tail, height, width):
                yield _block(lines, box, line.strong, "middle", turned=True), cost + extra + 3.5


def _block(lines: tuple[str, ...], box: Box, strong: bool, anchor: str, turned: bool = False) -> TextBlock:
    return TextBlock(lines, box, look.ACCENT if strong else look.INK, strong, anchor, turned)


def _places(
    measure: Measure, first: XY, last: XY, tail: float, width: float, height: float
) -> Iterator[tuple[Box, float, str]]:
    """Boxes over, under and beside a dimension line, with cost and the side text is lined up on."""
    along, away = measure.along, measure.away
    middle = ((first[0] + last[0]) / 2, (first[1] + last[1]) / 2)
    flat = box_about((0, 0), width, height)
    ahead, fits = flat.reach(along), 2 * flat.reach(along) <= measure.length - 1
    # Above a level line reads best; a line's text stands to the left of an upright one.
    above = 1.0 if away[1] < -0.3 or (abs(away[1]) <= 0.3 and away[0] < 0) else -1.0
    # Beside a tail the text starts just past the extension line.
    clear = measure.length / 2 + _TEXT_GAP if tail else 0.0
    for side in (above, -above):
        # A text wider than its dimension stands clear of the ends of the extension lines.
        aside = flat.reach(away) + (_TEXT_GAP if fits or side < 0 else _OVERSHOOT + _TEXT_GAP / 2)
        shifts = (0.0,) if fits else (0.0, ahead + clear, -ahead - clear)
        for shift in shifts:
            centre = _stepped(_stepped(middle, away, side * aside), along, shift)
            yield box_about(centre, width, height), (side != above) * 0.8 + (shift != 0) * 1.6, _lined_up(along, shift)
    for end, sign in ((last, 1.0), (first, -1.0)):
        beyond = tail + ahead + _TEXT_GAP + (0.4 if tail else 0.8)
        centre = _stepped(end, along, sign * beyond)
        rightward = along[0] * sign > 0.3
        yield box_about(centre, width, height), 1.8 if rightward else 2.2, _lined_up(along, sign)


def _lined_up(along: XY, sign: float) -> str:
    ahead = along[0] * sign
    return "start" if ahead > 0.3 else "end" if ahead < -0.3 else "middle"
