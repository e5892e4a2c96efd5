"""The settings of a machine as a diagram of values: each on the range it can be set in, with what it may be.

Never a picture of a maker's panel: where on the machine a value is set stands in words, in the settings table.
"""

from __future__ import annotations

from collections.abc import Iterator

from builder.errors import TextFault
from builder.model import (
    PlantModel,
    Quantity,
    Range,
    SettingLimit,
    SettingValue,
    Tolerance,
    limit_range,
    say,
    settings_of,
)
from builder.model import show_quantity as quantity_words
from builder.view.controls import setting_fact, setting_words
from builder.view.details import DetailAsk
from builder.view.panel_view import PanelRow, PanelView, Span


def panel_figure(ask: DetailAsk) -> PanelView | None:
    """The panel of the operation a step belongs to, None where nothing is set."""
    model, operation = ask.studio.model, ask.work.name
    values = settings_of(model, operation)
    if not values:
        return None
    station = model.stations[model.operations[operation].station]
    rows = tuple(_row(name, value, station.settings.get(name), model) for name, value in values.items())
    width, _, text = ask.size
    return PanelView(
        name=ask.name,
        title=say("Settings: {station}", station=station.title),
        rows=rows,
        facts=tuple((name, setting_fact(value)) for name, value in values.items()),
        alt=say("{station} is set to: {settings}.", station=station.title, settings="; ".join(_sentences(rows))),
        width_mm=width,
        text_mm=text,
    )


def _sentences(rows: tuple[PanelRow, ...]) -> Iterator[str]:
    for row in rows:
        words = f"{row.name} {row.value}"
        if row.span is None:
            yield words
        else:
            low, high = row.span.low_words, row.span.high_words
            yield say("{setting}, of {low} to {high}", setting=words, low=low, high=high)


def _row(name: str, value: SettingValue, limit: SettingLimit | None, model: PlantModel) -> PanelRow:
    words, other = setting_words(value, model)
    return PanelRow(say(name), words, other, _span(value, limit, model))


def _span(value: SettingValue, limit: SettingLimit | None, model: PlantModel) -> Span | None:
    reach = _reach(value, limit)
    nominal = value.nominal
    if reach is None or nominal is None or reach.high.value <= reach.low.value:
        return None
    least, most = _bounds(value.value)
    first = model.plant.units
    return Span(
        float(reach.low.value),
        float(reach.high.value),
        float(nominal),
        float(nominal) if least is None else least,
        float(nominal) if most is None else most,
        quantity_words(reach.low, first, both=False),
        quantity_words(reach.high, first, both=False),
    )


def _reach(value: SettingValue, limit: SettingLimit | None) -> Range | None:
    if limit is None:
        return None
    try:
        return limit_range(limit, value.kind)
    except TextFault:
        return None  # reported where the station is checked


def _bounds(value: Quantity | Tolerance | None) -> tuple[float | None, float | None]:
    if not isinstance(value, Tolerance):
        return None, None
    return (
        None if value.low is None else float(value.low),
        None if value.high is None else float(value.high),
    )
