"""Detail views: a small feature on a large part is shown large, with the whole part beside it as a locator.

What is drawn is decided here: strokes are cut to the window, areas keep their fill without a false edge.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from builder.geometry import Bounds, Line, Point, clip_area, clip_segment
from builder.view.figure import Stroke
from builder.view.strokes_shaping import WHOLE

_WORTH_IT = 0.34
"""A detail is drawn when what is worked now takes less than this share of the part, both ways."""
_ROOM = 2.0
_LEAST_MM = 56.0


def detail_window(focus: Bounds, whole: Bounds, paper: tuple[float, float]) -> Bounds | None:
    """The window around the work of a step, None when the whole part shows it well enough.

    focus : box of what is worked now; whole : box of everything; paper : width and height of the figure
    """
    wide, tall = focus[2] - focus[0], focus[3] - focus[1]
    all_wide, all_tall = whole[2] - whole[0], whole[3] - whole[1]
    if max(wide / all_wide, tall / all_tall) >= _WORTH_IT or max(all_wide, all_tall) < 2 * _LEAST_MM:
        return None
    ratio = paper[1] / paper[0]
    width = max(_ROOM * wide, _ROOM * tall / ratio, _LEAST_MM)
    height = min(width * ratio, all_tall)
    x = _held((focus[0] + focus[2] - width) / 2, width, whole[0], whole[2])
    y = _held((focus[1] + focus[3] - height) / 2, height, whole[1], whole[3])
    return x, y, x + width, y + height


def _held(start: float, length: float, low: float, high: float) -> float:
    """A window's start, so that it looks past the part's edge by no more than a little."""
    past = 0.08 * length
    if length >= high - low:
        return (low + high - length) / 2
    return min(max(start, low - past), high + past - length)


def cut_to(strokes: Sequence[Stroke], window: Bounds) -> Iterator[Stroke]:
    """Strokes as seen through a window, with its frame as the last."""
    for stroke in strokes:
        if stroke.role in ("hole", "drill hole", "slot", "hardware", "notch", *WHOLE):
            if all(_within(segment.start, window) for segment in stroke.path):
                yield stroke
            continue
        if stroke.closed and stroke.fill:
            corners = clip_area(stroke.path, window)
            if len(corners) > 2:
                edge = tuple(Line(a, b) for a, b in zip(corners, (*corners[1:], corners[0]), strict=True) if a != b)
                yield Stroke("area", stroke.when, edge, closed=True, fill=stroke.fill)
        pieces = tuple(
            (piece, number)
            for segment, number in zip(stroke.path, stroke.numbers or [""] * len(stroke.path), strict=True)
            for piece in clip_segment(segment, window)
        )
        if pieces:
            numbers = tuple(number for _, number in pieces) if stroke.numbers else ()
            path = tuple(piece for piece, _ in pieces)
            whole = stroke.closed and path == stroke.path
            yield replace(stroke, path=path, numbers=numbers, closed=whole, fill="")


def _within(point: Point, box: Bounds) -> bool:
    return box[0] <= point[0] <= box[2] and box[1] <= point[1] <= box[3]


def window_frame(window: Bounds) -> Stroke:
    """The window drawn on the locator."""
    left, bottom, right, top = window
    corners = ((left, bottom), (right, bottom), (right, top), (left, top))
    sides = tuple(Line(a, b) for a, b in zip(corners, (*corners[1:], corners[0]), strict=True))
    return Stroke("window", "now", sides, closed=True)
