"""`seamboard template`: a part, a marking card or a gauge as a PDF at true size."""

from __future__ import annotations

import sys
from pathlib import Path

import click

PAPERS = ("Letter", "A4", "Tabloid", "A3")


@click.command("template")
@click.argument("name", metavar="TEMPLATE|PART")
@click.option("--in", "--plant", "folder", default="instructions", type=click.Path(path_type=Path), help="The plant.")
@click.option("--paper", type=click.Choice(PAPERS, case_sensitive=False), help="The plant's paper when left out.")
@click.option("--size", help="SIZE, or PRODUCT/SIZE; the template's own when left out.")
@click.option("--to", "--out", "file", type=click.Path(path_type=Path), help="The PDF; NAME.pdf here when left out.")
@click.option("--quiet", is_flag=True, help="Say nothing when all is well.")
def command(name: str, folder: Path, paper: str | None, size: str | None, file: Path | None, quiet: bool) -> None:
    """Print a declared template, or any part, at its true size, over as many sheets as it needs."""
    from builder.commands import report
    from builder.pipeline import check_plant, template_pdf
    from builder.writing import write_file

    checked = check_plant(folder)
    if checked.has_errors:
        report.show_findings(checked)
        sys.exit(1)
    pdf, sheets = template_pdf(checked, name, paper, size)
    target = file or Path(f"{name}.pdf")
    write_file(target, pdf)
    if not quiet:
        click.echo(f"{target}: {sheets} sheet{'' if sheets == 1 else 's'}. Print at 100 %, measure the check square.")
