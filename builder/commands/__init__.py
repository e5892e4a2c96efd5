"""Door of the commands room: `main` is the program. Each command lies in its own file and is imported when it is run."""

from builder.commands.group import main

__all__ = ["main"]
