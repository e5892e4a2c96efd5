"""A study: timed readings of an operation's steps, as one CSV holds them."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from fractions import Fraction

from builder.errors import TextFault
from builder.finding import Finding, Place
from builder.model.faults import fault
from builder.reading import Row, Table

COLUMNS = ("step", "cycle", "reading", "rating", "note")
_NEEDED = ("step", "reading", "rating")


@dataclass(frozen=True, slots=True)
class Reading:
    """One reading: seconds as timed, rating in percent, and the observer's note.

    out : the note says it is left out (`out: …`) or names a foreign element (`foreign: …`)
    """

    step: str
    cycle: str
    seconds: Fraction
    rating: Fraction
    note: str
    place: Place

    @property
    def out(self) -> bool:
        """Left out of the mean, with a reason in the note."""
        return self.note.startswith(("out:", "foreign:"))


@dataclass(frozen=True, slots=True)
class Study:
    """All readings of one study, with the conditions its head states and where each of them stands."""

    name: str
    file: str
    head: Mapping[str, str]
    readings: tuple[Reading, ...]
    digest: str
    head_places: Mapping[str, Place] = field(default_factory=dict)

    def of_step(self, step: str) -> tuple[Reading, ...]:
        """Readings that count for a step."""
        return tuple(r for r in self.readings if r.step == step and not r.out)


def read_study(table: Table, findings: list[Finding]) -> Study | None:
    """A study from its table; faults go to `findings`, and a study with one is not used."""
    about = f"study:{table.name}"
    missing = [column for column in _NEEDED if column not in table.columns]
    if table.broken or missing:
        if missing and not table.broken:
            message = f"the header lacks {', '.join(missing)}"
            remedy = f"The header is: {','.join(COLUMNS)}"
            findings.append(fault("value-unreadable", Place(table.file), message, (about,), remedy))
        return None
    before = len(findings)
    readings = tuple(_readings(table, about, findings))
    if len(findings) > before:
        return None
    places = {key: table.head_place(key) for key in table.head}
    return Study(table.name, table.file, dict(table.head), readings, table.digest, places)


def _readings(table: Table, about: str, findings: list[Finding]) -> Iterator[Reading]:
    for row in table.rows:
        try:
            seconds = _number(row, "reading", 0, "a reading is more than 0 seconds")
            rating = _number(row, "rating", 0, "a rating is more than 0 percent")
        except TextFault as error:
            place = row.place("reading" if "reading" in error.message else "rating")
            findings.append(fault("value-unreadable", place, error.message, (about,), error.remedy))
            continue
        note = row.cells.get("note", "").strip()
        yield Reading(
            row.cells.get("step", "").strip(), row.cells.get("cycle", ""), seconds, rating, note, row.place("step")
        )


def _number(row: Row, column: str, least: int, words: str) -> Fraction:
    typed = row.cells.get(column, "").strip()
    if "," in typed:
        raise TextFault(f"the {column} {typed} has a decimal comma", remedy="Write a decimal point.")
    try:
        number = Fraction(typed)
    except (ValueError, ZeroDivisionError):
        raise TextFault(f"the {column} `{typed}` is no number", remedy="Write a number such as 4.2.") from None
    if number <= least:
        raise TextFault(f"the {column} is {typed}: {words}", remedy="Correct it, or note `out:` and why.")
    return number
