"""Door of the commands room: `main` is the program. Each command lies in its own file, imported when it is run."""

from builder.commands.group import main

__all__ = ["main"]
