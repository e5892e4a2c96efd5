"""`seamboard watch`: build again whenever a file is saved."""

from __future__ import annotations

from pathlib import Path

import click


@click.command("watch")
@click.argument("folder", default="instructions", type=click.Path(path_type=Path))
@click.option("--to", "out", default="_out", type=click.Path(path_type=Path), help="Where the site and sheets go.")
@click.option("--quiet", is_flag=True, help="Only findings.")
def command(folder: Path, out: Path, quiet: bool) -> None:
    """Build FOLDER, then build again after every save, until interrupted."""
    from builder.commands.build import build
    from builder.errors import SeamboardError
    from builder.watching import changes

    build(folder, out, quiet)
    if not quiet:
        click.echo(f"watching {folder}; end with Ctrl-C")
    for files in changes(folder, out):
        if not quiet:
            click.echo(f"saved: {', '.join(files)}")
        try:
            build(folder, out, quiet)
        except SeamboardError as error:
            click.echo(f"seamboard: {error}", err=True)  # the last good output stays; go on watching
