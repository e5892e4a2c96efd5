"""`seamboard times`: cumulative standard times, how sure they are, and what a piece takes."""

from __future__ import annotations

import json
from pathlib import Path

import click

from builder.errors import UsageError


@click.command("times")
@click.argument("product", required=False)
@click.option("--in", "folder", default="instructions", type=click.Path(path_type=Path), help="The plant's folder.")
@click.option("--variant", metavar="SIZE, COLOUR", help="One size, one colour, or both, of PRODUCT.")
@click.option("--by", type=click.Choice(["operation", "station", "grade"]), default="operation", show_default=True)
@click.option("--json", "as_json", is_flag=True, help="One object for programs, unrounded.")
@click.option("--csv", "as_csv", is_flag=True, help="A row an operation, for a spreadsheet.")
@click.option("--quiet", is_flag=True, help="No warnings, only the times.")
def command(
    product: str | None, folder: Path, variant: str | None, by: str, as_json: bool, as_csv: bool, quiet: bool
) -> None:
    """Standard minutes (labour) and machine minutes of PRODUCT, or of all products, and what a piece takes."""
    from builder.commands import report
    from builder.commands.times_asked import asked_of

    if variant is not None and product is None:
        raise UsageError("--variant belongs to a product: name it")
    if as_json and as_csv:
        raise UsageError("--json or --csv, not both")
    checked, linked, results = report.computed(folder)
    model = linked.model
    asked = list(asked_of(results.products, model, product, variant))
    if as_json or as_csv:
        from builder.commands import times_plain

        if as_csv:
            click.echo(times_plain.as_csv(asked, results, model), nl=False)
        else:
            click.echo(json.dumps(times_plain.as_json(asked, results, model), ensure_ascii=False, indent=1))
        return
    if not quiet and checked.findings:
        report.show_findings(checked)
    from builder.commands.times_tables import show

    for one in asked:
        show(one, by, results, model)
