"""`seamboard times`: cumulative standard times, as a table or as JSON."""

from __future__ import annotations

import json
import sys
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from builder.errors import UsageError

if TYPE_CHECKING:
    from builder.model import PlantModel, ProductTime


@click.command("times")
@click.argument("product", required=False)
@click.option("--in", "folder", default="instructions", type=click.Path(path_type=Path), help="The plant's folder.")
@click.option("--json", "as_json", is_flag=True, help="One object for programs, unrounded.")
@click.option("--quiet", is_flag=True, help="No warnings, only the times.")
def command(product: str | None, folder: Path, as_json: bool, quiet: bool) -> None:
    """Standard minutes (labour) and machine minutes of PRODUCT, or of all products."""
    from builder.commands import report
    from builder.pipeline import check_plant

    checked = check_plant(folder)
    if checked.has_errors or checked.results is None or checked.linked is None:
        report.show_findings(checked)
        sys.exit(1)
    model = checked.linked.model
    if product is not None and product not in model.products:
        from builder.model import near

        close = near(product, model.products)
        hint = f"; did you mean {close[0]}?" if close else f"; products: {', '.join(model.products)}"
        raise UsageError(f"no product is called {product}{hint}")
    times = [one for one in checked.results.products if product in (None, one.product)]
    if as_json:
        plain = {"batch": checked.results.batch, "products": [_plain(one) for one in times]}
        click.echo(json.dumps(plain, ensure_ascii=False, indent=1))
        return
    if not quiet and checked.findings:
        report.show_findings(checked)
    for one in times:
        _table(one, model)


def _plain(one: ProductTime) -> dict[str, Any]:
    return {
        "product": one.product,
        "variant": one.variant,
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
    }


def _table(one: ProductTime, model: PlantModel) -> None:
    from rich.console import Console
    from rich.table import Table

    from builder.model import show_minutes, show_percent

    title = model.products[one.product].title + (f", size {one.variant}" if one.variant else "")
    table = Table(title=title, title_justify="left", box=None, pad_edge=False)
    for name, justify in (
        ("operation", "left"),
        ("station", "left"),
        ("runs", "right"),
        ("labour", "right"),
        ("so far", "right"),
        ("machine", "right"),
        ("estimated", "right"),
    ):
        table.add_column(name, justify=justify)  # type: ignore[arg-type]
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
    table.add_row(
        "a finished piece",
        "",
        "",
        "",
        show_minutes(one.standard_min),
        show_minutes(one.machine_min),
        show_percent(one.estimate_share, 0),
        style="bold",
    )
    console = Console()
    # Into a file or a pipe there is no width to keep to; a cut name would be worse than a long line.
    (console if console.is_terminal else Console(width=140)).print(table)
