"""`seamboard draw`: every figure of a part or an operation as files of its own, SVG and PNG."""

from __future__ import annotations

import sys
from pathlib import Path

import click


@click.command("draw")
@click.argument("name", metavar="PART|OPERATION")
@click.option("--in", "folder", default="instructions", type=click.Path(path_type=Path), help="The plant's folder.")
@click.option("--to", default="drawings", type=click.Path(path_type=Path), help="Where the files go.")
@click.option("--of", "product", metavar="PRODUCT", help="The product whose size is drawn.")
@click.option("--size", metavar="SIZE", help="One size of PRODUCT; the first when left out.")
@click.option("--pixels", default=1600, type=click.IntRange(100, 10_000), show_default=True, help="Width of the PNGs.")
@click.option("--quiet", is_flag=True, help="Say nothing when all is well.")
def command(name: str, folder: Path, to: Path, product: str | None, size: str | None, pixels: int, quiet: bool) -> None:
    """Write every figure of a part or an operation as SVG, its texts as paths, and as PNG.

    A part is drawn from both sides with its size, taken apart, and with section and stitch of its seams; an
    operation as its steps show it, in all sizes. A figure that can't be read at its printed size is named.
    """
    from builder.commands import report
    from builder.drawing import draw, outlined, png_of, raster_available
    from builder.errors import UsageError
    from builder.pipeline import check_plant, figures_of
    from builder.writing import write_file

    if size is not None and product is None:
        raise UsageError("--size belongs to a product: name it with --of")
    checked = check_plant(folder)
    if checked.has_errors:
        report.show_findings(checked)
        sys.exit(1)
    crowded = False
    for figure in figures_of(checked, name, product, size):
        drawing = draw(figure)
        write_file(to / f"{figure.name}.svg", outlined(drawing.svg).encode())
        if raster_available():
            write_file(to / f"{figure.name}.png", png_of(drawing.svg, pixels))
        for problem in drawing.problems:
            crowded = True
            click.echo(f"{figure.name}: {problem}", err=True)
        if not quiet:
            click.echo(str(to / f"{figure.name}.svg"))
    if not raster_available() and not quiet:
        click.echo("No PNGs: the system's libcairo is missing.", err=True)
    sys.exit(1 if crowded else 0)
