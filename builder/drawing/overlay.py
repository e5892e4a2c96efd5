"""Callouts over a picture, as a drawing of its own that is laid upon it: vectors, lettered at the printed height.

Every line has a white halo and every word a white plate, so they read on a light picture, on a dark one and in black
and white. Words are kept off each other and off what is pointed at; where they stand is photo_words'.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import lru_cache

from builder.drawing import look
from builder.drawing.box import Box, box_about
from builder.drawing.font import Lettering
from builder.drawing.lettered import TextBlock, TextBox, block_size
from builder.drawing.photo_words import Label, Pointed, placed_words
from builder.drawing.raster import ready
from builder.drawing.svg import XY, circle, element, filled, lines_d, num, polyline_d, stroke
from builder.drawing.symbol import arrowhead
from builder.model import Family, spoken_family
from builder.view import Photo, PhotoMark

_LINE, _LEADER = 0.8, 0.4
_HALO = 0.6  # on either side of a line
_HEAD_LENGTH, _HEAD_HALF = 3.6, 1.5
_DOT = 0.7
_LEADER_SHARES = (0.2, 0.35, 0.5, 0.65, 0.8)
_DISC_ROOM = 1.1  # round a number, mm


@dataclass(frozen=True, slots=True)
class Overlay:
    """Callouts drawn: an SVG as large as the picture ('' where there are none), its texts, what went wrong."""

    svg: str
    texts: tuple[TextBox, ...] = ()
    problems: tuple[str, ...] = ()


def draw_callouts(photo: Photo, family: Family | None = None) -> Overlay:
    """The callouts of a picture at its printed size. The same picture gives the same drawing, byte for byte.

    family : the lettering, that of the language spoken now when left out
    """
    return _drawn_callouts(photo, family or spoken_family())


@lru_cache(maxsize=256)
def _drawn_callouts(photo: Photo, family: Family) -> Overlay:
    if not photo.marks:
        return Overlay("")
    lettering = Lettering(family, photo.text_mm)
    paper = Box(0.0, 0.0, photo.width_mm, photo.height_mm)
    marks = [_Drawn(mark, [_on_paper(spot, paper) for spot in mark.points], paper, lettering) for mark in photo.marks]
    pointed = [one for mark in marks for one in mark.taken()]
    labels, problems = placed_words([mark.wish() for mark in marks if mark.words], pointed, paper, lettering)
    lines = [(d, width) for mark in marks for d, width in mark.lines()] + [
        (label.leader(), _LEADER) for label in labels
    ]
    art = [stroke(d, look.GROUND, width + 2 * _HALO, cap="round", join="round") for d, width in lines if d]
    art += [mark.heads(halo=True) for mark in marks]
    art += [stroke(d, look.ACCENT, width, cap="round", join="round") for d, width in lines if d]
    art += [mark.heads(halo=False) + mark.dot() for mark in marks]
    art += [_plate(label) + label.block.svg(lettering) for label in labels]
    art += [mark.disc() for mark in marks]
    svg = element(
        "svg",
        "".join(art),
        xmlns="http://www.w3.org/2000/svg",
        viewBox=f"0 0 {num(paper.width)} {num(paper.height)}",
        width=f"{num(paper.width)}mm",
        height=f"{num(paper.height)}mm",
        aria_hidden="true",
        focusable="false",
    )
    texts = tuple(TextBox(" ".join(label.block.lines), label.block.box) for label in labels)
    texts += tuple(mark.text_box() for mark in marks if mark.mark.number)
    return Overlay(ready(svg, family), texts, tuple(problems))


def _on_paper(spot: tuple[object, object], paper: Box) -> XY:
    x, y = spot
    return float(x) * paper.width, float(y) * paper.height  # type: ignore[arg-type]


def _plate(label: Label) -> str:
    box = label.block.box.grown(0.75)
    return element(
        "rect", x=box.x0, y=box.y0, width=box.width, height=box.height, rx=0.8, fill=look.GROUND,
        stroke=look.INK, stroke_width=look.THIN,
    )  # fmt: skip


@dataclass(frozen=True, slots=True)
class _Drawn:
    """A callout on paper, mm."""

    mark: PhotoMark
    at: list[XY]
    paper: Box
    lettering: Lettering

    @property
    def words(self) -> str:
        """What stands in the picture."""
        return "" if self.mark.number else self.mark.says

    @property
    def _radius(self) -> float:
        """Of a ring, or of a numbered disc."""
        if self.mark.kind == "ring":
            return max(1.5, float(self.mark.size or 0) * self.paper.width / 2)
        width, _ = block_size((str(self.mark.number),), True, self.lettering)
        return math.hypot(width, self.lettering.cap_mm) / 2 + _DISC_ROOM * 0.8

    @property
    def _middle(self) -> XY:
        """Of a disc: kept whole inside the picture."""
        room = self._radius + 0.5
        x, y = self.at[0]
        return (
            min(max(x, room), max(room, self.paper.width - room)),
            min(max(y, room), max(room, self.paper.height - room)),
        )

    @property
    def _way(self) -> XY:
        """Direction of an arrow."""
        (ax, ay), (bx, by) = self.at
        size = math.hypot(bx - ax, by - ay) or 1.0
        return (bx - ax) / size, (by - ay) / size

    def _frame(self) -> Box:
        (ax, ay), (bx, by) = self.at
        return Box(min(ax, bx), min(ay, by), max(ax, bx), max(ay, by))

    def lines(self) -> list[tuple[str, float]]:
        """Its line work as path data with widths; the leader of words is theirs."""
        match self.mark.kind:
            case "ring":
                (x, y), r = self.at[0], self._radius
                arc = f"A{num(r)} {num(r)} 0 1 1"
                return [(f"M{num(x - r)} {num(y)}{arc} {num(x + r)} {num(y)}{arc} {num(x - r)} {num(y)}Z", _LINE)]
            case "arrow":
                # The line ends inside the head, so that the point stays sharp.
                (x, y), way = self.at[1], self._way
                back = (x - way[0] * _HEAD_LENGTH * 0.8, y - way[1] * _HEAD_LENGTH * 0.8)
                return [(lines_d([(self.at[0], back)]), _LINE)]
            case "number" if len(self.at) > 1:
                return [(lines_d([(self._middle, self.at[1])]), _LEADER)]
            case "box":
                return [(polyline_d(self._frame().corners(), closed=True), _LINE)]
        return []

    def heads(self, halo: bool) -> str:
        """The head of an arrow."""
        if self.mark.kind != "arrow":
            return ""
        tip, way = self.at[1], self._way
        d = polyline_d(arrowhead(tip, way, _HEAD_LENGTH, _HEAD_HALF), closed=True)
        if halo:
            return stroke(d, look.GROUND, 2 * _HALO, join="round", fill=look.GROUND)
        return filled(d, look.ACCENT)

    def dot(self) -> str:
        """Where a leader ends."""
        if self.mark.kind not in ("number", "text") or len(self.at) < 2:
            return ""
        return circle(self.at[1], _DOT + _HALO / 2, fill=look.GROUND) + circle(self.at[1], _DOT, fill=look.ACCENT)

    def disc(self) -> str:
        """A numbered disc: white on ink, with a halo."""
        if not self.mark.number:
            return ""
        art = circle(self._middle, self._radius + 0.5, fill=look.GROUND)
        art += circle(self._middle, self._radius, fill=look.INK)
        return art + self._number().svg(self.lettering)

    def _number(self) -> TextBlock:
        text = str(self.mark.number)
        width, height = block_size((text,), True, self.lettering)
        x, y = self._middle
        top = y + self.lettering.cap_mm / 2 - self.lettering.above
        return TextBlock((text,), Box(x - width / 2, top, x + width / 2, top + height), look.GROUND, True)

    def text_box(self) -> TextBox:
        """The number as a text."""
        return TextBox(str(self.mark.number), self._number().box)

    def taken(self) -> list[Box]:
        """Space that words keep off: discs, what a ring is about, an arrow's head, what a leader points to."""
        match self.mark.kind:
            case "number":
                disc = box_about(self._middle, 2 * self._radius + 1, 2 * self._radius + 1)
                return [disc, *self._leader_room()]
            case "ring":
                return [box_about(self.at[0], 1.9 * self._radius, 1.9 * self._radius)]
            case "arrow":
                tip, way = self.at[1], self._way
                shaft = [
                    (self.at[0][0] + (tip[0] - self.at[0][0]) * share, self.at[0][1] + (tip[1] - self.at[0][1]) * share)
                    for share in (0.3, 0.5, 0.7)
                ]
                head = (tip[0] - way[0], tip[1] - way[1])
                return [box_about(head, 5.0, 5.0), *(box_about(spot, 1.4, 1.4) for spot in shaft)]
            case "box":
                return [self._frame()]
        return self._leader_room()[-1:]

    def _leader_room(self) -> list[Box]:
        """What a leader covers, its end last."""
        if len(self.at) < 2:
            return []
        (ax, ay), (bx, by) = self.at
        along = [box_about((ax + (bx - ax) * share, ay + (by - ay) * share), 1.2, 1.2) for share in _LEADER_SHARES]
        return [*along, box_about(self.at[1], 2.5, 2.5)]

    def wish(self) -> Pointed:
        """Where its words would like to stand."""
        match self.mark.kind:
            case "ring":
                return Pointed(self.words, self.at[0], self._radius, None)
            case "arrow":
                return Pointed(self.words, self.at[0], 0.0, (-self._way[0], -self._way[1]))
            case "box":
                frame = self._frame()
                return Pointed(self.words, frame.centre, 0.0, None, frame)
        to = self.at[1] if len(self.at) > 1 else None
        return Pointed(self.words, self.at[0], 0.0, None, None, fixed=True, leader_to=to)
