"""`seamboard poster`: one step on one sheet, for the wall."""

from __future__ import annotations

import sys
from pathlib import Path

import click

PAPERS = ("Letter", "A4", "Tabloid", "A3")


@click.command("poster")
@click.argument("operation")
@click.argument("step")
@click.option("--in", "folder", default="instructions", type=click.Path(path_type=Path), help="The plant's folder.")
@click.option("--distance", default="3 m", show_default=True, help="How far away the reader stands.")
@click.option("--paper", type=click.Choice(PAPERS), default="A3", show_default=True)
@click.option("--landscape", is_flag=True, help="The paper lies across.")
@click.option("--to", "file", type=click.Path(path_type=Path), help="The PDF; OPERATION-STEP.pdf here when left out.")
@click.option("--quiet", is_flag=True, help="Say nothing when all is well.")
def command(
    operation: str, step: str, folder: Path, distance: str, paper: str, landscape: bool, file: Path | None, quiet: bool
) -> None:
    """Print one step of an operation for a reader across the room: action, key point, checks, its figure large.

    Its cautions stand on it too, half as large: who works at the machine has the sheet.
    """
    from builder.commands import report
    from builder.pipeline import check_plant, poster_pdf
    from builder.writing import write_file

    checked = check_plant(folder)
    if checked.has_errors:
        report.show_findings(checked)
        sys.exit(1)
    target = file or Path(f"{operation}-{step}.pdf")
    write_file(target, poster_pdf(checked, operation, step, distance, f"{paper} landscape" if landscape else paper))
    if not quiet:
        click.echo(str(target))
