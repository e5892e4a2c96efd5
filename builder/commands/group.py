"""The group of commands, and the one place where an exception becomes a message and an exit code.

Commands are listed by name and imported only when they are called, so that `--help` answers at once.
"""

from __future__ import annotations

import importlib
import os
import sys

import click

from builder.errors import SeamboardError

COMMANDS = {
    "build": "Check the plant and make its site and sheets.",
    "cards": "Print the cards of a station: hazards, settings, shift, broken needle, faults.",
    "check": "Check the plant's files and report all findings.",
    "draw": "Write the figures of a part or an operation as SVG and PNG.",
    "explain": "What a finding means, what to do, and an example of each kind.",
    "poster": "Print one step on one sheet, for a reader across the room.",
    "schema": "JSON Schema of a kind of file, for an editor.",
    "sheets": "Make one PDF of all sheets of a station or a product.",
    "study": "What a time study says, and the plant's own standard data.",
    "template": "Print a part, a row of marks or a gauge at its true size.",
    "times": "Standard and machine times of a product, operation by operation.",
    "words": "The file of a language, to be translated.",
    "watch": "Build again whenever a file is saved.",
}


class _LazyGroup(click.Group):
    def list_commands(self, ctx: click.Context) -> list[str]:
        return sorted(COMMANDS)

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:
        if cmd_name not in COMMANDS:
            return None
        return getattr(importlib.import_module(f"builder.commands.{cmd_name}"), "command", None)

    def format_commands(self, ctx: click.Context, formatter: click.HelpFormatter) -> None:
        with formatter.section("Commands"):
            formatter.write_dl([(name, COMMANDS[name]) for name in self.list_commands(ctx)])


@click.group(cls=_LazyGroup, context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(package_name="seamboard", prog_name="seamboard")
def seamboard() -> None:
    """Checked station sheets, an offline floor site and standard times from a sewing plant's text files."""


def main() -> None:
    """Run the program. Exit code 0 fine, 1 the input has problems, 2 wrong usage."""
    try:
        seamboard.main(standalone_mode=False)
    except click.exceptions.Exit as leave:
        sys.exit(leave.exit_code)
    except click.ClickException as error:
        error.show()
        sys.exit(2)
    except click.Abort:
        sys.exit(130)
    except SeamboardError as error:
        click.echo(f"seamboard: {error}", err=True)
        sys.exit(error.exit_code)
    except Exception as error:
        if os.environ.get("SEAMBOARD_TRACE"):
            raise
        words = f"{type(error).__name__}: {error}"
        click.echo(f"seamboard: a fault of this program, not of your files ({words}).", err=True)
        click.echo("Nothing was written. Run again with SEAMBOARD_TRACE=1 to see where.", err=True)
        sys.exit(3)
