"""`seamboard sheets`: one PDF of all sheets of a station or a product."""

from __future__ import annotations

import sys
from pathlib import Path

import click


@click.command("sheets")
@click.argument("name", metavar="STATION|PRODUCT")
@click.option("--in", "folder", default="instructions", type=click.Path(path_type=Path), help="The plant's folder.")
@click.option("--to", "file", type=click.Path(path_type=Path), help="The PDF; NAME.pdf here when left out.")
@click.option("--training", is_flag=True, help="The training sheets instead.")
@click.option("--one-sided", is_flag=True, help="No empty backs: for a printer that prints on one side.")
@click.option("--quiet", is_flag=True, help="Say nothing when all is well.")
def command(name: str, folder: Path, file: Path | None, training: bool, one_sided: bool, quiet: bool) -> None:
    """Make one PDF of all sheets of a station or a product, with a contents page.

    Those of a product stand in the order of its route. Printed on both sides, each sheet begins on a new leaf.
    """
    from builder.commands import report
    from builder.pipeline import booklet, check_plant
    from builder.writing import write_file

    checked = check_plant(folder)
    if checked.has_errors:
        report.show_findings(checked)
        sys.exit(1)
    target = file or Path(f"{name}-training.pdf" if training else f"{name}.pdf")
    write_file(target, booklet(checked, name, training, duplex=not one_sided))
    if not quiet:
        click.echo(str(target))
