"""`seamboard times`: cumulative standard times and what a piece takes, as tables or as JSON."""

from __future__ import annotations

import json
import sys
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from builder.errors import UsageError

if TYPE_CHECKING:
    from rich.console import Console

    from builder.model import PlantModel, ProductTime


@dataclass(frozen=True, slots=True)
class _Asked:
    """A product in one size, with the colour asked for: None is the reference colour."""

    time: ProductTime
    colour: str | None
    swaps: Mapping[str, str]


@click.command("times")
@click.argument("product", required=False)
@click.option("--in", "folder", default="instructions", type=click.Path(path_type=Path), help="The plant's folder.")
@click.option("--variant", metavar="SIZE, COLOUR", help="One size, one colour, or both, of PRODUCT.")
@click.option("--json", "as_json", is_flag=True, help="One object for programs, unrounded.")
@click.option("--quiet", is_flag=True, help="No warnings, only the times.")
def command(product: str | None, folder: Path, variant: str | None, as_json: bool, quiet: bool) -> None:
    """Standard minutes (labour) and machine minutes of PRODUCT, or of all products, and what a piece takes."""
    from builder.commands import report
    from builder.pipeline import check_plant

    if variant is not None and product is None:
        raise UsageError("--variant belongs to a product: name it")
    checked = check_plant(folder)
    if checked.has_errors or checked.results is None or checked.linked is None:
        report.show_findings(checked)
        sys.exit(1)
    model = checked.linked.model
    _known(product, model)
    asked = list(_asked(checked.results.products, model, product, variant))
    if as_json:
        plain = {"batch": checked.results.batch, "products": [_plain(one) for one in asked]}
        click.echo(json.dumps(plain, ensure_ascii=False, indent=1))
        return
    if not quiet and checked.findings:
        report.show_findings(checked)
    for one in asked:
        _show(one, model)


def _known(product: str | None, model: PlantModel) -> None:
    if product is not None and product not in model.products:
        from builder.model import near

        close = near(product, model.products)
        hint = f"; did you mean {close[0]}?" if close else f"; products: {', '.join(model.products)}"
        raise UsageError(f"no product is called {product}{hint}")


def _asked(
    times: tuple[ProductTime, ...], model: PlantModel, product: str | None, variant: str | None
) -> Iterator[_Asked]:
    from builder.commands.variant import read_variant

    for one in times:
        if product not in (None, one.product):
            continue
        spec = model.products[one.product]
        size, colour = read_variant(variant or "", spec)
        if size in (None, one.variant):
            yield _Asked(one, colour, spec.colours.get(colour or "", {}))


def _plain(asked: _Asked) -> dict[str, Any]:
    from builder.model import in_colour

    one = asked.time
    return {
        "product": one.product,
        "variant": one.variant,
        "colour": asked.colour,
        "standard_minutes": one.standard_min,
        "machine_minutes": one.machine_min,
        "estimate_share": one.estimate_share,
        "operations": [
            {
                "operation": line.operation,
                "station": line.station,
                "quantity": float(line.quantity),
                "own_minutes": line.own_min,
                "own_machine_minutes": line.own_machine_min,
                "cumulative_minutes": line.cumulative_min,
            }
            for line in one.lines
        ],
        "materials": [
            {
                "material": in_colour(use.material, asked.swaps),
                "area_mm2": use.area_mm2,
                "length_mm": use.length_mm,
                "pieces": use.pieces,
                "seam_mm": use.seam_mm,
            }
            for use in one.materials
        ],
    }


def _show(asked: _Asked, model: PlantModel) -> None:
    from rich.console import Console

    # Into a file or a pipe there is no width to keep to; a cut name would be worse than a long line.
    console = Console()
    console = console if console.is_terminal else Console(width=140)
    _times_table(asked, model, console)
    _takes_table(asked, model, console)


def _times_table(asked: _Asked, model: PlantModel, console: Console) -> None:
    from rich.table import Table

    from builder.model import show_minutes, show_percent

    one = asked.time
    title = model.products[one.product].title
    title += f", size {one.variant}" if one.variant else ""
    title += f", {asked.colour}" if asked.colour else ""
    table = Table(title=title, title_justify="left", box=None, pad_edge=False)
    for name in ("operation", "station"):
        table.add_column(name)
    for name in ("runs", "labour", "so far", "machine", "estimated"):
        table.add_column(name, justify="right")
    for line in one.lines:
        table.add_row(
            line.operation,
            line.station,
            f"{float(line.quantity):g}",
            show_minutes(line.own_min),
            show_minutes(line.cumulative_min),
            show_minutes(line.own_machine_min),
            show_percent(line.estimate_share, 0),
        )
    table.add_section()
    totals = (show_minutes(one.standard_min), show_minutes(one.machine_min), show_percent(one.estimate_share, 0))
    table.add_row("a finished piece", "", "", "", *totals, style="bold")
    console.print(table)


def _takes_table(asked: _Asked, model: PlantModel, console: Console) -> None:
    from rich.table import Table

    from builder.model import in_colour, show_use

    if not asked.time.materials:
        return
    table = Table(title="takes, net of waste", title_justify="left", box=None, pad_edge=False)
    table.add_column("quantity", justify="right")
    table.add_column("material")
    for use in asked.time.materials:
        name = in_colour(use.material, asked.swaps)
        table.add_row(show_use(use), model.materials[name].title if name in model.materials else name)
    console.print(table)
