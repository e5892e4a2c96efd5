"""A span of whole days as text: `14 days`, `2 weeks`."""

from __future__ import annotations

import re

from builder.errors import TextFault

_DAYS = {"day": 1, "days": 1, "d": 1, "week": 7, "weeks": 7}
_FORM = re.compile(r"\s*([0-9]+) *([a-z]+)\s*", re.IGNORECASE)
DAYS_PATTERN = r"^\s*[0-9]+ *(?:days?|d|weeks?)\s*$"


def parse_days(text: str) -> int:
    """Read a whole number of days or weeks, at least one day. Raises TextFault.

    >>> parse_days("2 weeks")
    14
    """
    found = _FORM.fullmatch(text)
    if found is None:
        raise TextFault(f"{text.strip()} is no number of days", 0, "Write a whole number with its unit, as `14 days`")
    unit = _DAYS.get(found[2].lower())
    if unit is None:
        raise TextFault(f"{found[2]} is neither days nor weeks", found.start(2), f"Write `{found[1]} days`")
    days = int(found[1]) * unit
    if days == 0:
        raise TextFault("this asks for one day or more", found.start(1), "Write 1 or more, or leave the line out")
    return days
