"""First look at a DXF file, before any library parses it: is it one, is it whole, how much is in it, which unit.

Reads the file pair by pair (a code line, a value line) and keeps nothing, so that a hostile file costs little.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from builder.errors import TextFault

DXF_LIMIT = 20_000_000
"""Largest file that is read, bytes."""

MOST_ENTITIES = 50_000
"""Most entities a file may hold, or its blocks may come to when they are put in place."""

_LONGEST_LINE = 4096
_UNITS = {1: 25.4, 2: 304.8, 4: 1.0, 5: 10.0, 6: 1000.0, 8: 25.4e-6, 9: 0.0254, 10: 914.4, 13: 0.001, 14: 100.0}
"""Millimetres of a drawing unit by the value of $INSUNITS: in, ft, mm, cm, m, µin, 0.001 in, yd, µm, dm."""


class DrawingFault(TextFault):
    """A drawing can't be used; `message` and `remedy` are for a finding, `key` is the outline's key it is about."""

    def __init__(self, message: str, remedy: str, key: str = "drawing") -> None:
        super().__init__(message, 0, remedy)
        self.key = key


SAVE_AGAIN = "Save it again as an ASCII DXF of the year 2000 or later."


@dataclass(frozen=True, slots=True)
class Scan:
    """What the head of a file says: millimetres of a drawing unit, None when it doesn't."""

    unit_mm: float | None


def scan(path: Path) -> Scan:
    """Read a file through once. Raises DrawingFault when it is no DXF, cut off, too large or of an unknown unit."""
    try:
        size = path.stat().st_size
        if size > DXF_LIMIT:
            message = f"The drawing has {size / 1e6:.0f} MB; at most {DXF_LIMIT // 1_000_000} are read."
            raise DrawingFault(message, "Save only the outline in a drawing of its own.")
        return _scanned(path)
    except OSError:
        raise DrawingFault("The drawing can't be opened.", "Allow reading it, or copy it again.") from None


def _scanned(path: Path) -> Scan:
    header: dict[bytes, int] = {}
    records, variable, ended, pairs = 0, b"", False, 0
    for pairs, (code, value) in enumerate(_pairs(path), start=1):
        if pairs == 1 and (code, value) != (0, b"SECTION") and code != 999:
            raise DrawingFault("This is no DXF file: it doesn't begin with a section.", SAVE_AGAIN)
        if code == 0:
            records += 1
            ended = value == b"EOF"
            if records > MOST_ENTITIES:
                message = f"The drawing holds over {MOST_ENTITIES:,} entities."
                raise DrawingFault(message, "Save only the outline in a drawing of its own.")
        elif code == 9:
            variable = value
        elif code == 70 and variable in (b"$INSUNITS", b"$MEASUREMENT") and value.lstrip(b"-").isdigit():
            header.setdefault(variable, int(value[:9]))
    if not ended:
        where = f"is cut off after line {2 * pairs}: it has no end mark" if pairs else "is empty"
        raise DrawingFault(f"The drawing {where}.", "Copy or save the file again.")
    return Scan(_unit(header))


def _pairs(path: Path) -> Iterator[tuple[int, bytes]]:
    with path.open("rb") as file:
        if b"\0" in file.read(64):
            raise DrawingFault("This is a binary file, not a DXF of text.", SAVE_AGAIN)
        file.seek(0)
        number = 0
        while line := file.readline(_LONGEST_LINE):
            number += 1
            code = line.strip().removeprefix(b"\xef\xbb\xbf")
            if not code.removeprefix(b"-").isdigit() or len(code) > 5:
                if not code and not file.read(1):
                    return  # an empty line at the end of the file
                message = f"This is no DXF file: line {number} should be a group code, a whole number."
                raise DrawingFault(message, SAVE_AGAIN)
            value = file.readline(_LONGEST_LINE)
            while value and not value.endswith(b"\n") and (more := file.readline(_LONGEST_LINE)):
                if more.endswith(b"\n"):
                    break
            number += 1
            if not value:
                return
            yield int(code), value.strip()


def _unit(header: dict[bytes, int]) -> float | None:
    """Millimetres of a drawing unit. $MEASUREMENT only says which system its line types are of, so it comes second."""
    unit = header.get(b"$INSUNITS", 0)
    if unit:
        if unit not in _UNITS:
            message = f"The drawing's unit has the number {unit}, which no piece of cloth is measured in."
            raise DrawingFault(message, "Set the drawing's unit to millimetres or inches, and save it again.")
        return _UNITS[unit]
    return {0: 25.4, 1: 1.0}.get(header.get(b"$MEASUREMENT", -1))
