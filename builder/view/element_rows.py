"""The plant's standard data as the overview of times shows it: a line an element, and the chart of each fit."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from builder.model import (
    Element,
    ElementData,
    Fit,
    PlantModel,
    Pooled,
    Results,
    refusal_words,
    show_percent,
    show_range,
    show_seconds,
    span_words,
)
from builder.view.chart import FitChart
from builder.view.element_charts import Units, element_chart, fit_words
from builder.view.marking import shown
from builder.view.pages import Link


@dataclass(frozen=True, slots=True)
class ElementLine:
    """An element of work: its time or its line, how sure it is, what it holds for, what it rests on.

    basis : where its time comes from; note: what an engineer should look at, '' for nothing
    rests : operations that take time from it
    """

    title: str = shown()
    time: str = shown()
    half: str = shown()
    span: str = shown()
    basis: str = shown()
    note: str = shown(default="")
    rests: tuple[Link, ...] = shown(default=())
    chart: FitChart | None = shown(default=None)


def element_lines(model: PlantModel, results: Results, links: Mapping[str, str]) -> Iterator[ElementLine]:
    """Elements derived from studies first, then typed ones, each in the order of the files."""
    users = results.element_users()
    for derived in (True, False):
        for name, element in model.elements.items():
            data = results.standard_data.get(name)
            if (data is not None) == derived:
                rests = tuple(
                    Link(links[one], model.operations[one].title) for one in users.get(name, ()) if one in links
                )
                yield _derived(element, data, rests, model.plant.units) if data else _typed(element, rests, model)


def _typed(element: Element, rests: tuple[Link, ...], model: PlantModel) -> ElementLine:
    time = show_seconds(element.time.value, 2) if element.time is not None else ""
    span = show_range(element.longest_side, model.plant.units, both=False) if element.longest_side else ""
    since = f", {element.date.isoformat()}" if element.date is not None else ""
    readings = f", {element.readings}" if element.readings else ""
    return ElementLine(element.title, time, "", span, f"typed, {element.basis}{readings}{since}", "", rests)


def _derived(element: Element, data: ElementData, rests: tuple[Link, ...], units: Units) -> ElementLine:
    basis, (time, span) = f"{data.readings} readings of {len(data.steps)} steps", element_words(element, data, units)
    if data.fit is not None:
        half = f"± {show_seconds(data.fit.middle_half_s, 2)} in the middle"
        note = f"the {line_words(data.fit)} of the spread"
        return ElementLine(element.title, time, half, span, basis, note, rests, element_chart(element, data, units))
    if data.pooled is not None:
        half = f"± {show_seconds(data.pooled.half_s, 2)}" if data.pooled.half_s is not None else ""
        note = f"its steps {differ_words(data.pooled)}" if data.pooled.homogeneous is False else ""
        return ElementLine(element.title, time, half, span, basis, note, rests)
    return ElementLine(element.title, "", "", "", basis, time, rests)


def element_words(element: Element, data: ElementData, units: Units) -> tuple[str, str]:
    """The time or the line of a derived element, or why there is none; and what it holds for."""
    if data.fit is not None:
        spans = [span_words(name, span, units) for name, span in zip(data.fit.variables, data.fit.ranges, strict=True)]
        return fit_words(data.fit, units), ", ".join(spans)
    if data.pooled is not None:
        sides = show_range(element.longest_side, units, both=False) if element.longest_side else ""
        return show_seconds(data.pooled.mean_s, 2), sides
    return refusal_words(data.refusal, len(data.steps), units) if data.refusal is not None else "", ""


def line_words(fit: Fit) -> str:
    """How much of the steps' spread a line explains."""
    return f"line explains {show_percent(fit.r2, 0)}"


def differ_words(pooled: Pooled) -> str:
    """By how much the steps of an element differ, '' where nothing can be said."""
    if pooled.homogeneous is None or pooled.between_sd_s is None:
        return ""
    return f"differ by ± {show_percent(pooled.between_sd_s / pooled.mean_s, 0)}"
