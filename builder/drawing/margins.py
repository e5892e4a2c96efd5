"""Space kept free round the part for its labels: estimated before they are placed, then what they really took."""

from __future__ import annotations

from dataclasses import dataclass

from builder.drawing import look
from builder.drawing.box import Box, box_about, box_round
from builder.drawing.dimension import room_beside, stays_inside, tails_of
from builder.drawing.font import Lettering
from builder.drawing.frame import Frame, breaks_for, fit
from builder.drawing.layout import Layout, break_space
from builder.view import FigureView

# The least share of the paper's width and height kept for the part.
_PART_SHARE = 0.38
_LEAST = look.PAD + look.CUT_EDGE


@dataclass(frozen=True, slots=True)
class Margins:
    """Space kept free around the part, mm on paper."""

    left: float = _LEAST
    top: float = _LEAST
    right: float = _LEAST
    bottom: float = _LEAST

    @property
    def sides(self) -> tuple[float, float, float, float]:
        """Left, top, right, bottom."""
        return self.left, self.top, self.right, self.bottom

    def area(self, paper: Box) -> Box:
        """What is left for the part."""
        return Box(paper.x0 + self.left, paper.y0 + self.top, paper.x1 - self.right, paper.y1 - self.bottom)


def frame_within(figure: FigureView, margins: Margins, paper: Box) -> Frame:
    """The largest frame the margins leave."""
    area = margins.area(paper)
    # The part keeps its share of the paper: labels that need more are a problem to report.
    width, height = max(area.width, paper.width * _PART_SHARE), max(area.height, paper.height * _PART_SHARE)
    x0 = min(max(area.x0, 0.0), paper.x1 - width)
    y0 = min(max(area.y0, 0.0), paper.y1 - height)
    area = Box(x0, y0, x0 + width, y0 + height)
    return fit(figure.bounds, breaks_for(figure, area.width, area.height), area)


def estimated(figure: FigureView, lettering: Lettering, paper: Box, wary: bool = False) -> Margins:
    """Margins before anything is placed: the overhang of symbols, and room for the dimensions on their sides.

    wary : every dimension may need its room outside the part, even where it could stand inside
    """
    frame = frame_within(figure, Margins(), paper)
    symbols = _beyond(_symbols(figure, frame), frame.box)
    rooms = [0.0] * 4
    for line in figure.dimensions:
        if wary or not stays_inside(line, frame):
            x, y = line.away
            side = (2 if x > 0 else 0) if abs(x) > abs(y) else (1 if y > 0 else 3)
            rooms[side] += room_beside(line, lettering, first=not rooms[side])
    return Margins(*(max(_LEAST, over + look.PAD, room + look.PAD) for over, room in zip(symbols, rooms, strict=True)))


def _symbols(figure: FigureView, frame: Frame) -> Box:
    """The box round the part and what has a size of its own: marks, and the arrows of short dimensions."""
    boxes = [frame.box, *(break_space(gap, frame) for gap in frame.breaks)]
    boxes += [box_about(frame.at(point), *[2 * look.RING_RADIUS + look.RING] * 2) for point in figure.ring]
    for point, radius in ((figure.start, look.START_RADIUS), (figure.end, look.END_REACH)):
        if point is not None:
            boxes.append(box_about(frame.at(point), 2 * radius, 2 * radius))
    boxes += [Box(x, y, x, y) for line in figure.dimensions for x, y in tails_of(line, frame)]
    return box_round(boxes)


def _beyond(extent: Box, part: Box) -> tuple[float, float, float, float]:
    """How far the extent reaches beyond the part: left, top, right, bottom."""
    return part.x0 - extent.x0, part.y0 - extent.y0, extent.x1 - part.x1, extent.y1 - part.y1


def used(figure: FigureView, layout: Layout, before: Margins, lettering: Lettering, paper: Box) -> Margins:
    """What the labels took on each side of the part, and more room where one found no place, or none off the lines."""
    wanted = [max(_LEAST, side + look.PAD) for side in _beyond(layout.extent, layout.work.frame.box)]
    if not layout.clear:
        outside = estimated(figure, lettering, paper, wary=True).sides
        more = lettering.pitch if layout.problems else 0.0
        sides = zip(wanted, before.sides, outside, strict=True)
        # Where dimensions had no room outside they get it; for a label without a place all other sides get some more.
        wanted = [max(now, wary) if wary > old else max(now, old) + more for now, old, wary in sides]
    return Margins(*wanted)
