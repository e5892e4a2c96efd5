"""A table of readings to a study. This page is the reference for the columns and the head.

| column | holds |
|---|---|
| `step` | the step's name |
| `cycle` | which cycle; two readings of a step in one cycle are added. Without it each row is a cycle of its own |
| `reading` | what the watch showed for this row alone (fly-back) |
| `clock` | instead of `reading`: what a watch showed that was never stopped; as `75.2`, `1:15.2` or `0:01:15.2` |
| `rating` | percent; blank for a whole step that was not rated |
| `note` | `out: why` leaves a reading out, `foreign: what` is no part of the work, `start` sets a running watch |
| `pieces` | how many pieces the row covers, 1 if left out |
| `date`, `operator` | when, and the code of who worked |

Seconds, or decimal minutes where the header says so: `reading (min)`. Columns of other names are not read.
Head lines (`# key: value`) say the conditions; `decimal: comma` says that numbers have decimal commas.

A row without reading, rating and note is one of a form that nobody filled in, and is passed over.

Refused, each with its remedy: a reading of 0 or less, a running watch that goes back, a rating that is missing where
others of the step have one, `out:` without a reason, a decimal comma where the head doesn't say so.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction

from builder.errors import TextFault
from builder.finding import Finding, Place
from builder.model.faults import fault
from builder.model.near_names import near
from builder.model.study import FOREIGN, OUT, START, Reading, Study
from builder.reading import Row, Table

COLUMNS = ("step", "cycle", "reading", "rating", "note", "clock", "pieces", "date", "operator")
_HEADER = "step,cycle,reading,rating,note"
_NONE, _ONE = Fraction(0), Fraction(1)
_UNITS = {"s": Fraction(1), "sec": Fraction(1), "min": Fraction(60)}
_COLUMN = re.compile(r"(?P<name>[a-z]+)(?: *[(\[]? *(?P<unit>s|sec|min) *[)\]]?)?")
_CLOCK = re.compile(r"(?:(?P<h>\d{1,2}):)?(?P<m>\d{1,3}):(?P<s>\d{1,2}(?:\.\d+)?)")
_PLAIN = re.compile(r"[+-]?(?:\d+\.?\d*|\.\d+)")


@dataclass(frozen=True, slots=True)
class _Columns:
    """Which column of the table holds what. `unit` is that of reading or clock [s]."""

    of: Mapping[str, str]
    unit: Fraction
    comma: bool

    def text(self, row: Row, name: str) -> str:
        return row.cells.get(self.of.get(name, ""), "").strip()

    def place(self, row: Row, name: str) -> Place:
        return row.place(self.of.get(name, ""))

    def number(self, row: Row, name: str, text: str | None = None) -> Fraction:
        """A number of a cell. Raises TextFault."""
        typed = self.text(row, name) if text is None else text
        plain = typed.replace(",", ".") if self.comma else typed
        if not _PLAIN.fullmatch(plain):
            if not self.comma and _PLAIN.fullmatch(typed.replace(",", ".")):
                remedy = "Write a decimal point, or `# decimal: comma` above the header."
                raise TextFault(f"the {name} {typed} has a decimal comma", remedy=remedy)
            what = f"the {name} `{typed}` is no number" if typed else f"the {name} is empty"
            raise TextFault(what, remedy="Write a number such as 4.2.")
        return Fraction(plain)


def read_study(table: Table, findings: list[Finding]) -> Study | None:
    """A study from its table; faults go to `findings`, and a study with one is not used."""
    about = f"study:{table.name}"
    if table.broken:
        return None
    columns = _columns(table, about, findings)
    if columns is None:
        return None
    before = len(findings)
    readings = tuple(_Reader(table, columns, about, findings).readings())
    _unrated(readings, columns, table, about, findings)
    if not readings and len(findings) == before:
        message, remedy = "there is no reading below the header", "Type the readings, or delete the file."
        findings.append(fault("value-unreadable", Place(table.file), message, (about,), remedy))
    if len(findings) > before:
        return None
    places = {key: table.head_place(key) for key in table.head}
    return Study(table.name, table.file, dict(table.head), _rated(readings), table.digest, places)


def _columns(table: Table, about: str, findings: list[Finding]) -> _Columns | None:
    of: dict[str, str] = {}
    unit = Fraction(1)
    for raw in table.columns:
        found = _COLUMN.fullmatch(" ".join(raw.casefold().split()))
        if found is None or found["name"] not in COLUMNS or found["name"] in of:
            continue
        of[found["name"]] = raw
        if found["name"] in ("reading", "clock"):
            unit = _UNITS[found["unit"] or "s"]
    if message := _header_fault(of, table.columns):
        place = table.column_place(table.columns[0]) if table.columns else Place(table.file)
        findings.append(fault("value-unreadable", place, message, (about,), f"The header is: {_HEADER}"))
        return None
    decimal = table.head.get("decimal", "point").casefold()
    if decimal not in ("comma", "point"):
        message, remedy = f"the decimal sign `{decimal}` is not known", "Write comma or point."
        findings.append(fault("value-unreadable", table.head_place("decimal"), message, (about,), remedy))
        return None
    return _Columns(of, unit, decimal == "comma")


def _header_fault(of: Mapping[str, str], typed: tuple[str, ...]) -> str:
    if "reading" in of and "clock" in of:
        return "the header has both reading and clock: a row is timed in one way"
    missing = [name for name in ("step", "rating") if name not in of]
    if "reading" not in of and "clock" not in of:
        missing.insert(1 if "step" in missing else 0, "reading (or clock)")
    if not missing:
        return ""
    hints = []
    for name in typed:
        close = [one for one in near(name.casefold(), COLUMNS) if one not in of]
        if name not in of.values() and close:
            hints.append(f"`{name}` may be meant for {close[0]}")
    hint = f"; {', '.join(hints)}" if hints else ""
    return f"the header lacks {', '.join(missing)}{hint}"


class _Reader:
    """Reads the rows in order; a running watch needs the row before."""

    def __init__(self, table: Table, columns: _Columns, about: str, findings: list[Finding]) -> None:
        self.table, self.columns, self.about, self.findings = table, columns, about, findings
        self.clock = Fraction(0)
        self.rows: dict[str, int] = {}

    def readings(self) -> Iterator[Reading]:
        for row in self.table.rows:
            note = self.columns.text(row, "note")
            if not note and not any(self.columns.text(row, name) for name in ("reading", "clock", "rating")):
                continue  # a row of a form that nobody filled in
            column = "clock" if "clock" in self.columns.of else "reading"
            try:
                if note.casefold().partition(":")[0].strip() == START and column == "clock":
                    self.clock = self._watch(row)
                    continue
                seconds = self._passed(row) if column == "clock" else self._above_zero(row, "reading")
                column = "pieces"
                pieces = self._pieces(row)
                column = "rating"
                rating = self._above_zero(row, "rating") if self.columns.text(row, "rating") else _NONE
                column = "note"
                self._note(note)
                column = "step"
                if not self.columns.text(row, "step") and not note.casefold().startswith(FOREIGN):
                    raise TextFault(
                        "the step is empty", remedy="Write the step's name, or `foreign: what` in the note."
                    )
            except TextFault as error:
                place = self.columns.place(row, column)
                self.findings.append(fault("value-unreadable", place, error.message, (self.about,), error.remedy))
                continue
            yield self._reading(row, seconds / pieces if pieces > 1 else seconds, rating, note)

    def _reading(self, row: Row, seconds: Fraction, rating: Fraction, note: str) -> Reading:
        text = self.columns.text
        step = text(row, "step")
        self.rows[step] = self.rows.get(step, 0) + 1
        cycle = text(row, "cycle") or ("" if "cycle" in self.columns.of else str(self.rows[step]))
        place = self.columns.place(row, "step")
        return Reading(step, cycle, seconds, rating, note, place, text(row, "date"), text(row, "operator"))

    def _above_zero(self, row: Row, name: str) -> Fraction:
        number = self.columns.number(row, name)
        if number <= 0:
            words = "a reading is more than 0 seconds" if name == "reading" else f"a {name} is more than 0 percent"
            remedy = "Correct it; a reading that was missed is a row with a guess and `out: missed`."
            raise TextFault(f"the {name} is {self.columns.text(row, name)}: {words}", remedy=remedy)
        return number * self.columns.unit if name == "reading" and self.columns.unit != 1 else number

    def _watch(self, row: Row) -> Fraction:
        typed = self.columns.text(row, "clock")
        plain = typed.replace(",", ".") if self.columns.comma else typed
        if found := _CLOCK.fullmatch(plain):
            return Fraction(found["h"] or 0) * 3600 + Fraction(found["m"]) * 60 + Fraction(found["s"])
        return self.columns.number(row, "clock") * self.columns.unit

    def _passed(self, row: Row) -> Fraction:
        now, before = self._watch(row), self.clock
        self.clock = now
        if now <= before:
            message = f"the watch goes from {float(before):g} s to {float(now):g} s"
            raise TextFault(
                message, remedy="Correct it; where the watch was set anew, add a row with the note `start`."
            )
        return now - before

    def _pieces(self, row: Row) -> Fraction:
        if not self.columns.text(row, "pieces"):
            return _ONE
        pieces = self.columns.number(row, "pieces")
        if pieces < 1 or pieces.denominator != 1:
            raise TextFault(f"{self.columns.text(row, 'pieces')} pieces", remedy="Write a whole number, 1 or more.")
        return pieces

    def _note(self, note: str) -> None:
        for mark, what in ((OUT, "why"), (FOREIGN, "what")):
            if note.casefold().startswith(mark) and not note[len(mark) :].strip():
                raise TextFault(f"the note says `{mark}` but not {what}", remedy=f"Write `{mark} {what}`.")


def _unrated(
    readings: tuple[Reading, ...], columns: _Columns, table: Table, about: str, findings: list[Finding]
) -> None:
    """A rating left blank is a slip where others of the step have one."""
    rated = {one.step for one in readings if one.rating}
    for one in readings:
        if not one.rating and one.step in rated and not one.out:
            message = f"the rating is empty; other readings of {one.step} have one"
            findings.append(
                fault("value-unreadable", one.place, message, (about,), "Write the rating, 100 for normal.")
            )


def _rated(readings: tuple[Reading, ...]) -> tuple[Reading, ...]:
    """An unrated reading counts as it is: at 100."""
    hundred = Fraction(100)
    return tuple(one if one.rating else _with_rating(one, hundred) for one in readings)


def _with_rating(one: Reading, rating: Fraction) -> Reading:
    return Reading(one.step, one.cycle, one.seconds, rating, one.note, one.place, one.date, one.operator)
