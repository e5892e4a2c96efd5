"""All labels of a figure at one scale: gathers the ways of each, lets label_place choose, and scores the result."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property

from builder.drawing import look, symbol
from builder.drawing.area import Area
from builder.drawing.arrows import direction_arrows
from builder.drawing.box import Box, box_about, box_round, traces_of
from builder.drawing.dimension import dimension_ways
from builder.drawing.disc import disc_ways
from builder.drawing.field import Field
from builder.drawing.font import Lettering
from builder.drawing.frame import Break, Frame
from builder.drawing.grain import grain_ways
from builder.drawing.label import Word, corner_ways, word_ways
from builder.drawing.label_cost import Way
from builder.drawing.label_place import Choice, place
from builder.drawing.lettered import LabelArt
from builder.drawing.line_work import LineWork, line_work
from builder.drawing.run import Run, run_of
from builder.drawing.scale_bar import scale_bar_ways
from builder.drawing.svg import XY
from builder.drawing.tag_art import tag_ways, tag_words
from builder.drawing.turn_mark import turn_ways
from builder.view import Callout, FigureView

# A label left out is worse than any clutter; a word said twice must stand close to its point.
_LEFT_OUT = 10_000.0
_SPARE = 4.0


@dataclass(frozen=True, slots=True)
class Asked:
    """A label asked for.

    name     : how a problem calls it
    spare    : left out without a word when it can't stand close to its point (the same word stands elsewhere)
    together : left out with all others of this name when one of them finds no place
    """

    name: str
    ways: Iterator[Way]
    spare: bool = False
    together: str = ""


@dataclass
class Layout:
    """A figure at one scale, with its labels.

    marks    : symbols on top of the line work, as markup
    labels   : the drawings of the labels placed, each with whether it needs a plate
    problems : what could not be placed, as sentences
    cost     : of the labels, lower is clearer
    """

    work: LineWork
    marks: list[str]
    labels: list[tuple[LabelArt, bool]]
    problems: list[str]
    cost: float

    @property
    def clear(self) -> bool:
        """Is every label placed, and no text on lines?"""
        return not self.problems and not any(on_lines for _, on_lines in self.labels)

    @cached_property
    def extent(self) -> Box:
        """Everything drawn, mm on paper."""
        boxes = [self.work.frame.box.grown(look.CUT_EDGE / 2), *self.work.blocked]
        pieces: list[tuple[XY, XY]] = []
        for art, _ in self.labels:
            boxes += [text.box for text in art.texts]
            boxes += [art.disc.grown(look.THIN / 2)] if art.disc is not None else []
            pieces += art.pieces
        xs = [x for ax, _, bx, _, _ in self.work.traces for x in (ax, bx)]
        ys = [y for _, ay, _, by, _ in self.work.traces for y in (ay, by)]
        for start, end in pieces:
            xs += (start[0], end[0])
            ys += (start[1], end[1])
        if xs:
            boxes.append(Box(min(xs), min(ys), max(xs), max(ys)))
        return box_round(boxes)


def lay_out(figure: FigureView, frame: Frame, paper: Box, lettering: Lettering) -> Layout:
    """Line work, symbols and labels of a figure in a frame; no label leaves the paper."""
    work = line_work(figure, frame)
    marks = _marks(figure, work)
    field = Field(paper.grown(-look.PAD), work.blocked, work.traces)
    asked = list(_labels(figure, work, lettering, field))
    choices = place([one.ways for one in asked], field, passes=2)
    drawn, problems = _sorted_out(asked, choices)
    labels = [(choice.candidate.art(), choice.on_lines) for choice in drawn]
    return Layout(work, marks, labels, problems, sum(one.cost for one in drawn) + _LEFT_OUT * len(problems))


def _sorted_out(asked: Sequence[Asked], choices: Sequence[Choice | None]) -> tuple[list[Choice], list[str]]:
    """The choices to draw, and a sentence for each label that has none."""
    lost = {one.together for one, choice in zip(asked, choices, strict=True) if choice is None and one.together}
    problems = [f"No free place for the {name}." for name in sorted(lost)]
    drawn: list[Choice] = []
    for one, choice in zip(asked, choices, strict=True):
        if one.together in lost or (one.spare and (choice is None or choice.cost > _SPARE)):
            continue
        if choice is None:
            problems.append(f"No free place for the {one.name}.")
        else:
            drawn.append(choice)
    return drawn, problems


def _marks(figure: FigureView, work: LineWork) -> list[str]:
    """Breaks, arrows, start, end and rings; also tells the line work what they cover."""
    frame = work.frame
    marks = _breaks(work)
    route = [run_of(segment, frame) for segment in figure.route]
    start, end = _ends(figure, frame)
    for at, radius in ((start, look.START_RADIUS), (end, look.END_REACH)):
        if at is not None:
            work.blocked.append(box_about(at, 2 * radius, 2 * radius))
    for middle, way in direction_arrows(route, work.blocked):
        marks.append(symbol.direction_arrow(middle, way, look.ACCENT))
        work.blocked.append(box_about(middle, look.ARROW_LENGTH, look.ARROW_LENGTH))
    if end is not None:
        marks.append(symbol.end_mark(end, _way_at_end(route, end)))
    if start is not None:
        marks.append(symbol.start_mark(start))
    for point in figure.ring:
        centre = frame.at(point)
        marks.append(symbol.ring(centre))
        work.blocked.append(box_about(centre, 2 * look.RING_RADIUS + look.RING, 2 * look.RING_RADIUS + look.RING))
    return marks


def _breaks(work: LineWork) -> list[str]:
    marks = []
    for gap in work.frame.breaks:
        space = break_space(gap, work.frame)
        mark, lines = symbol.break_mark(space, gap.axis)
        marks.append(mark)
        for line in lines:
            work.traces += traces_of(line)
        work.blocked.append(space)
    return marks


def break_space(gap: Break, frame: Frame) -> Box:
    """The space a break takes on paper."""
    box = frame.box
    middle = frame.at(((gap.low + gap.high) / 2, (gap.low + gap.high) / 2))[gap.axis]
    if gap.axis == 0:
        return Box(middle - 1.3, box.y0 - 1.4, middle + 1.3, box.y1 + 1.4)
    return Box(box.x0 - 1.4, middle - 1.3, box.x1 + 1.4, middle + 1.3)


def _ends(figure: FigureView, frame: Frame) -> tuple[XY | None, XY | None]:
    """Start and end on paper; no end where it is the start."""
    start = frame.at(figure.start) if figure.start is not None else None
    end = frame.at(figure.end) if figure.end is not None else None
    if start is not None and end is not None and math.dist(start, end) < 0.6:
        end = None
    return start, end


def _way_at_end(route: Sequence[Run], end: XY) -> XY:
    """The direction sewn last, or of the run that ends there."""
    if not route:
        return 1.0, 0.0
    last = min(reversed(route), key=lambda run: round(math.dist(run.end, end), 3))
    return last.at(1.0)[1]


def _labels(figure: FigureView, work: LineWork, lettering: Lettering, field: Field) -> Iterator[Asked]:
    """Every label asked for: those bound to a place first, spare ones last."""
    for number, run in _numbered(figure, work.frame):
        yield Asked(
            f"order number {number}", disc_ways(number, run, lettering, field), together="order numbers of the runs"
        )
    for said, box in tag_words(figure, work.frame):
        yield Asked(f"words {said}", tag_ways(said, box, lettering, field), spare=True)
    for word in _start_and_end(figure, work.frame):
        yield Asked(f"word {word.text}", word_ways(word, lettering, field))
    for line in sorted(figure.dimensions, key=lambda one: (not one.strong, math.dist(one.start, one.end))):
        yield Asked(f"dimension {line.text}", dimension_ways(line, work.frame, lettering, field))
    first = {note.text: note for note in reversed(figure.callouts)}
    for note in first.values():
        yield _callout(note, work, lettering, field)
    area = Area(work.areas[0] if work.areas else work.frame.box.corners())
    if figure.side:
        yield Asked(f"label {figure.side}", corner_ways(figure.side, area, lettering, field))
    if figure.turned:
        yield Asked("mark of turning over", turn_ways(figure.words[3], area, lettering, field))
    if figure.grain is not None:
        yield Asked(f"label {figure.words[2]}", grain_ways(figure.words[2], figure.grain, area, lettering, field))
    if figure.scale_bar and not work.frame.breaks:
        yield Asked("scale bar", scale_bar_ways(figure.scale_bar, work.frame.scale, area, lettering, field), spare=True)
    for note in figure.callouts:
        if note is not first[note.text] and math.dist(note.at, first[note.text].at) * work.frame.scale > 1:
            yield _callout(note, work, lettering, field, spare=True)


def _callout(note: Callout, work: LineWork, lettering: Lettering, field: Field, spare: bool = False) -> Asked:
    at = work.frame.at(note.at)
    word = Word(note.text, at, _symbol_radius(at, work.blocked), note.accent, note.accent)
    return Asked(f"label {note.text}", word_ways(word, lettering, field), spare)


def _start_and_end(figure: FigureView, frame: Frame) -> Iterator[Word]:
    start, end = _ends(figure, frame)
    if start is not None:
        yield Word(figure.words[0], start, look.START_RADIUS, accent=True, bold=True)
    if end is not None:
        yield Word(figure.words[1], end, look.END_REACH, accent=True, bold=True)


def _symbol_radius(at: XY, blocked: Sequence[Box]) -> float:
    """Radius of the widest symbol drawn about the point, 0 when there is none."""
    return max(
        (max(box.width, box.height) / 2 for box in blocked if math.dist(box.centre, at) < 0.5),
        default=0.0,
    )


def _numbered(figure: FigureView, frame: Frame) -> Iterator[tuple[str, Run]]:
    for one in figure.strokes:
        for segment, number in zip(one.path, one.numbers, strict=False):
            if number:
                yield number, run_of(segment, frame)
