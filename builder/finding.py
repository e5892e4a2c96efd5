"""Place and Finding: what every room uses to report, under everything but errors."""

from __future__ import annotations

from dataclasses import dataclass, field
from enum import IntEnum


@dataclass(frozen=True, slots=True, order=True)
class Place:
    """A character in an input file. `file` is relative to the plant folder, with `/`; line and column start at 1."""

    file: str
    line: int = 1
    column: int = 1

    def __str__(self) -> str:
        return f"{self.file}:{self.line}:{self.column}"


class Severity(IntEnum):
    """How bad a finding is. Only an error stops a build."""

    note = 1
    warning = 2
    error = 3


@dataclass(frozen=True, slots=True)
class Finding:
    """One thing wrong with the input.

    rule     : slug of the rule that found it
    message  : what is wrong, one sentence
    why      : why it matters on the floor
    remedy   : what to do
    about    : the finest objects or names it concerns, existing or missing, as `kind:name`
    folded   : findings that have this one as their cause
    """

    place: Place
    rule: str
    severity: Severity
    message: str
    why: str = ""
    remedy: str = ""
    about: tuple[str, ...] = ()
    folded: tuple[Finding, ...] = field(default=(), compare=False)

    @property
    def sort_key(self) -> tuple[Place, int, str, str]:
        """Order of the report: by place, the worst first, then by rule and words."""
        return (self.place, -int(self.severity), self.rule, self.message)
