"""A section as a figure: the layers cut across a seam, the threads through them, how far the seam lies from each edge.

Decides what is near enough to be shown, which distances are named, and the words. How high plies lie is
section_goods.py, how threads run section_thread.py.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from fractions import Fraction

from builder.geometry import CutAsk, Line, Pierced, Point, Section, seam_class, section_of, tape_width
from builder.model import (
    Quantity,
    find_feature,
    plain,
    say,
    show_quantity,
)
from builder.view.details import DetailAsk
from builder.view.figure import Callout, DimensionLine, FigureView, Stroke, bounds_of
from builder.view.section_callouts import goods_callouts, room_left
from builder.view.section_goods import Goods, Placed, goods_of
from builder.view.section_thread import CORD, Place, needle_places, needles, threads
from builder.view.section_words import CLASS_WORDS, SectionWords, section_alt, section_facts, section_words
from builder.view.words import tolerance_pair

_REACH_MM, _BENDS_MM, _BEYOND_MM, _WIDEST_MM = 26.0, 36.0, 8.0, 52.0
_PRINTED_MM = 58.0
_MOST_DIMENSIONS = 3
_NEEDLE_OFF, _NEEDLE_LONG = 0.8, 7.2
# Between the lowest thread and the extension line of a seam.
_CLEAR = 0.1
_ALIKE_MM = 0.011
# A distance nobody checks is worth a dimension from here on.
_WORTH_MM = 0.8


def section_figure(ask: DetailAsk) -> FigureView | None:
    """The picture of `section of FEATURE`; None where the cut meets no goods."""
    ref = find_feature(ask.shown.name, ask.work.homes)
    shape = ask.book.shape(ref.part, ask.studio.values) if ref is not None else None
    if ref is None or shape is None or ref.feature not in shape.features:
        return None
    now = ask.work.now(ask.step) | {(ref.part, ref.feature)}
    values = ask.studio.values
    cut = CutAsk(
        ask.work.before(ask.step) | now,
        lambda name: ask.book.shape(name, values),
        lambda tape: tape_width(ask.studio.model, tape),
    )
    section = section_of(shape, ref.feature, cut)
    if section is None:
        return None
    words = section_words(ask, section)
    figure = drawn_section(section, ask.name, words, now, ask.size)
    return replace(figure, facts=section_facts(section, section.goods.within(*_window(section)), ask))


def drawn_section(
    section: Section,
    name: str,
    words: SectionWords,
    now: frozenset[tuple[str, str]],
    size: tuple[float, float, float] = (98.0, 62.0, 2.8),
) -> FigureView:
    """A section drawn, its words given.

    now  : (part, feature) sewn in this step, in the accent; all other stitches are earlier ones
    size : printed width, most height and capital height, mm
    """
    low, high = _window(section)
    scale = _PRINTED_MM / (high - low)
    plies = section.goods.within(low, high)
    goods = goods_of(plies, scale, lambda part: words.thickness.get(part))
    stitches = tuple(_stitch_strokes(section, goods, words, now))
    standing = _needles(section, goods, words, stitches)
    strokes = (*_goods_strokes(goods, words), *stitches, *(Stroke("needle", "now", (one,)) for one in standing))
    kind = seam_class(section)
    notes = tuple(goods_callouts(goods, words.labels, words.sided))
    left, bottom, right, top = bounds_of(strokes)
    title = say("Section of {seam}, thickness enlarged", seam=plain(section.feature))
    return FigureView(
        name=name,
        title=title,
        strokes=strokes,
        bounds=(left - room_left(goods, notes), bottom, right, top),
        facts=(),
        alt=section_alt(section, plies, words, kind),
        side=say("{seam}, thickness enlarged", seam=say(CLASS_WORDS[kind.word]))
        if kind is not None
        else say("thickness enlarged"),
        dimensions=tuple(_dimensions(section, goods, words, _lowest(stitches))),
        callouts=(*notes, Callout(standing[-1].start, say("{needles} from above", needles=_counted(standing)), True)),
        width_mm=size[0],
        height_mm=size[1],
        text_mm=size[2],
    )


def _window(section: Section) -> tuple[float, float]:
    """The stretch shown: the seam, what ends or turns near it, and a little of what goes on."""
    ends = [end.at for one in section.goods.plies for end in (one.low, one.high) if end.kind != "on"]
    near = [0.0, *(at for at in ends if abs(at) <= _REACH_MM)]
    near += [one.at for one in section.goods.bends if abs(one.at) <= _BENDS_MM]
    near += [one.at for one in section.others if abs(one.at) < _REACH_MM / 2]
    low, high = min(near), max(near)
    goes_left = any(one.low.at < low - 0.5 for one in section.goods.plies)
    goes_right = any(one.high.at > high + 0.5 for one in section.goods.plies)
    low, high = low - (_BEYOND_MM if goes_left else 1.0), high + (_BEYOND_MM if goes_right else 1.0)
    if high - low > _WIDEST_MM:
        low = max(low, high - _WIDEST_MM) if high < _WIDEST_MM / 2 else max(low, -_WIDEST_MM / 2)
        high = min(high, low + _WIDEST_MM)
    return low, high


def _goods_strokes(goods: Goods, words: SectionWords) -> Iterator[Stroke]:
    for band in goods.bands():
        yield Stroke("ply", "part", band.ring, closed=True, fill=words.kinds.get(band.part, "cloth"), width=band.thick)
        if band.part in words.sided:
            yield Stroke("ply wrong", "part", band.wrong, width=band.thick)
        for cut in band.raw:
            yield Stroke("cut edge", "part", (cut,))
        for one in (goods.placed[name] for name in band.names):
            yield Stroke(
                "keep clear", "part", (Line((one.low, one.middle), (one.high, one.middle)),), width=one.thick / 2
            )


def _stitch_strokes(
    section: Section, goods: Goods, words: SectionWords, now: frozenset[tuple[str, str]]
) -> Iterator[Stroke]:
    """Earlier stitches first, the seam itself last."""
    others = [one for one in section.others if _seen(goods, one)]
    others.sort(key=lambda one: (one.part, one.feature) in now)
    for one in (*others, section.seam):
        when = "now" if (one.part, one.feature) in now else "earlier"
        stitch = words.stitches.get((one.part, one.feature), "301")
        place, width = _place(goods, one), one.width * goods.scale
        yield from threads(stitch, place, when, width)
        for x in needle_places(stitch, place, width):
            yield Stroke("keep clear", when, (Line((x, place.bottom - CORD), (x, place.top + CORD)),), width=1.6 * CORD)


def _needles(section: Section, goods: Goods, words: SectionWords, stitches: Sequence[Stroke]) -> list[Line]:
    """The needles of the seam, from the left, clear of its threads: each over the place it goes in."""
    seat = _place(goods, section.seam)
    stitch = words.stitches.get((section.part, section.feature), "301")
    tip = max(one.bounds()[3] for stroke in stitches if stroke.role == "thread" for one in stroke.path) + _NEEDLE_OFF
    places = needles(stitch, seat, section.seam.width * goods.scale)
    return [Line((x, tip + _NEEDLE_LONG), (x, tip)) for x in places]


def _counted(standing: Sequence[Line]) -> str:
    return say("needle") if len(standing) == 1 else say("needles")


def _lowest(stitches: Sequence[Stroke]) -> float:
    """The underside of the lowest thread, printed mm."""
    drawn = [one for stroke in stitches if stroke.role == "thread" for one in stroke.path]
    return min((one.bounds()[1] for one in drawn), default=0.0) - CORD / 2


def _seen(goods: Goods, one: Pierced) -> bool:
    held = [goods.placed[name] for name in one.plies if name in goods.placed]
    return any(ply.low < one.at * goods.scale < ply.high for ply in held)


def _place(goods: Goods, one: Pierced) -> Place:
    """Where a stitch lies on the drawing, with the edge to its right."""
    held = [goods.placed[name] for name in one.plies if name in goods.placed]
    return Place(
        one.at * goods.scale,
        min(ply.bottom for ply in held),
        max(ply.top for ply in held),
        min(ply.high for ply in held),
        goods.scale,
    )


Mark = tuple[float, Placed | None]
"""A place distances are taken from, mm along the cut, with the ply that ends there; None for the seam."""


def _dimensions(section: Section, goods: Goods, words: SectionWords, low: float) -> Iterator[DimensionLine]:
    """Distances checked in this step first, then from the seam to what is nearest on either side.

    low : underside of the lowest thread: the seam's own extension line begins below it
    """
    marks = _marks(section, goods)
    pairs = [(a, b) for number, a in enumerate(marks) for b in marks[number + 1 :]]
    drawn: set[tuple[float, float]] = set()
    for tolerance in words.checks:
        if tolerance.nominal is None or tolerance.dimension != "length":
            continue
        wanted = float(tolerance.nominal.value)
        found = [pair for pair in pairs if abs(abs(pair[0][0] - pair[1][0]) - wanted) < _ALIKE_MM]
        found.sort(key=lambda pair: (pair[0][1] is not None and pair[1][1] is not None, -max(pair[0][0], pair[1][0])))
        if found and _key(found[0]) not in drawn:
            drawn.add(_key(found[0]))
            value, other = tolerance_pair(tolerance, words.units)
            yield _line(found[0], goods, low, f"{value} ({other})" if other else value, strong=True)
    for pair in _nearest(marks):
        if len(drawn) < _MOST_DIMENSIONS and _key(pair) not in drawn:
            drawn.add(_key(pair))
            apart = Quantity.of(Fraction(round(abs(pair[0][0] - pair[1][0]) * 100), 100), "length", words.units)
            text = show_quantity(apart, words.units)  # type: ignore[arg-type]
            yield _line(pair, goods, low, text)


def _marks(section: Section, goods: Goods) -> list[Mark]:
    """The seam, and every end and fold of what it holds, once for each place."""
    marks: dict[float, Mark] = {0.0: (0.0, None)}
    held = {one.name for piece in section.held() for one in piece}
    for name, ply in goods.placed.items():
        for end in (ply.ply.low, ply.ply.high):
            if name in held and end.kind != "on":
                marks.setdefault(round(end.at, 3), (end.at, ply))
    for one in section.others:
        if (one.part, one.feature) == (section.part, section.feature) and _seen(goods, one):
            marks.setdefault(round(one.at, 3), (one.at, None))
    return list(marks.values())


def _nearest(marks: Sequence[Mark]) -> Iterator[tuple[Mark, Mark]]:
    """The seam with the nearest end or fold to the right, and to the left; further rows only where they are checked."""
    marks = [marks[0], *(one for one in marks if one[1] is not None)]
    right = min((one for one in marks if one[0] > _WORTH_MM), key=lambda one: one[0], default=None)
    left = max((one for one in marks if one[0] < -_WORTH_MM), key=lambda one: one[0], default=None)
    for other in (right, left):
        if other is not None:
            yield marks[0], other


def _key(pair: tuple[Mark, Mark]) -> tuple[float, float]:
    low, high = sorted((round(pair[0][0], 2), round(pair[1][0], 2)))
    return low, high


def _line(pair: tuple[Mark, Mark], goods: Goods, low: float, text: str, strong: bool = False) -> DimensionLine:
    points: list[Point] = []
    for at, ply in sorted(pair, key=lambda one: one[0]):
        points.append((at * goods.scale, ply.bottom if ply is not None else low - _CLEAR))
    return DimensionLine(points[0], points[1], (0.0, -1.0), text, strong)
