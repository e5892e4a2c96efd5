"""The tree of exceptions, under everything.

What the engineer can mend in a text file is a Finding, never an exception. An exception is for what
can't be a finding: wrong usage, an unreadable folder, a fault of ours.
"""

from __future__ import annotations


class SeamboardError(Exception):
    """Root of all exceptions the program raises on purpose. `exit_code` is what the command returns."""

    exit_code = 1


class UsageError(SeamboardError):
    """The command was called wrongly: no such folder, no such product."""

    exit_code = 2


class TextFault(SeamboardError):
    """A small text (a quantity, a tolerance, a frequency, an expression) can't be read.

    message : what is wrong, a full sentence without the place
    offset  : 0-based index of the offending character inside the text
    remedy  : what to type instead
    """

    def __init__(self, message: str, offset: int = 0, remedy: str = "") -> None:
        super().__init__(message)
        self.message = message
        self.offset = offset
        self.remedy = remedy
