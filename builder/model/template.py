"""A template: a printed thing at true size that work is cut, marked or measured by, and the record that it is true.

What it looks like follows from the part or the tolerance it is of; nothing of its shape is typed here.
"""

from __future__ import annotations

import datetime
from fractions import Fraction
from typing import Literal

from pydantic import model_validator
from pydantic_core import PydanticCustomError

from builder.model.base import Names, Noun, Text
from builder.model.quantity import Quantity
from builder.model.typed import Length

SQUARE_MM = Fraction(100)
"""Side of the check square in mm."""
INCH_SQUARE_MM = 4 * Fraction(254, 10)
"""Side of the check square in inches, 4 in (ISO 31-1: 1 in = 25.4 mm exactly)."""


class Measured(Noun):
    """The check square of the printed copy in use, as somebody measured it with a steel rule.

    across, along : its side across and along the paper: a printer may stretch one way only. A value typed in inches
                    is that of the 4 in square, one in mm that of the 100 mm square
    by            : a code, not a name
    """

    across: Length
    along: Length
    date: datetime.date
    by: Text

    @property
    def off_mm(self) -> Fraction:
        """The larger deviation of the two, mm on about 100 mm, with its sign."""
        return max((_off(self.across), _off(self.along)), key=abs)


def _off(side: Quantity) -> Fraction:
    return side.value - (INCH_SQUARE_MM if side.unit in ("in", "ft", "yd") else SQUARE_MM)


class Template(Noun):
    """A template or a gauge, printed at true size.

    kind     : `part` its outline with all lines, to cut by; `marking` a card with a hole or slit at each place of
               `features`; `gauge` a go / no-go card for a tolerance
    of       : the part; for a gauge `OPERATION/TOLERANCE`
    size     : `SIZE`, or `PRODUCT/SIZE`; the values as typed when left out
    card     : thickness of what it is cut from
    measured : the check square of the copy in use; a record older than `date` is of an earlier print and doesn't count
    """

    title: Text
    kind: Literal["part", "marking", "gauge"]
    of: Text
    features: Names = ()
    size: Text | None = None
    number: Text
    revision: Text = "A"
    date: datetime.date
    card: Length | None = None
    measured: Measured | None = None

    @model_validator(mode="after")
    def _says_what_of(self) -> Template:
        if self.kind == "gauge" and len(self.of.split("/")) != 2:
            raise _fault("of", f"a gauge is of a tolerance, and `{self.of}` names none", "Write OPERATION/TOLERANCE")
        if self.kind == "marking" and not self.features:
            raise _fault("kind", "a marking template without `features:` has nothing to mark", "Add `features:`")
        if self.kind != "marking" and self.features:
            raise _fault("features", "`features:` is for a marking template", "Take it out, or write kind: marking")
        return self

    @property
    def operation(self) -> str:
        """Of a gauge, the operation whose tolerance it is for."""
        return self.of.split("/")[0]

    @property
    def tolerance(self) -> str:
        """Of a gauge, the name of the tolerance."""
        return self.of.rpartition("/")[2]

    def record(self) -> Measured | None:
        """The measurement of this issue's print, None when nobody has measured it yet."""
        return self.measured if self.measured is not None and self.measured.date >= self.date else None

    def is_off(self, limit: Quantity | None) -> bool:
        """Whether the copy in use was measured and is off by more than the plant's limit."""
        record = self.record()
        return record is not None and limit is not None and abs(record.off_mm) > limit.value


def _fault(key: str, message: str, remedy: str) -> PydanticCustomError:
    context = {"key": key, "slug": "value-unreadable", "message": message, "remedy": remedy}
    return PydanticCustomError("object_fault", "{message}", context)
