"""Times for people: the tables of `seamboard times`."""

from __future__ import annotations

from rich.console import Console
from rich.table import Table

from builder.commands import report
from builder.commands.times_asked import Asked
from builder.commands.times_plain import by_grade
from builder.model import (
    PlantModel,
    Results,
    Spread,
    in_colour,
    show_minutes,
    show_number,
    show_percent,
    show_use,
)
from builder.view import origin_words, time_source_words

_MOST_SOURCES = 5


def show(asked: Asked, by: str, results: Results, model: PlantModel) -> None:
    """All tables of one product in one size, grouped as asked for."""
    console = report.console(160)
    if by == "operation":
        _operations(asked, results, model, console)
    else:
        _sums(asked, by, model, console)
    if asked.time.spread is not None:
        _sureness(asked.time.spread, model, console)
    if by == "operation":
        _takes(asked, model, console)


def _table(title: str, left: tuple[str, ...], right: tuple[str, ...], last: str = "") -> Table:
    table = Table(title=title, title_justify="left", box=None, pad_edge=False)
    for name in left:
        table.add_column(name)
    for name in right:
        table.add_column(name, justify="right")
    if last:
        table.add_column(last)
    return table


def _title(asked: Asked, model: PlantModel) -> str:
    one = asked.time
    title = model.products[one.product].title
    title += f", size {one.variant}" if one.variant else ""
    return title + (f", {asked.colour}" if asked.colour else "")


def _operations(asked: Asked, results: Results, model: PlantModel, console: Console) -> None:
    one = asked.time
    columns = ("runs", "labour", "so far", "machine", "estimated")
    table = _table(_title(asked, model), ("operation", "station"), columns, "where it comes from")
    for line in one.lines:
        time = results.operations.get((line.operation, one.product, one.variant or ""))
        table.add_row(
            line.operation,
            line.station,
            f"{float(line.quantity):g}",
            show_minutes(line.own_min),
            show_minutes(line.cumulative_min),
            show_minutes(line.own_machine_min),
            show_percent(line.estimate_share, 0),
            origin_words(line, time),
        )
    table.add_section()
    totals = (show_minutes(one.standard_min), show_minutes(one.machine_min), show_percent(one.estimate_share, 0))
    table.add_row("a finished piece", "", "", "", *totals, style="bold")
    console.print(table)


def _sums(asked: Asked, by: str, model: PlantModel, console: Console) -> None:
    one = asked.time
    sums = {share.station: (share.labour_min, share.machine_min) for share in one.stations}
    if by == "grade":
        sums = by_grade(one, model)
    table = _table(_title(asked, model), ("labour grade" if by == "grade" else "station",), ("labour", "machine"))
    for name, (labour, machine) in sums.items():
        table.add_row(name or "not graded", show_minutes(labour), show_minutes(machine))
    table.add_section()
    table.add_row("a finished piece", show_minutes(one.standard_min), show_minutes(one.machine_min), style="bold")
    console.print(table)


def _sureness(spread: Spread, model: PlantModel, console: Console) -> None:
    low, high = show_number(spread.low_min, 2, trim=False), show_minutes(spread.high_min)
    sure = show_percent(spread.confidence, 0)
    console.print(
        f"between {low} and {high} ({sure} sure); exact estimates would narrow it by "
        f"{show_percent(spread.estimates_width, 0)}",
        highlight=False,
    )
    table = _table("", ("what widens it most",), ("minutes", "±", "of the variance"))
    for part in spread.parts[:_MOST_SOURCES]:
        table.add_row(
            time_source_words(part.source, model),
            show_number(part.minutes, 2, trim=False) if part.minutes else "",
            show_number(part.half_min, 2, trim=False),
            show_percent(part.share, 0),
        )
    console.print(table)
    for one in spread.following[:3]:
        minutes = show_number(one.minutes, 0)
        gain = show_percent(one.gain, 0)
        words = f"{one.cycles} cycles in about {minutes} min take away {gain} of what studies can narrow"
        console.print(f"time next: {one.operation}; {words}", highlight=False)


def _takes(asked: Asked, model: PlantModel, console: Console) -> None:
    if not asked.time.materials:
        return
    table = _table("takes, net of waste", (), ("quantity",), "material")
    for use in asked.time.materials:
        name = in_colour(use.material, asked.swaps)
        table.add_row(show_use(use), model.materials[name].title if name in model.materials else name)
    console.print(table)
