"""Finds places for the words on a template, at true size: the label of the piece and the names of its lines.

All in the thing's own mm with y DOWN (the sign of y turned), so that a box here is a box on paper but for a move.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise, product

from builder.drawing.box import Box, Trace
from builder.drawing.font import Lettering
from builder.drawing.svg import XY
from builder.drawing.template_look import CAPITAL_MM
from builder.geometry import Segment
from builder.model import ATKINSON
from builder.view import TemplateLine, TemplateView

LETTERS = Lettering(ATKINSON, CAPITAL_MM)
ARROW_MM = 40.0
_CLEAR = 1.2
_CHORD = 0.2
_GRID = 23
_SHARES = (0.5, 0.35, 0.65, 0.2, 0.8)


@dataclass(frozen=True, slots=True)
class Label:
    """Lines of text in a box; `turned` ones are read from the right."""

    box: Box
    lines: tuple[str, ...]
    turned: bool = False


@dataclass(frozen=True, slots=True)
class Places:
    """Where the words of a template stand: the label of the piece, its grain arrow (from, to), the names of lines."""

    label: Label | None
    arrow: tuple[XY, XY] | None
    names: tuple[Label, ...]


def down(point: XY) -> XY:
    """A point of the thing as this file counts: y down."""
    return point[0], -point[1]


def traces_of(path: Sequence[Segment]) -> list[Trace]:
    """Line work as straight traces."""
    found = []
    for segment in path:
        points = [down(point) for point in segment.to_polyline(_CHORD)]
        found += [Trace(*a, *b) for a, b in pairwise(points)]
    return found


def size_of(lines: Sequence[str]) -> tuple[float, float]:
    """Width and height of lines of text, mm; a line that begins with * is bold."""
    width = max(LETTERS.width(line.removeprefix("*"), line.startswith("*")) for line in lines)
    return width, LETTERS.above + LETTERS.below + (len(lines) - 1) * LETTERS.pitch


@lru_cache(maxsize=64)
def places_of(view: TemplateView) -> Places:
    """The places of a template's words, the same on all its sheets."""
    traces = [trace for line in view.lines for trace in traces_of(line.path)]
    taken = [box_of(words.box) for words in view.words]
    label, arrow = None, None
    if view.outline:
        label, arrow = _label(view, [*traces, *dimension_traces(view, 2 * CAPITAL_MM)], taken)
        taken += [label.box] if label is not None else []
        taken += [about(arrow)] if arrow is not None else []
    names = []
    traces += [Trace(*down(a), *down(b)) for a, b in {joint.line for sheet in view.sheets for joint in sheet.joints}]
    for line in view.lines:
        found = _name(line, traces, taken) if line.words else None
        if found is not None:
            names.append(found)
            taken.append(found.box)
    return Places(label, arrow, tuple(names))


def box_of(bounds: tuple[float, float, float, float]) -> Box:
    return Box(bounds[0], -bounds[3], bounds[2], -bounds[1])


def about(arrow: tuple[XY, XY]) -> Box:
    (ax, ay), (bx, by) = arrow
    return Box(min(ax, bx), min(ay, by), max(ax, bx), max(ay, by)).grown(1.5)


def dimension_traces(view: TemplateView, off: float = 0.0) -> Iterator[Trace]:
    """Dimension lines, and so far off to both sides of them, where their texts stand."""
    for one in view.dimensions:
        a, b = down(one.start), down(one.end)
        yield Trace(*a, *b)
        for foot, tip in zip(one.feet, (a, b), strict=True):
            if math.dist(down(foot), tip) > 1.5:
                yield Trace(*down(foot), *tip)
        if off:
            dx, dy = (off, 0.0) if abs(a[0] - b[0]) < abs(a[1] - b[1]) else (0.0, off)
            yield from (Trace(a[0] + s * dx, a[1] + s * dy, b[0] + s * dx, b[1] + s * dy) for s in (-1, 1))


def _label(
    view: TemplateView, traces: Sequence[Trace], taken: Sequence[Box]
) -> tuple[Label | None, tuple[XY, XY] | None]:
    """Where the piece's own words and its grain arrow stand: in the piece, on one sheet; fewer words on a small one."""
    edge = traces_of(view.outline)
    lines = (f"*{view.label[0]}", *view.label[1:])
    for kept, with_arrow in product((lines, lines[:2], lines[:1]), (True, False)):
        arrow = ARROW_MM if with_arrow and view.grain is not None else 0.0
        wide, tall = size_of(kept)
        upright = bool(arrow) and view.grain is not None and round(view.grain) % 180 == 90
        size = (wide + 5.0, max(tall, arrow)) if upright else (max(wide, arrow), tall + (5.0 if arrow else 0.0))
        box = _home(size, edge, (traces, taken), view)
        if box is None or (view.grain is not None and not arrow and len(kept) > 1):
            continue
        if not arrow:
            return Label(box, kept), None
        if upright:
            x, half = box.x0 + 1.5, arrow / 2
            middle = box.centre[1]
            words = Box(box.x0 + 5.0, middle - tall / 2, box.x1, middle + tall / 2)
            return Label(words, kept), ((x, middle + half), (x, middle - half))
        y = box.y1 - 1.5
        words = Box(box.x0, box.y0, box.x1, box.y0 + tall)
        return Label(words, kept), ((box.x0, y), (box.x0 + arrow, y))
    return None, None


def _home(
    size: tuple[float, float],
    edge: Sequence[Trace],
    clutter: tuple[Sequence[Trace], Sequence[Box]],
    view: TemplateView,
) -> Box | None:
    """The best place for a box inside the piece: crossing the fewest lines, on one sheet, near the middle."""
    xs, ys = [v for t in edge for v in (t.ax, t.bx)], [v for t in edge for v in (t.ay, t.by)]
    whole = Box(min(xs), min(ys), max(xs), max(ys))
    best: tuple[float, Box] | None = None
    for column, row in product(range(_GRID), range(_GRID)):
        x = whole.x0 + (whole.width - size[0]) * column / (_GRID - 1)
        y = whole.y0 + (whole.height - size[1]) * row / (_GRID - 1)
        box = Box(x, y, x + size[0], y + size[1])
        wide = box.grown(2.0)
        if not wide.inside(whole) or not _inside(edge, box.centre) or any(t.shares_in(wide) for t in edge):
            continue
        crossed = sum(trace.shares_in(wide) is not None for trace in clutter[0])
        crossed += sum(wide.overlaps(other) for other in clutter[1])
        torn = not any(wide.inside(box_of(sheet.window).grown(-16.0 * bool(sheet.joints))) for sheet in view.sheets)
        off = abs(box.centre[0] - whole.centre[0]) / whole.width + abs(box.centre[1] - whole.centre[1]) / whole.height
        cost = 5.0 * crossed + 3.0 * torn + off
        if best is None or cost < best[0]:
            best = cost, box
    return best[1] if best is not None else None


def _inside(edge: Sequence[Trace], point: XY) -> bool:
    """Whether a point lies in a closed ring of traces: a ray to the right meets it an odd number of times."""
    x, y = point
    met = 0
    for trace in edge:
        if (trace.ay > y) != (trace.by > y):
            met += trace.ax + (y - trace.ay) / (trace.by - trace.ay) * (trace.bx - trace.ax) > x
    return met % 2 == 1


def _name(line: TemplateLine, traces: Sequence[Trace], taken: Sequence[Box]) -> Label | None:
    """A free place beside a line for its name, None when there is none: a name is a help, the line is the fact."""
    for box, turned in _beside(line):
        wide = box.grown(0.3)
        if any(wide.overlaps(other, _CLEAR) for other in taken) or any(t.shares_in(wide) for t in traces):
            continue
        return Label(box, (line.words,), turned)
    return None


def _beside(line: TemplateLine) -> Iterator[tuple[Box, bool]]:
    wide, tall = size_of((line.words,))
    longest = max(line.path, key=lambda segment: segment.length)
    if line.closed and longest.length < wide:
        boxes = [segment.bounds() for segment in line.path]
        right, left = max(box[2] for box in boxes), min(box[0] for box in boxes)
        bottom, top = min(box[1] for box in boxes), max(box[3] for box in boxes)
        for x, y in ((right + 4, -(top + bottom) / 2), (left - 4 - wide, -(top + bottom) / 2), (right, -top - 5)):
            yield Box(x, y - tall / 2, x + wide, y + tall / 2), False
        return
    for share, side in product(_SHARES, (1, -1)):
        (x, y), (dx, dy) = down(longest.point_at(share)), longest.tangent_at(share)
        if abs(dx) >= abs(dy):
            middle = y - side * (_CLEAR + tall / 2)
            yield Box(x - wide / 2, middle - tall / 2, x + wide / 2, middle + tall / 2), False
        else:
            middle = x - side * (_CLEAR + tall / 2)
            yield Box(middle - tall / 2, y - wide / 2, middle + tall / 2, y + wide / 2), True
