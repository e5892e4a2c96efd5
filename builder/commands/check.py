"""`seamboard check`: all findings at once."""

from __future__ import annotations

import sys
from pathlib import Path

import click


@click.command("check")
@click.argument("folder", default="instructions", type=click.Path(path_type=Path))
@click.option("--json", "as_json", is_flag=True, help="One object for programs, on standard output.")
@click.option("--quiet", is_flag=True, help="Say nothing when all is well.")
def command(folder: Path, as_json: bool, quiet: bool) -> None:
    """Check the plant in FOLDER and report all findings. Exit code 1 when there is an error."""
    from builder.commands import report
    from builder.pipeline import check_plant

    checked = check_plant(folder)
    if as_json:
        click.echo(report.as_json(checked.findings))
    else:
        report.show_findings(checked)
        if not checked.findings and not quiet and checked.linked is not None:
            count = len(checked.linked.model.operations)
            click.echo(f"{folder}: {count} operations checked, nothing found")
    sys.exit(1 if checked.fails else 0)
