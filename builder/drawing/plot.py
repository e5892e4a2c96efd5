"""The ground of a chart: axes with ticks and titles, and texts that keep clear of each other.

A text that finds no place is left off and noted, never drawn over another.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field

from builder.drawing import look
from builder.drawing.axis import Axis, linear_ticks, log_ticks
from builder.drawing.box import Box
from builder.drawing.drawn import Drawing
from builder.drawing.font import Lettering
from builder.drawing.lettered import TextBlock, TextBox, block_size
from builder.drawing.svg import XY, document, lines_d, stroke
from builder.model import Family
from builder.view import AnyChart

_GAP = 1.1
_TICK = 1.2
_CLEAR = 0.35
_TICK_WIDTH, _TICK_HEIGHT = 13.0, 8.0
_REACHES = (0.8, 1.8, 3.2, 5.2, 8.0)
_NEAR = 1.8


@dataclass(slots=True)
class Plot:
    """A chart being drawn: its frame on paper, the marks so far and the boxes that are taken.

    right : room kept free to the right of the frame for words beside it, mm
    """

    chart: AnyChart
    family: Family
    right: float = 1.0
    art: list[str] = field(default_factory=list)
    texts: list[TextBox] = field(default_factory=list)
    taken: list[Box] = field(default_factory=list)
    problems: list[str] = field(default_factory=list)
    lettering: Lettering = field(init=False)

    def __post_init__(self) -> None:
        self.lettering = Lettering(self.family, self.chart.text_mm)

    @property
    def line(self) -> float:
        """Height of a line of text, mm."""
        return self.lettering.above + self.lettering.below

    def axes(
        self,
        x: tuple[float, float],
        y: tuple[float, float],
        *,
        log: bool = False,
        whole: tuple[bool, bool] = (False, False),
    ) -> tuple[Axis, Axis]:
        """Draw both axes with ticks and titles; the values' places on paper."""
        top, bottom = 1.6 * self.line + _GAP, self.chart.height_mm - 2 * self.line - 2 * _GAP - _TICK
        rows = max(2, int((bottom - top) / _TICK_HEIGHT))
        y_ticks = log_ticks(*y, rows) if log else linear_ticks(*y, rows, whole[1])
        left = max((self.lettering.width(text) for _, text in y_ticks), default=0.0) + _TICK + _GAP + look.PAD
        right = self.chart.width_mm - self.right
        columns = max(2, int((right - left) / _TICK_WIDTH))
        x_ticks = log_ticks(*x, columns) if log else linear_ticks(*x, columns, whole[0])
        across, up = Axis(*x, left, right, log), Axis(*y, bottom, top, log)
        self._frame(across, up, x_ticks, y_ticks)
        self._titles(across, up)
        return across, up

    def _frame(
        self, across: Axis, up: Axis, x_ticks: Sequence[tuple[float, str]], y_ticks: Sequence[tuple[float, str]]
    ) -> None:
        left, bottom = across.start, up.start
        grid = [((left, up.at(value)), (across.end, up.at(value))) for value, _ in y_ticks]
        self.art.append(stroke(lines_d(grid), look.MANILA, look.HAIR))
        ticks = [((left - _TICK, up.at(value)), (left, up.at(value))) for value, _ in y_ticks]
        ticks += [((across.at(value), bottom), (across.at(value), bottom + _TICK)) for value, _ in x_ticks]
        edges = [((left, up.end), (left, bottom)), ((left, bottom), (across.end, bottom))]
        self.art.append(stroke(lines_d([*edges, *ticks]), look.INK, look.THIN))
        for value, text in y_ticks:
            self.put(text, (left - _TICK - _GAP / 2, up.at(value)), "end")
        for value, text in x_ticks:
            self.put(text, (across.at(value), bottom + _TICK + _GAP / 2 + self.line / 2), "middle")

    def _titles(self, across: Axis, up: Axis) -> None:
        self.put(self.chart.y_title, (look.PAD, look.PAD + self.line / 2), "start", bold=True)
        below = up.start + _TICK + self.line * 1.5 + _GAP
        self.put(self.chart.x_title, (across.end, below), "end", bold=True)

    def put(self, text: str, at: XY, anchor: str, *, bold: bool = False, colour: str = look.INK) -> bool:
        """A text with the middle of its side (or itself) at a place, if that is free and on paper; else left off."""
        box = self._box(text, at, anchor, bold)
        if not self._free(box):
            return False
        self._write(text, box, anchor, bold, colour)
        return True

    def beside(self, text: str, at: XY, radius: float, *, colour: str = look.INK) -> None:
        """A label about a mark: right, left, above, below, nearer before farther, with a line where it is far."""
        for reach in _REACHES:
            off = radius + reach
            level = off + self.line / 2
            for (dx, dy), anchor in (
                ((off, 0.0), "start"),
                ((-off, 0.0), "end"),
                ((0, -level), "middle"),
                ((0, level), "middle"),
            ):
                if self.put(text, (at[0] + dx, at[1] + dy), anchor, colour=colour):
                    if dx and reach > _NEAR:
                        side = 1 if dx > 0 else -1
                        leader = ((at[0] + side * radius, at[1]), (at[0] + dx - side * 0.4, at[1]))
                        self.art.append(stroke(lines_d([leader]), colour, look.HAIR))
                    return
        self.problems.append(f"no room for the label {text}")

    def take(self, boxes: Iterable[Box]) -> None:
        """Space that texts keep clear of."""
        self.taken.extend(boxes)

    def _box(self, text: str, at: XY, anchor: str, bold: bool) -> Box:
        width, height = block_size((text,), bold, self.lettering)
        left = at[0] - width * {"start": 0.0, "middle": 0.5, "end": 1.0}[anchor]
        return Box(left, at[1] - height / 2, left + width, at[1] + height / 2)

    def _free(self, box: Box) -> bool:
        inside = box.x0 >= 0 and box.y0 >= 0 and box.x1 <= self.chart.width_mm and box.y1 <= self.chart.height_mm
        return inside and not any(box.overlaps(other, _CLEAR) for other in self.taken)

    def _write(self, text: str, box: Box, anchor: str, bold: bool, colour: str) -> None:
        self.taken.append(box)
        self.texts.append(TextBox(text, box))
        self.art.append(TextBlock((text,), box, colour, bold, anchor).svg(self.lettering))

    def drawing(self) -> Drawing:
        """The finished chart."""
        chart = self.chart
        svg = document(chart.title, chart.alt, chart.width_mm, chart.height_mm, "".join(self.art))
        return Drawing(svg, chart.width_mm, chart.height_mm, 1.0, tuple(self.texts), tuple(self.problems))
