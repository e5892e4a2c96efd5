"""What the settings card of a machine says: the settings of each operation, and the limits of the station."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace

from builder.model import KINDS, PlantModel, Station, limit_range, say, show_number, show_quantity, show_range
from builder.view.cards import CardSource, LimitLine, SettingsGroup
from builder.view.controls import proved_by
from builder.view.sheet import Setting, SheetView


def card_source(sheet: SheetView) -> CardSource:
    """A sheet as a card names it."""
    return CardSource(sheet.code, sheet.title, sheet.revision, sheet.date, sheet.tag)


def setting_groups(sheets: Iterable[SheetView]) -> tuple[SettingsGroup, ...]:
    """Operations with equal settings together, in the order of the sheets."""
    found: dict[tuple[Setting, ...], dict[str, CardSource]] = {}
    for sheet in sheets:
        # Where each is set, and how it is proved, stands in the station's own table.
        settings = tuple(replace(named_colours(one, sheet), set_at="", verify="") for one in sheet.settings)
        if settings:
            found.setdefault(settings, {}).setdefault(sheet.code, card_source(sheet))
    return tuple(SettingsGroup(tuple(sources.values()), settings) for settings, sources in found.items())


def named_colours(setting: Setting, sheet: SheetView) -> Setting:
    """A setting that points to the sheet's table of colours with its material in each colour instead."""
    by_colour = [
        f"{row.colour}: {title}"
        for row in sheet.colours
        for (material, _), title in zip(row.exact, row.values, strict=True)
        if material == setting.exact
    ]
    return replace(setting, value="; ".join(dict.fromkeys(by_colour)) or setting.value)


def limit_lines(station: Station, model: PlantModel) -> Iterator[LimitLine]:
    """The station's settings with what they may be, where they are set and how they are proved."""
    table = KINDS[station.kind].settings
    for name, limit in station.settings.items():
        limits = tuple(_choice(one, model) for one in limit.choices or ())
        span = limit_range(limit, table[name]) if name in table else None
        if span is not None:
            shown = show_range(span, model.plant.units)
            # one layer is not `1…1`
            limits = (shown.partition("…")[0] if span.low.value == span.high.value else shown,)
        proof = proved_by(limit.verify, limit.how)
        yield LimitLine(say(name), limits, limit.set_at, f"{proof[:1].upper()}{proof[1:].rstrip('.')}.")


def _choice(name: str, model: PlantModel) -> str:
    return model.materials[name].title if name in model.materials else name


def stored_programs(station: Station, model: PlantModel) -> Iterator[tuple[str, str]]:
    """Stored patterns by name, with what each sews."""
    for name, one in station.programs.items():
        length, width = (show_quantity(side, model.plant.units, both=False) for side in (one.length, one.width))
        yield name, say("{count} stitches, {size}", count=one.stitches, size=f"{length} × {width}")


def machine_facts(station: Station, model: PlantModel) -> Iterator[tuple[str, str]]:
    """What else limits the machine or is done to it, as far as somebody typed it."""
    first = model.plant.units
    pace = station.pace
    for name, value in (
        (say("top speed"), pace.top_speed),
        (say("foot lift"), station.foot_lift),
        (say("widest strip"), station.strip_width),
    ):
        if value is not None:
            yield name, show_quantity(value, first)
    if station.needles is not None:
        yield say("needles"), str(station.needles)
    if station.needle_hours is not None:
        hours = show_number(station.needle_hours.value / 3600, 1)
        yield say("change the needles"), say("every {hours} h of sewing", hours=hours)
    if station.bed is not None:
        width, length = (show_quantity(one, first, both=False) for one in (station.bed.width, station.bed.length))
        yield say("bed"), f"{width} × {length}"
    for thread, bobbin in station.bobbins.items():
        title = model.materials[thread].title if thread in model.materials else thread
        yield say("a full bobbin of {thread}", thread=title), show_quantity(bobbin.holds, first, both=False)
