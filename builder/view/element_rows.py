"""The plant's standard data as the overview of times shows it: a line an element, and the chart of each fit."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from builder.model import (
    Element,
    ElementData,
    PlantModel,
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
    resting = _resting(results)
    for derived in (True, False):
        for name, element in model.elements.items():
            data = results.standard_data.get(name)
            if (data is not None) == derived:
                rests = tuple(
                    Link(links[one], model.operations[one].title) for one in resting.get(name, ()) if one in links
                )
                yield _derived(element, data, rests, model.plant.units) if data else _typed(element, rests, model)


def _resting(results: Results) -> dict[str, dict[str, None]]:
    found: dict[str, dict[str, None]] = {}
    for (operation, _, _), time in results.operations.items():
        for step in time.steps:
            for part in step.parts:
                if part.source.startswith("element:"):
                    found.setdefault(part.source.removeprefix("element:"), {})[operation] = None
    return found


def _typed(element: Element, rests: tuple[Link, ...], model: PlantModel) -> ElementLine:
    time = show_seconds(element.time.value, 2) if element.time is not None else ""
    span = show_range(element.longest_side, model.plant.units, both=False) if element.longest_side else ""
    since = f", {element.date.isoformat()}" if element.date is not None else ""
    readings = f", {element.readings}" if element.readings else ""
    return ElementLine(element.title, time, "", span, f"typed, {element.basis}{readings}{since}", "", rests)


def _derived(element: Element, data: ElementData, rests: tuple[Link, ...], units: Units) -> ElementLine:
    basis = f"{data.readings} readings of {len(data.steps)} steps"
    if data.fit is not None:
        fit = data.fit
        spans = [span_words(name, span, units) for name, span in zip(fit.variables, fit.ranges, strict=True)]
        half = f"± {show_seconds(fit.middle_half_s, 2)} in the middle"
        note = f"the line explains {show_percent(fit.r2, 0)} of the spread"
        chart = element_chart(element, data, units)
        return ElementLine(element.title, fit_words(fit, units), half, ", ".join(spans), basis, note, rests, chart)
    if data.pooled is not None:
        pooled = data.pooled
        half = f"± {show_seconds((pooled.interval_s[1] - pooled.interval_s[0]) / 2, 2)}" if pooled.interval_s else ""
        span = show_range(element.longest_side, units, both=False) if element.longest_side else ""
        note = ""
        if pooled.homogeneous is False and pooled.between_sd_s is not None:
            note = f"its steps differ by ± {show_percent(pooled.between_sd_s / pooled.mean_s, 0)}"
        return ElementLine(element.title, show_seconds(pooled.mean_s, 2), half, span, basis, note, rests)
    why = refusal_words(data.refusal, len(data.steps), units) if data.refusal is not None else ""
    return ElementLine(element.title, "", "", "", basis, why, rests)
