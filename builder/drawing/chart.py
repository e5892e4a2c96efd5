"""Charts drawn: run chart, histogram, fitted line. Every difference of colour is one of shape as well."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from functools import lru_cache

from builder.drawing import look
from builder.drawing.axis import Axis, padded
from builder.drawing.box import Box
from builder.drawing.drawn import Drawing
from builder.drawing.font import Lettering
from builder.drawing.hatch import hatch
from builder.drawing.plot import Plot
from builder.drawing.raster import ready
from builder.drawing.svg import XY, circle, filled, lines_d, polyline_d, stroke
from builder.model import Family, spoken_family
from builder.view import AnyChart, ChartPoint, FitChart, Histogram, HistogramBar, RunChart

_DOT, _SMALL_DOT, _MANY = 0.75, 0.45, 60
_RING = 1.7
_MOST_LABELS = 12
_HATCH = 1.1
_DASH = "1.6 1.1"


def draw_chart(chart: AnyChart) -> Drawing:
    """Draw a chart in the language spoken now. The same chart gives the same drawing, byte for byte."""
    return _drawn(chart, spoken_family())


@lru_cache(maxsize=512)
def _drawn(chart: AnyChart, family: Family) -> Drawing:
    if isinstance(chart, RunChart):
        drawing = _run(chart, family)
    elif isinstance(chart, Histogram):
        drawing = _histogram(chart, family)
    else:
        drawing = _fit(chart, family)
    return replace(drawing, svg=ready(drawing.svg, family))


def _run(chart: RunChart, family: Family) -> Drawing:
    value, text = chart.centre
    plot = Plot(chart, family, right=_room_beside(chart, family, text))
    # What was kept out may lie far off: it doesn't set the scale, and is drawn at the edge.
    heights = [point.y for point in chart.points if point.kind != "out"] + [value, *(chart.band or ())]
    numbers = [point.x for point in chart.points]
    across, up = plot.axes((min(numbers) - 0.6, max(numbers) + 0.6), padded(heights), whole=(True, False))
    if chart.band is not None:
        _band(plot, across, up, chart.band)
    _mean(plot, across, up, value, text)
    for mark in chart.marks:
        x = across.at(mark.x)
        plot.art.append(stroke(lines_d([((x, up.end), (x, up.start))]), look.EARLIER, look.HAIR, dash=_DASH))
        above, inside = up.end - 0.4 - plot.line / 2, up.end + plot.line / 2
        if not plot.put(mark.label, (x, above), "middle", colour=look.EARLIER):
            plot.put(mark.label, (x + 0.8, inside), "start", colour=look.EARLIER)
    kept = [(across.at(point.x), up.at(point.y)) for point in chart.points if point.kind != "out"]
    plot.art.append(stroke(polyline_d(kept), look.EARLIER, look.HAIR))
    _points(plot, across, up, chart.points)
    return plot.drawing()


def _band(plot: Plot, across: Axis, up: Axis, band: tuple[float, float]) -> None:
    """The interval of the mean: a pale stretch between dashed lines."""
    low, high = up.at(band[0]), up.at(band[1])
    corners = [(across.start, high), (across.end, high), (across.end, low), (across.start, low)]
    plot.art.append(filled(polyline_d(corners, closed=True), look.MANILA_PALE))
    edges = [((across.start, y), (across.end, y)) for y in (high, low)]
    plot.art.append(stroke(lines_d(edges), look.EARLIER, look.HAIR, dash=_DASH))


def _mean(plot: Plot, across: Axis, up: Axis, value: float, text: str) -> None:
    y = up.at(value)
    plot.art.append(stroke(lines_d([((across.start, y), (across.end, y))]), look.INK, look.THIN))
    plot.put(text, (across.end + 0.9, y), "start")


def _points(plot: Plot, across: Axis, up: Axis, points: Sequence[ChartPoint]) -> None:
    radius = _SMALL_DOT if len(points) > _MANY else _DOT
    places = [(point, (across.at(point.x), up.at(min(max(point.y, up.low), up.high)))) for point in points]
    for point, at in places:
        plot.art.append(_cross(at) if point.kind == "out" else circle(at, radius, fill=look.INK))
        if point.kind == "flagged":
            plot.art.append(circle(at, _RING, colour=look.ACCENT, width=look.RING))
    plot.take(_about(at, _RING if point.kind == "flagged" else radius) for point, at in places)
    labelled = [(point, at) for point, at in places if point.label]
    for point, at in labelled[:_MOST_LABELS]:
        plot.beside(point.label, at, _RING, colour=look.ACCENT if point.kind == "flagged" else look.INK)
    if len(labelled) > _MOST_LABELS:
        plot.problems.append(f"{len(labelled) - _MOST_LABELS} labels left off")


def _about(at: XY, radius: float) -> Box:
    return Box(at[0] - radius, at[1] - radius, at[0] + radius, at[1] + radius)


def _cross(at: XY, size: float = 0.95) -> str:
    x, y = at
    pieces = [((x - size, y - size), (x + size, y + size)), ((x - size, y + size), (x + size, y - size))]
    return stroke(lines_d(pieces), look.INK, look.THIN)


def _histogram(chart: Histogram, family: Family) -> Drawing:
    value, text = chart.centre
    plot = Plot(chart, family, right=2.0)
    low, high = chart.bars[0].low, chart.bars[-1].high
    most = max(bar.count for bar in chart.bars)
    across, up = plot.axes((low, high), (0, most * 1.06), whole=(False, True))
    for bar in chart.bars:
        _bar(plot, across, up, bar)
    x = across.at(min(max(value, low), high))
    plot.art.append(stroke(lines_d([((x, up.end - 0.4), (x, up.start))]), look.INK, look.THIN, dash=_DASH))
    width = plot.lettering.width(text)
    anchor = "start" if x + width + 1 < chart.width_mm else "end"
    plot.put(text, (x + (0.8 if anchor == "start" else -0.8), up.end - 0.6 - plot.line / 2), anchor)
    return plot.drawing()


def _bar(plot: Plot, across: Axis, up: Axis, bar: HistogramBar) -> None:
    if not bar.count:
        return
    left, right, top = across.at(bar.low), across.at(bar.high), up.at(bar.count)
    corners = [(left, top), (right, top), (right, up.start), (left, up.start)]
    plot.art.append(filled(polyline_d(corners, closed=True), look.MANILA))
    if bar.flagged:
        cut = up.at(bar.flagged)
        odd = [(left, cut), (right, cut), (right, up.start), (left, up.start)]
        plot.art.append(stroke(lines_d(hatch(odd, _HATCH)), look.ACCENT, look.THIN))
    plot.art.append(stroke(polyline_d(corners, closed=True), look.INK, look.HAIR))


def _fit(chart: FitChart, family: Family) -> Drawing:
    plot = Plot(chart, family, right=3.0)
    xs = [point.x for point in chart.points] + [one.x for one in chart.curve]
    ys = [point.y for point in chart.points] + [y for one in chart.curve for y in (one.low, one.high)]
    if chart.log:
        x_range, y_range = (min(xs) * 0.9, max(xs) * 1.15), (min(ys) * 0.9, max(ys) * 1.1)
    else:
        x_range, y_range = padded(xs), padded([*ys, 0.0] if min(ys) < 0.3 * max(ys) else ys)
    across, up = plot.axes(x_range, y_range, log=chart.log)
    if chart.curve:
        _curve(plot, across, up, chart)
    _points(plot, across, up, chart.points)
    return plot.drawing()


def _curve(plot: Plot, across: Axis, up: Axis, chart: FitChart) -> None:
    upper = [(across.at(one.x), up.at(one.high)) for one in chart.curve]
    lower = [(across.at(one.x), up.at(one.low)) for one in chart.curve]
    plot.art.append(filled(polyline_d([*upper, *reversed(lower)], closed=True), look.MANILA_PALE))
    for edge in (upper, lower):
        plot.art.append(stroke(polyline_d(edge), look.EARLIER, look.HAIR, dash=_DASH))
    middle = [(across.at(one.x), up.at(one.mid)) for one in chart.curve]
    plot.art.append(stroke(polyline_d(middle), look.ACCENT, look.RING))


def _room_beside(chart: AnyChart, family: Family, text: str) -> float:
    return Lettering(family, chart.text_mm).width(text) + 1.8
