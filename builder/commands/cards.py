"""`seamboard cards`: the cards that hang at a station, beside its sheets."""

from __future__ import annotations

import sys
from pathlib import Path

import click

CARDS = ("hazards", "settings", "start", "close-down", "needle", "faults")


@click.command("cards")
@click.argument("name", metavar="STATION")
@click.option("--in", "folder", default="instructions", type=click.Path(path_type=Path), help="The plant's folder.")
@click.option("--card", type=click.Choice(CARDS), help="One of them alone; all the station has when left out.")
@click.option("--to", "file", type=click.Path(path_type=Path), help="The PDF; STATION-cards.pdf here when left out.")
@click.option("--quiet", is_flag=True, help="Say nothing when all is well.")
def command(name: str, folder: Path, card: str | None, file: Path | None, quiet: bool) -> None:
    """Print the cards of a station, each on pages of its own.

    What can hurt, the settings for each operation, the checks at both ends of a shift, what to do with a broken
    needle, and the fault finder: those the station has facts for.
    """
    from builder.commands import report
    from builder.pipeline import cards_pdf, check_plant
    from builder.writing import write_file

    checked = check_plant(folder)
    if checked.has_errors:
        report.show_findings(checked)
        sys.exit(1)
    target = file or Path(f"{name}-{card or 'cards'}.pdf")
    write_file(target, cards_pdf(checked, name, card or ""))
    if not quiet:
        click.echo(str(target))
