"""`seamboard study --all`: the plant's own standard data, as its studies are now, and what could become part of it."""

from __future__ import annotations

import json
from pathlib import Path
from typing import TYPE_CHECKING

import click

from builder.errors import UsageError

if TYPE_CHECKING:
    from rich.console import Console

    from builder.commands.standard_rows import ElementRow
    from builder.computing import Candidate, StationFit
    from builder.model import PlantModel, Pooled

_MOST_NAMES = 3


def standard_data(folder: Path, as_json: bool, as_csv: bool, to: Path | None) -> None:
    """Show the table of a plant's elements; with `to`, write it there with a figure of each fit."""
    from builder.commands import report, standard_rows
    from builder.computing import station_fits
    from builder.pipeline import today_of

    if as_json and as_csv:
        raise UsageError("--json or --csv, not both")
    checked, linked, results = report.computed(folder)
    model = linked.model
    rows = standard_rows.element_rows(model, results, today_of())
    table = standard_rows.as_csv(rows, model)
    if to is not None:
        _write(rows, table, model, to)
    if as_csv:
        click.echo(table, nl=False)
        return
    found = standard_rows.candidates(model, results)
    if as_json:
        click.echo(json.dumps(standard_rows.as_json(rows, found, model), ensure_ascii=False, indent=1))
    else:
        console = report.console(180)
        _show(rows, found, model, console)
        if checked.book is not None:
            _stations(list(station_fits(model, checked.book, results, linked.dimensions.values)), model, console)


def _write(rows: list[ElementRow], table: str, model: PlantModel, folder: Path) -> None:
    """The table as CSV, and each fit as a figure."""
    from builder.drawing import draw_chart
    from builder.view import element_chart
    from builder.writing import write_file

    write_file(folder / "standard-data.csv", table.encode())
    for row in rows:
        chart = element_chart(row.element, row.data, model.plant.units) if row.data is not None else None
        if chart is not None:
            write_file(folder / f"{row.name}.svg", draw_chart(chart).svg.encode())


def _show(rows: list[ElementRow], found: list[Candidate], model: PlantModel, console: Console) -> None:
    derived, typed = [row for row in rows if row.data is not None], [row for row in rows if row.data is None]
    if derived:
        _derived(derived, model, console)
    if typed:
        _typed(typed, console)
    if found:
        _candidates(found, console)
    if not rows:
        console.print("this plant has no elements")


def _derived(rows: list[ElementRow], model: PlantModel, console: Console) -> None:
    from rich.table import Table

    table = Table(title="derived from studies", title_justify="left", box=None, pad_edge=False)
    table.add_column("element", no_wrap=True)
    for name in ("time", "±", "holds for"):
        table.add_column(name)
    for name in ("steps", "readings"):
        table.add_column(name, justify="right")
    for name in ("alike", "rests on it"):
        table.add_column(name)
    for row in rows:
        assert row.data is not None
        steps, readings = str(len(row.data.steps)), str(row.data.readings)
        time, half, span = _time(row, model)
        table.add_row(row.name, time, half, span, steps, readings, _explained(row), _names(row.rests))
    console.print(table)


def _time(row: ElementRow, model: PlantModel) -> tuple[str, str, str]:
    """The time or the line, how sure it is, and what it holds for."""
    from builder.model import show_seconds
    from builder.view import element_words

    data = row.data
    assert data is not None
    time, span = element_words(row.element, data, model.plant.units)
    half = ""
    if data.pooled is not None:
        half = show_seconds(data.pooled.half_s, 2) if data.pooled.half_s is not None else "not known"
    elif data.fit is not None:
        half = f"{show_seconds(data.fit.middle_half_s, 2)} of {show_seconds(data.fit.middle_s, 2)} in the middle"
    return time, half, span


def _explained(row: ElementRow) -> str:
    """Whether the steps pooled are the same work; of a line, how much of their spread it explains."""
    from builder.view import line_words

    assert row.data is not None
    return line_words(row.data.fit) if row.data.fit is not None else _alike(row.data.pooled)


def _alike(pooled: Pooled | None) -> str:
    from builder.view import differ_words

    return "" if pooled is None else "yes" if pooled.homogeneous else differ_words(pooled)


def _names(names: tuple[str, ...]) -> str:
    """The first few, and how many more."""
    if not names:
        return "nothing yet"
    more = len(names) - _MOST_NAMES
    return ", ".join(names[:_MOST_NAMES]) + (f" and {more} more" if more > 0 else "")


def _typed(rows: list[ElementRow], console: Console) -> None:
    from rich.table import Table

    from builder.model import show_seconds

    table = Table(title="typed", title_justify="left", box=None, pad_edge=False)
    for name in ("element", "time", "basis", "typed on", "days old", "rests on it"):
        table.add_column(name, justify="right" if name in ("time", "days old") else "left")
    for row in rows:
        time = show_seconds(row.element.time.value, 2) if row.element.time is not None else ""
        age = "" if row.age_days is None else str(row.age_days)
        table.add_row(row.name, time, row.element.basis, str(row.element.date or "no date"), age, _names(row.rests))
    console.print(table)


def _candidates(found: list[Candidate], console: Console) -> None:
    from rich.table import Table

    from builder.model import show_seconds

    table = Table(title="timed in several studies, could be derived", title_justify="left", box=None, pad_edge=False)
    for name in ("work", "steps", "readings", "mean", "alike", "from"):
        table.add_column(name, justify="right" if name in ("steps", "readings", "mean") else "left")
    for one in found:
        work = f"{one.name} (element, typed)" if one.element else f"{one.name} ({one.work or 'handwork'})"
        mean = show_seconds(one.pooled.mean_s, 2)
        table.add_row(work, str(len(one.steps)), str(one.pooled.n), mean, _alike(one.pooled), _names(one.steps))
    console.print(table)


def _stations(fits: list[StationFit], model: PlantModel, console: Console) -> None:
    """Top speeds as the studied seams say them, next to those typed."""
    from rich.table import Table

    if not fits:
        return
    table = Table(title="sewing stations, from their studied seams", title_justify="left", box=None, pad_edge=False)
    for name in ("station", "held by"):
        table.add_column(name)
    for name in ("seams", "top speed st/min", "typed", "start, finish and hand work s", "corner stop s"):
        table.add_column(name, justify="right")
    table.add_column("")
    for one in fits:
        table.add_row(one.station, one.held or "not said", str(one.seams), *_constants(one, model), one.refusal)
    console.print(table)


def _constants(one: StationFit, model: PlantModel) -> tuple[str, str, str, str]:
    from builder.model import show_number, show_quantity

    typed = model.stations[one.station].pace.top_speed
    shown = show_quantity(typed, model.plant.units, both=False) if typed is not None else ""
    if one.fit is None:
        return "", shown, "", ""
    speed, fixed, corner = one.fit.top_speed_st_s, one.fit.fixed_s, one.fit.corner_s
    per_minute = f"{show_number(60 * speed.value, 0)} ± {show_number(60 * speed.error, 0)}"
    stop = f"{show_number(corner.value, 2)} ± {show_number(corner.error, 2)}" if corner is not None else ""
    return per_minute, shown, f"{show_number(fixed.value, 2)} ± {show_number(fixed.error, 2)}", stop
