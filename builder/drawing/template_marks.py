"""Finds places for the marks of a template's sheets: the check square of each, the diamonds of the joints.

Counted as in template_words.py: the thing's own mm, y down.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from functools import lru_cache
from itertools import product

from builder.drawing.box import Box, Trace
from builder.drawing.svg import XY
from builder.drawing.template_look import CAPITAL_MM
from builder.drawing.template_words import about, box_of, dimension_traces, down, places_of, traces_of
from builder.view import SheetJoint, TemplateSheet, TemplateView

SQUARE_MM = 101.6
"""The larger of the two check squares, 4 in."""
DIAMOND_MM = 6.5
"""Half the width of a joint's diamond."""
_JOINT_WORDS = 38.0


def square_place(view: TemplateView, sheet: TemplateSheet) -> XY:
    """Upper left corner of a sheet's check square: where its sides meet the least of the drawing."""
    places = places_of(view)
    window = box_of(sheet.window).grown(-1.5)
    box = box_of(sheet.window)
    traces = [t for line in view.lines for t in traces_of(line.path) if t.shares_in(box) is not None]
    traces += [Trace(*down(joint.line[0]), *down(joint.line[1])) for joint in sheet.joints]
    labels = [one.box for one in (*places.names, *((places.label,) if places.label else ()))]
    labels += [about(places.arrow)] if places.arrow else []
    labels += [Box(x, -y, x, -y).grown(5.0) for x, y in sheet.crosses]
    labels += [_joint_box(joint_place(view, joint), joint) for joint in sheet.joints]
    labels += [box_of(words.box) for words in view.words]
    best: tuple[float, XY] | None = None
    steps = 9
    for column, row in product(range(steps), range(steps)):
        x = window.x0 + (window.width - SQUARE_MM) * column / (steps - 1)
        y = window.y1 - SQUARE_MM - (window.height - SQUARE_MM) * row / (steps - 1)
        cost = _clutter(x, y, traces, labels) + 0.001 * (column + row)
        if best is None or cost < best[0]:
            best = cost, (x, y)
    assert best is not None
    return best[1]


def _clutter(x: float, y: float, traces: Sequence[Trace], labels: Sequence[Box]) -> float:
    """What the sides of a square and the words in it would meet."""
    far = SQUARE_MM
    sides = (
        Box(x - 1, y - 1, x + 1, y + far + 1),
        Box(x + far - 3, y - 1, x + far + 1, y + far + 1),
        Box(x - 1, y - 1, x + far + 1, y + 3),
        Box(x - 1, y + far - 1, x + far + 1, y + far + 1),
    )
    text = Box(x + 2, y + far - 14, x + 60, y + far - 2)
    inside = Box(x, y, x + far, y + far)
    cost = sum(3.0 for side in sides for box in labels if side.overlaps(box))
    cost += sum(1.0 for side in sides for trace in traces if trace.shares_in(side) is not None)
    cost += sum(2.0 for box in labels if text.overlaps(box))
    cost += sum(0.5 for box in labels if inside.overlaps(box))
    cost += sum(0.2 for trace in traces if trace.shares_in(inside) is not None)
    return cost + sum(2.0 for trace in traces if trace.shares_in(text) is not None)


def joint_place(view: TemplateView, joint: SheetJoint) -> XY:
    """Where the diamond of a joint stands on its line: where it and its words hide the least of the drawing.

    The same on both sheets, which draw the halves of one diamond.
    """
    return _joint_place(view, joint.line)


@lru_cache(maxsize=512)
def _joint_place(view: TemplateView, line: tuple[XY, XY]) -> XY:
    a, b = down(line[0]), down(line[1])
    traces = [trace for one in view.lines for trace in traces_of(one.path)]
    best: tuple[float, XY] | None = None
    for share in (0.5, 0.42, 0.58, 0.34, 0.66, 0.26, 0.74, 0.2):
        at = a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share
        box = _strip_box(at, abs(a[0] - b[0]) < abs(a[1] - b[1]))
        cost = sum(trace.shares_in(box) is not None for trace in traces) + abs(share - 0.5)
        if best is None or cost < best[0]:
            best = cost, at
    assert best is not None
    return best[1]


def _joint_box(at: XY, joint: SheetJoint) -> Box:
    return _strip_box(at, abs(joint.line[0][0] - joint.line[1][0]) < abs(joint.line[0][1] - joint.line[1][1]))


def _strip_box(at: XY, upright: bool) -> Box:
    """The room of a diamond and its words: along the line upward or to the right."""
    (x, y), wide = at, DIAMOND_MM + 0.5
    if upright:
        return Box(x - wide, y - _JOINT_WORDS, x + wide, y + wide)
    return Box(x - wide, y - wide, x + _JOINT_WORDS, y + wide)


def clear_share(view: TemplateView, start: XY, end: XY, wide: float, *, of_dimension: bool = False) -> float | None:
    """How far along a line its text stands, so that no joint tears it and, unless it is a dimension's own, no
    dimension line crosses it; None when there is no such place."""
    length = math.dist(start, end)
    joints = {joint.line for sheet in view.sheets for joint in sheet.joints}
    lines = [Trace(*down(a), *down(b)) for a, b in joints]
    if not of_dimension:
        lines += dimension_traces(view, CAPITAL_MM)
    for share in (0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.35, 0.65):
        if min(share, 1 - share) * length < wide / 2 + 1 and share != 0.5:
            continue
        x, y = start[0] + (end[0] - start[0]) * share, start[1] + (end[1] - start[1]) * share
        upright = abs(end[1] - start[1]) > abs(end[0] - start[0])
        dx, dy = (3.5, wide / 2 + 1) if upright else (wide / 2 + 1, 3.5)
        if not any(line.shares_in(Box(x - dx, y - dy, x + dx, y + dy)) for line in lines):
            return share
    return None
