"""`seamboard build`: the site and the sheets."""

from __future__ import annotations

import sys
from pathlib import Path
from typing import TYPE_CHECKING

import click

if TYPE_CHECKING:
    from builder.pipeline import Built, Progress


@click.command("build")
@click.argument("folder", default="instructions", type=click.Path(path_type=Path))
@click.option("--to", "out", default="_out", type=click.Path(path_type=Path), help="Where the site and sheets go.")
@click.option("--quiet", is_flag=True, help="Only findings, no progress and no summary.")
def command(folder: Path, out: Path, quiet: bool) -> None:
    """Check the plant in FOLDER and make its site and sheets. With an error the earlier output stays as it is."""
    built = build(folder, out, quiet)
    sys.exit(0 if built.written is not None else 1)


def build(folder: Path, out: Path, quiet: bool) -> Built:
    """Build once and say what came of it."""
    from builder.commands import report
    from builder.pipeline import build_plant

    if not quiet and sys.stderr.isatty():
        with _Bar() as progress:
            built = build_plant(folder, out, progress)
    else:
        built = build_plant(folder, out)
    report.show_findings(built.checked)
    if built.written is None:
        click.echo(f"nothing built; {out} is as it was", err=True)
    elif not quiet:
        one = built.written
        click.echo(f"{out}: {one.changed} files changed, {one.unchanged} as they were, {one.removed} removed")
        click.echo(f"open {out / 'index.html'}")
        _say_what_is_missing()
    return built


def _say_what_is_missing() -> None:
    from builder.drawing import raster_available

    if not raster_available():
        click.echo("no pictures as PNG: the system library libcairo is missing (Debian: libcairo2)", err=True)


class _Bar:
    """A progress bar on the terminal, used as a context manager that gives the callback."""

    def __enter__(self) -> Progress:
        from rich.console import Console
        from rich.progress import Progress as Bar

        self._bar = Bar(transient=True, console=Console(stderr=True))
        self._bar.start()
        task = self._bar.add_task("build")

        def progress(stage: str, done: int, of: int) -> None:
            self._bar.update(task, description=stage, completed=done, total=of)

        return progress

    def __exit__(self, *_: object) -> None:
        self._bar.stop()
