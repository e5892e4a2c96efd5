"""Where each value of a file stands: packed places in a tree of the same shape as the values.

A place is one int instead of an object, because a plant has hundreds of thousands of them and only the
few that carry a finding are ever unpacked. What the values mean is no business of this module.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import TypeAlias

from builder.finding import Finding, Place

Value: TypeAlias = "str | list[Value] | dict[str, Value]"
"""A plain value: every scalar is the text as typed, so `no`, `301` and `1.50` stay words."""

Spot: TypeAlias = "int | Branch"
"""The packed place of a text, or the branch of a mapping or list."""

PathStep: TypeAlias = "str | int"

# line | column | one bit. 21 bits hold the longest line that a file of the allowed size can have.
ONE_LINE = 1
COLUMN = 2
LINE = 1 << 22
_COLUMN_MASK = LINE - 1


def pack(line: int, column: int, one_line: bool = False) -> int:
    """Pack a 1-based line and column. `one_line`: the text stands in one line just as it is read."""
    return line * LINE + column * COLUMN + one_line


def unpack(spot: int) -> tuple[int, int]:
    """Line and column, 1-based, of a packed place."""
    return spot >> 22, (spot & _COLUMN_MASK) >> 1


@dataclass(slots=True)
class Branch:
    """The places of a mapping or list.

    at    : where it begins, packed
    keys  : place of each key; empty for a list
    items : what each value stands on, by key or in order
    """

    at: int
    keys: dict[str, int]
    items: dict[str, Spot] | list[Spot]


@dataclass(slots=True)
class Document:
    """One YAML file, read.

    file     : relative to the plant folder, with `/`
    kind     : what the folder says it is (`operation`); filled by the folder reader
    name     : what the file name says it is called; filled by the folder reader
    value    : the top mapping, or None if it could not be read
    spot     : its places, or None
    broken   : nothing in it can be used; it still counts as known
    findings : what is wrong with the text
    digest   : SHA-256 of the bytes, hex
    marred   : packed places of values a finding is about, so that later rooms don't complain of them again
    """

    file: str
    kind: str = ""
    name: str = ""
    value: dict[str, Value] | None = None
    spot: Branch | None = None
    broken: bool = False
    findings: list[Finding] = field(default_factory=list)
    digest: str = ""
    marred: frozenset[int] = frozenset()

    def place(self, path: Sequence[PathStep], *, key: bool = False, offset: int = 0) -> Place:
        """The place of the value at `path`, or of its key.

        path   : keys and 0-based list positions from the top
        key    : ask for the key instead; an item of a list has none, then it is the item
        offset : 0-based index of a character inside the text; counted only where the text stands
                 in one line as typed (no escapes, no folding), else the text's beginning is given

        Where the path goes deeper than the file does, it is the deepest ancestor that exists: a
        text or list itself, a mapping by its key. The top level is 1:1.
        """
        spot, lead, found = _walk(self.spot, path)
        if spot is None or not path:
            return Place(self.file)
        if not found:
            return self._at(lead if isinstance(spot, Branch) and isinstance(spot.items, dict) else spot)
        if key:
            return self._at(lead)
        return self._at(spot, offset)

    def is_marred(self, path: Sequence[PathStep]) -> bool:
        """Whether a finding of this room is already about the text at `path`."""
        spot, _, found = _walk(self.spot, path)
        return found and isinstance(spot, int) and spot in self.marred

    def _at(self, spot: Spot, offset: int = 0) -> Place:
        packed = spot.at if isinstance(spot, Branch) else spot
        line, column = unpack(packed)
        moved = offset if packed & ONE_LINE and offset > 0 else 0
        return Place(self.file, line, column + moved)


def _walk(top: Branch | None, path: Sequence[PathStep]) -> tuple[Spot | None, Spot, bool]:
    """Follow `path`: the deepest spot, the place that leads to it, and whether `path` ends there."""
    spot: Spot | None = top
    lead: Spot = pack(1, 1)
    for step in path:
        if not isinstance(spot, Branch):
            # The only item of a list may be typed without the list.
            return spot, lead, step == 0 and isinstance(step, int)
        items = spot.items
        if isinstance(items, dict):
            if not isinstance(step, str) or step not in items:
                return spot, lead, False
            lead = spot.keys[step]
            spot = items[step]
        else:
            if not isinstance(step, int) or not 0 <= step < len(items):
                return spot, lead, False
            spot = lead = items[step]
    return spot, lead, spot is not None
