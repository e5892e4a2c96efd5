"""What a figure shows, in sentences made from its geometry: for who hears the page, or wants it said exactly.

Its short alternative names the part and what is worked; this says how large it is, where the work lies, how long it
is, where it begins and ends, what is ringed and which dimensions are worked to.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator

from builder.geometry import Bounds, Point, box_around
from builder.model import phrase, say, show_number
from builder.view.figure import Callout, FigureView, Stroke

_WORK = {
    "seam": phrase("seam"),
    "box": phrase("box seam"),
    "bartack": phrase("bartack"),
    "fold": phrase("fold"),
    "hole": phrase("hole"),
    "drill hole": phrase("drill hole"),
    "slot": phrase("slot"),
    "hardware": phrase("fitting"),
    "notch": phrase("notch"),
    "strip": phrase("strip"),
    "tag": phrase("label"),
    "binding": phrase("binding"),
}
"""Roles of line work that are work, as an operator calls them."""
_PLACES = (
    (phrase("at the bottom left"), phrase("at the bottom"), phrase("at the bottom right")),
    (phrase("at the left"), phrase("in the middle"), phrase("at the right")),
    (phrase("at the top left"), phrase("at the top"), phrase("at the top right")),
)
_ALL_OVER = 0.85
"""Work this much of the picture wide and high goes all round it."""
_MOST = 8
"""Things of a kind named one by one; of more only the number is said."""


def description(figure: FigureView) -> tuple[str, ...]:
    """Sentences on a figure, from the whole to the single thing."""
    return tuple(one for one in _sentences(figure) if one)


def _sentences(figure: FigureView) -> Iterator[str]:
    width, height = _mm(figure.bounds[2] - figure.bounds[0]), _mm(figure.bounds[3] - figure.bounds[1])
    if figure.locator is None:
        yield say("What is drawn is {width} wide and {height} high.", width=width, height=height)
    else:
        yield say("A cutting of it is drawn large: {width} wide and {height} high.", width=width, height=height)
    yield from _worked(figure)
    yield _route(figure)
    if figure.ring:
        places = "; ".join(_place(point, figure.bounds) for point in figure.ring[:_MOST])
        yield say("Ringed: {places}.", places=places)
    strong = [line.text for line in figure.dimensions if line.strong]
    if strong:
        yield say("Worked to: {dimensions}.", dimensions="; ".join(map(_flat, strong)))
    other = [line.text for line in figure.dimensions if not line.strong]
    if other:
        yield say("Other dimensions: {dimensions}.", dimensions="; ".join(map(_flat, other)))
    yield _named(figure.callouts, figure.bounds)


def _worked(figure: FigureView) -> Iterator[str]:
    """What is done in the step, kind by kind: where each lies and how long or large it is."""
    kinds: dict[str, list[Stroke]] = {}
    for stroke in figure.strokes:
        if stroke.when == "now" and stroke.role in _WORK and stroke.path:
            kinds.setdefault(stroke.role, []).append(stroke)
    for role, strokes in kinds.items():
        if len(strokes) > _MOST:
            yield say("Worked now: {count} × {kind}.", count=len(strokes), kind=say(_WORK[role]))
            continue
        for stroke in strokes:
            box = box_around([segment.bounds() for segment in stroke.path])
            place = _place_of(box, figure.bounds)
            yield say(
                "Worked now: {kind} {place}, {size}.", kind=say(_WORK[role]), place=place, size=_size(stroke, box)
            )


def _size(stroke: Stroke, box: Bounds) -> str:
    if stroke.closed or stroke.role in ("box", "hole", "drill hole", "hardware", "slot", "strip", "tag"):
        wide, high = box[2] - box[0], box[3] - box[1]
        return say("{width} by {height}", width=_mm(wide), height=_mm(high))
    return say("{length} long", length=_mm(math.fsum(segment.length for segment in stroke.path)))


def _route(figure: FigureView) -> str:
    if figure.start is None:
        return ""
    begin = _place(figure.start, figure.bounds)
    if figure.end is None or math.dist(figure.start, figure.end) < 1:
        return say("It begins {place} and ends where it began.", place=begin)
    return say("It begins {place} and ends {end}.", place=begin, end=_place(figure.end, figure.bounds))


def _named(callouts: Iterable[Callout], bounds: Bounds) -> str:
    """The words in the picture, each with where it points."""
    words = [f"{_flat(one.text)}, {_place(one.at, bounds)}" for one in callouts]
    return say("Named in it: {words}.", words="; ".join(words)) if words else ""


def _place_of(box: Bounds, bounds: Bounds) -> str:
    wide, high = bounds[2] - bounds[0], bounds[3] - bounds[1]
    if box[2] - box[0] > _ALL_OVER * wide and box[3] - box[1] > _ALL_OVER * high:
        return say("all round")
    return _place(((box[0] + box[2]) / 2, (box[1] + box[3]) / 2), bounds)


def _place(point: Point, bounds: Bounds) -> str:
    """Which ninth of the picture a point lies in."""
    across = _third(point[0], bounds[0], bounds[2])
    up = _third(point[1], bounds[1], bounds[3])
    return say(_PLACES[up][across])


def _third(value: float, low: float, high: float) -> int:
    share = (value - low) / (high - low) if high > low else 0.5
    return min(max(int(share * 3), 0), 2)


def _mm(value: float) -> str:
    return f"{show_number(value, 0 if value >= 10 else 1)} mm"


def _flat(text: str) -> str:
    return " ".join(text.split())
