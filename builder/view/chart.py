"""View objects of charts: what a study, a fit or a learning curve looks like, in numbers and finished words.

Positions are worked out in the drawing room; ticks are its own, every other word comes from here.
"""

from __future__ import annotations

from dataclasses import dataclass

from builder.view.marking import shown


@dataclass(frozen=True, slots=True)
class ChartPoint:
    """A value in a chart. kind: kept | flagged | out; a flagged one has a label."""

    x: float = shown()
    y: float = shown()
    kind: str = shown(default="kept")
    label: str = shown(default="")


@dataclass(frozen=True, slots=True)
class ChartMark:
    """Something that begins at a place of the x axis: another day, another observer."""

    x: float = shown()
    label: str = shown()


@dataclass(frozen=True, slots=True)
class CurvePoint:
    """A fitted line at one place: the value, and the interval it lies in."""

    x: float = shown()
    low: float = shown()
    mid: float = shown()
    high: float = shown()


@dataclass(frozen=True, slots=True)
class Chart:
    """What every chart has.

    name   : unique in the plant, used as file name
    alt    : text alternative: what the chart shows, in one or two sentences
    x_title, y_title : axis titles with their units
    width_mm, height_mm : printed size of all of it
    text_mm : capital height of every text, mm
    """

    name: str = shown()
    title: str = shown()
    alt: str = shown()
    x_title: str = shown()
    y_title: str = shown()
    width_mm: float = shown(default=95.0)
    height_mm: float = shown(default=52.0)
    text_mm: float = shown(default=2.5)


@dataclass(frozen=True, slots=True)
class RunChart(Chart):
    """Values in the order they were taken, with their mean and the interval it lies in.

    centre : the mean and its words; band : (low, high) of its interval, None for a single value
    """

    points: tuple[ChartPoint, ...] = shown(default=())
    centre: tuple[float, str] = shown(default=(0.0, ""))
    band: tuple[float, float] | None = shown(default=None)
    marks: tuple[ChartMark, ...] = shown(default=())


@dataclass(frozen=True, slots=True)
class HistogramBar:
    """How many values lie from low to high; `flagged` of them are odd and hatched."""

    low: float = shown()
    high: float = shown()
    count: int = shown()
    flagged: int = shown(default=0)


@dataclass(frozen=True, slots=True)
class Histogram(Chart):
    """How often values occur, with their mean and its words."""

    bars: tuple[HistogramBar, ...] = shown(default=())
    centre: tuple[float, str] = shown(default=(0.0, ""))


@dataclass(frozen=True, slots=True)
class FitChart(Chart):
    """Values against something they hang on, with a fitted line inside the range it holds for.

    log : both axes are logarithmic, as a learning curve is drawn
    """

    points: tuple[ChartPoint, ...] = shown(default=())
    curve: tuple[CurvePoint, ...] = shown(default=())
    log: bool = shown(default=False)


AnyChart = RunChart | Histogram | FitChart
