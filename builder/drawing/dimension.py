"""The ways a dimension can be drawn, after drafting practice: extension lines with a gap and an overshoot, an
arrowed line, the text above or beside it, arrows outside where there is no room.

Only lists the ways and what each costs; label_place.py chooses. Dimensions outside the part are tried in
tiers, one text line apart, so several on one side stand outside each other. Source of the forms: common
practice, no source.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from functools import partial
from heapq import heappop, heappush
from typing import NamedTuple

from builder.drawing import look
from builder.drawing.box import Box, Trace, box_about
from builder.drawing.field import Field
from builder.drawing.font import Lettering
from builder.drawing.frame import Frame, way_on_paper
from builder.drawing.label_cost import Candidate, Way, lines_cost
from builder.drawing.lettered import HEAD_LENGTH, LabelArt, TextBlock, block_size, broken_at_bracket
from builder.drawing.svg import XY
from builder.view import DimensionLine

_GAP, _OVERSHOOT = 0.9, 1.0
_TAIL = 4.2
_TEXT_GAP = 0.9
# Past an extension line on an edge, which is thicker than the line.
_PAST_EDGE = 1.7
_NEAR_LEVELS = (4.0, 6.5, 9.5, 13.0, 17.0, 21.5)
# A dimension line inside the part is second best.
_INSIDE = 2.5
_PER_MM = 0.22
# From so far in, a line inside the part costs less than one beyond it.
_STAYS_INSIDE = 20.0
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


def stays_inside(line: DimensionLine, frame: Frame) -> bool:
    """Is a dimension so far in from the edge that it is cheaper drawn inside the part, where there is room?"""
    base, outer = _reach(measure_of(line, frame), frame)
    return outer - base > _STAYS_INSIDE


def room_beside(line: DimensionLine, lettering: Lettering, first: bool) -> float:
    """Room for a dimension beyond the part, mm: an estimate, before it is known where it can stand.

    first : the first on its side, else it stands outside others
    """
    if abs(line.away[0]) > abs(line.away[1]):
        return lettering.pitch * (2 if " (" in line.text else 1) + 2.5 + look.CUT_EDGE
    return (_FIRST_TIER if first else _TIER) + 2 * _TEXT_GAP + lettering.above + lettering.below


def _reach(measure: Measure, frame: Frame) -> tuple[float, float]:
    """How far the points of a dimension lie out on its side, and the part."""
    base = max(_dot(measure.start, measure.away), _dot(measure.end, measure.away))
    return base, _dot(frame.box.centre, measure.away) + frame.box.reach(measure.away)


def tails_of(line: DimensionLine, frame: Frame) -> list[XY]:
    """How far a dimension too short for its arrows reaches along itself: the ends of its line, at its two points."""
    measure = measure_of(line, frame)
    tail = _tail(measure)
    return [_stepped(measure.start, measure.along, -tail), _stepped(measure.end, measure.along, tail)] if tail else []


def _tail(measure: Measure) -> float:
    """Length of the line beyond its ends where the arrows stand outside, 0 where they stand inside."""
    return _TAIL if measure.length < 2 * HEAD_LENGTH + 1.2 else 0.0


class _Level(NamedTuple):
    """A dimension line at one distance from the part.

    cost, drawn : what it costs by itself, and with what its lines meet
    traces      : its lines as others see them
    """

    cost: float
    drawn: float
    first: XY
    last: XY
    pieces: tuple[tuple[XY, XY], ...]
    traces: tuple[Trace, ...]


class _Text(NamedTuple):
    """A place of the text off the middle of its dimension line, the same at every level, and what it costs."""

    cost: float
    lines: tuple[str, ...]
    box: Box
    anchor: str
    turned: bool = False


def dimension_ways(line: DimensionLine, frame: Frame, lettering: Lettering, paper: Field) -> Iterator[Way]:
    """Every way to draw a dimension, cheapest first: extension length, place of the text, lines of text."""
    measure = measure_of(line, frame)
    tail = _tail(measure)
    texts = sorted(_texts(line, measure, tail, frame.box, lettering), key=lambda text: text.cost)
    for least, level, text in _by_cost(_levels(measure, frame, tail, paper), texts):
        middle = (level.first[0] + level.last[0]) / 2, (level.first[1] + level.last[1]) / 2
        box = text.box.moved(*middle)
        if paper.allows(box):
            art = partial(_art, line.strong, text, box, level, measure.along, tail > 0)
            yield least, Candidate(box, level.traces, level.cost + text.cost, art)


def _by_cost(levels: Iterable[_Level], texts: Sequence[_Text]) -> Iterator[tuple[float, _Level, _Text]]:
    """Each text at each level with what both cost, cheapest first; a level is worked out when it may be next."""
    coming = iter(levels)
    level = next(coming, None)
    waiting: list[tuple[float, int, int, _Level]] = []
    opened = 0
    while waiting or level is not None:
        # A level costs no less with its lines than by itself, and by themselves they come cheapest first.
        while level is not None and (not waiting or level.cost + texts[0].cost <= waiting[0][0]):
            heappush(waiting, (level.drawn + texts[0].cost, opened, 0, level))
            opened += 1
            level = next(coming, None)
        cost, number, index, here = heappop(waiting)
        yield cost, here, texts[index]
        if index + 1 < len(texts):
            heappush(waiting, (here.drawn + texts[index + 1].cost, number, index + 1, here))


def _levels(measure: Measure, frame: Frame, tail: float, paper: Field) -> Iterator[_Level]:
    """The distances a dimension line can be drawn at, by their own cost, without those where it can't."""
    base, outer = _reach(measure, frame)
    steps = [(_PER_MM * step + _INSIDE, base + step) for step in _NEAR_LEVELS if base + step < outer - 1]
    tiers = [max(outer, base) + _FIRST_TIER + _TIER * tier for tier in range(_TIERS)]
    for cost, level in sorted([*steps, *((_PER_MM * (level - base), level) for level in tiers)]):
        first, last = _at_level(measure.start, measure, level), _at_level(measure.end, measure, level)
        pieces = _lines(measure, level, first, last, tail)
        # The dimension line itself must cross nothing; extension lines may.
        traces = tuple(Trace(*a, *b, weight=0.5 if number else 2.0) for number, (a, b) in enumerate(pieces))
        met = lines_cost(traces, paper)
        if met < math.inf:
            yield _Level(cost, cost + met, first, last, pieces, traces)


def _overhang(text: Box, measure: Measure, part: Box) -> float:
    """How far a text sticks out beyond the part along its dimension, mm: it would make the drawing larger.

    text : its box off the middle of the dimension line
    """
    along = measure.along
    middle = (_dot(measure.start, along) + _dot(measure.end, along)) / 2
    off = _dot(text.centre, along) + middle - _dot(part.centre, along)
    return max(0.0, abs(off) + text.reach(along) - part.reach(along))


def _art(strong: bool, text: _Text, box: Box, level: _Level, along: XY, outside: bool) -> LabelArt:
    colour, width = (look.ACCENT, 0.3) if strong else (look.INK, look.HAIR)
    block = TextBlock(text.lines, box, look.ACCENT if strong else look.INK, strong, text.anchor, text.turned)
    heads = _heads(level.first, level.last, along, outside)
    return LabelArt((block,), level.pieces, heads, colour=colour, width=width)


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


def _texts(line: DimensionLine, measure: Measure, tail: float, part: Box, lettering: Lettering) -> Iterator[_Text]:
    """Every place of the text about a dimension line."""
    forms: list[tuple[str, ...]] = [(line.text,)]
    if len(broken_at_bracket(line.text)) > 1:
        forms.append(broken_at_bracket(line.text))
    upright = abs(measure.away[0]) > 0.7
    for lines in forms:
        width, height = block_size(lines, line.strong, lettering)
        extra = 1.2 * (len(lines) - 1)
        for box, cost, anchor in _places(measure, tail, width, height):
            yield _Text(cost + extra + _OVERHANG_PER_MM * _overhang(box, measure, part), lines, box, anchor)
        if upright:
            for box, cost, _ in _places(measure, tail, height, width):
                cost += extra + 3.5 + _OVERHANG_PER_MM * _overhang(box, measure, part)
                yield _Text(cost, lines, box, "middle", turned=True)


def _places(measure: Measure, tail: float, width: float, height: float) -> Iterator[tuple[Box, float, str]]:
    """Boxes over, under and beside a dimension line, off its middle, with cost and the side text is lined up on."""
    along, away = measure.along, measure.away
    flat = box_about((0, 0), width, height)
    ahead, fits = flat.reach(along), 2 * flat.reach(along) <= measure.length - 1
    # Above a level line reads best; a line's text stands to the left of an upright one.
    above = 1.0 if away[1] < -0.3 or (abs(away[1]) <= 0.3 and away[0] < 0) else -1.0
    # Beside a tail the text starts just past the extension line.
    clear = measure.length / 2 + _PAST_EDGE if tail else 0.0
    for side in (above, -above):
        # A text wider than its dimension stands clear of the ends of the extension lines.
        aside = flat.reach(away) + (_TEXT_GAP if fits or side < 0 else _OVERSHOOT + _TEXT_GAP / 2)
        for shift in (0.0,) if fits else (0.0, ahead + clear, -ahead - clear):
            centre = _stepped(_stepped((0.0, 0.0), away, side * aside), along, shift)
            cost = (side != above) * 0.8 + (shift != 0) * 1.6
            yield box_about(centre, width, height), cost, _lined_up(along, shift)
    for sign in (1.0, -1.0):
        beyond = measure.length / 2 + tail + ahead + _TEXT_GAP + (0.4 if tail else 0.8)
        centre = _stepped((0.0, 0.0), along, sign * beyond)
        rightward = along[0] * sign > 0.3
        yield box_about(centre, width, height), 1.8 if rightward else 2.2, _lined_up(along, sign)


def _lined_up(along: XY, sign: float) -> str:
    ahead = along[0] * sign
    return "start" if ahead > 0.3 else "end" if ahead < -0.3 else "middle"
