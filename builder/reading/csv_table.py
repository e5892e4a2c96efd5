"""A CSV table of readings to plain cells with the place of each. What a reading means is not known here."""

from __future__ import annotations

import hashlib
import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import PurePosixPath
from typing import NamedTuple

from builder.finding import Finding, Place
from builder.reading.faults import fault
from builder.reading.raw_text import LINE_BREAK, decode, line_and_column, split_lines
from builder.reading.spots import pack, unpack

CSV_LIMIT = 8 * 1024**2
"""Largest table that is read [bytes]."""

_MAX_FINDINGS = 100
_HEAD_LINE = re.compile(r"[ \t]*(?P<quote>\"?)[ \t]*#(?P<text>[^\r\n]*)(?:\r\n|\n|\r|\Z)")
_HEAD_ENTRY = re.compile(r"[ \t]*(?P<key>[^\W\d_][^:]*?)[ \t]*:[ \t]*(?P<value>.*)")
# Spreadsheets write this line so that they find their own separator again.
_OWN_LINE = re.compile(r"sep=[,;][ \t]*(?:\r\n|\n|\r|\Z)")
_NO_CELLS = re.compile(r"[ \t,;]*(?:\r\n|\n|\r)")
_NUMBER = re.compile(r"[-+]?[\d.,]*\d[\d.,]*\Z")
_OPENING = re.compile(r'[ \t]*"')
_QUOTED = re.compile(r'([^"]*(?:""[^"]*)*)"')


@dataclass(slots=True)
class Row:
    """One row below the header.

    cells : text by column; a cell that the row doesn't reach is ""
    line  : of its first cell, 1-based
    spots : packed place of each cell
    """

    file: str
    line: int
    cells: dict[str, str]
    spots: dict[str, int]

    def place(self, column: str) -> Place:
        """Place of the cell's text; of the row if there is no such column."""
        return Place(self.file, *unpack(self.spots[column])) if column in self.spots else Place(self.file, self.line)


@dataclass(slots=True)
class Table:
    """One CSV file, read.

    file       : relative to the plant folder, with `/`
    name       : the file name without its ending
    head       : the `# key: value` lines on top
    head_spots : packed place of each value of the head
    columns    : names of the header row, in order
    column_spots : packed place of each
    rows       : below the header, those with at least one cell
    findings   : what is wrong with the text
    broken     : nothing in it can be used; it still counts as known
    digest     : SHA-256 of the bytes, hex
    """

    file: str
    name: str
    head: dict[str, str] = field(default_factory=dict)
    head_spots: dict[str, int] = field(default_factory=dict)
    columns: tuple[str, ...] = ()
    column_spots: dict[str, int] = field(default_factory=dict)
    rows: list[Row] = field(default_factory=list)
    findings: list[Finding] = field(default_factory=list)
    broken: bool = False
    digest: str = ""

    def head_place(self, key: str) -> Place:
        """Place of a value of the head; 1:1 if there is none."""
        return Place(self.file, *unpack(self.head_spots.get(key, pack(1, 1))))

    def column_place(self, column: str) -> Place:
        """Place of a column's name; 1:1 if there is none."""
        return Place(self.file, *unpack(self.column_spots.get(column, pack(1, 1))))


class _Cell(NamedTuple):
    text: str
    spot: int


class _Unclosed(Exception):
    """A quoted cell has no end; `index` is its quote mark."""

    def __init__(self, index: int) -> None:
        super().__init__()
        self.index = index


def read_table(data: bytes, file: str) -> Table:
    """Read one table. Never raises: all that is wrong is in the table's findings.

    data : the file's bytes, UTF-8 with or without a byte-order mark, separated by commas or semicolons
    file : its name for places, relative to the plant folder, with `/`

    Rows and columns that hold nothing are left out, as spreadsheets write them at will.
    """
    table = Table(file, PurePosixPath(file).stem, digest=hashlib.sha256(data).hexdigest())
    text, table.findings = decode(data, file, CSV_LIMIT)
    if text is None:
        table.broken = True
    else:
        _TableReader(table, text).read()
    return table


class _TableReader:
    """Fills one table from its text."""

    def __init__(self, table: Table, text: str) -> None:
        self.table = table
        self.text = text
        self.columns: list[str] = []  # "" where the name can't be used
        self.unnamed: dict[int, int] = {}  # spot of each column without a name that holds nothing so far

    def read(self) -> None:
        if not self.text.strip():
            remedy = "Type the readings, or delete the file."
            self.give_up(pack(1, 1), "text-empty-file", "The file is empty.", remedy)
            return
        index = self.read_head()
        separator = self.separator(index)
        if separator is None:
            return
        try:
            lines = _Cutter(self.text, index, separator).lines()
            if self.read_header(next(lines).cells):
                for line in lines:
                    self.read_row(line)
        except _Unclosed as unclosed:
            spot = pack(*line_and_column(self.text, unclosed.index))
            message = 'The quote mark " opened here is not closed.'
            self.give_up(spot, "text-unclosed-quote", message, 'Add " at the end of the cell.')

    def read_head(self) -> int:
        """Read the lines above the header; index of the header."""
        index, line = 0, 1
        while index < len(self.text):
            found = _HEAD_LINE.match(self.text, index)
            if found:
                self.read_head_line(found, line, index)
            else:
                found = _OWN_LINE.match(self.text, index) or _NO_CELLS.match(self.text, index)
            if not found:
                break
            index, line = found.end(), line + 1
        return index

    def read_head_line(self, found: re.Match[str], line: int, start: int) -> None:
        text = found["text"].rstrip(",; \t")
        if found["quote"]:
            text = text.removesuffix('"').replace('""', '"').rstrip()
        entry = _HEAD_ENTRY.match(text)
        if not entry:
            return  # a remark
        column = found.start("text") - start + 1
        key_spot, spot = pack(line, column + entry.start("key")), pack(line, column + entry.start("value"))
        key, value = entry["key"], entry["value"]
        if key in self.table.head:
            first = unpack(self.table.head_spots[key])[0]
            message = f"`{key}` is given twice; the first is in line {first}."
            self.report(key_spot, "text-duplicate-key", message, "Delete one of the two.")
        elif not value:
            remedy = "Type the value, or delete the line."
            self.report(key_spot, "text-empty-value", f"`{key}` has no value.", remedy)
        else:
            self.table.head[key] = value
            self.table.head_spots[key] = spot

    def separator(self, index: int) -> str | None:
        """Comma or semicolon, whichever the header has more of; None without a header, or with tabs."""
        line, column = line_and_column(self.text, index)
        if not self.text[index:].strip(" \t,;\r\n"):
            message = "There is no row with the names of the columns."
            self.give_up(pack(line, column), "text-no-header", message, "Type the names below the # lines.")
            return None
        header = re.sub(r'"[^"]*"', "", split_lines(self.text[index:])[0])
        commas, semicolons = header.count(","), header.count(";")
        if "\t" in header.strip() and not commas and not semicolons:
            message = "The columns are separated by tabs."
            spot = pack(line, column + header.index("\t"))
            self.give_up(spot, "text-separator", message, "Save the table with commas or semicolons.")
            return None
        return ";" if semicolons > commas else ","

    def read_header(self, names: list[_Cell]) -> bool:
        while names and not names[-1].text:
            names.pop()
        if all(_NUMBER.match(cell.text) or not cell.text for cell in names):
            spot = names[0].spot if names else pack(1, 1)
            message = "The first row has no names of columns."
            self.give_up(spot, "text-no-header", message, "Put a row with a name for each column above it.")
            return False
        spots = self.table.column_spots
        for cell in names:
            name = cell.text
            if name and name in spots:
                message = f"There are two columns `{name}`."
                self.report(cell.spot, "text-duplicate-column", message, "Rename or delete one of them.")
                name = ""
            elif not name:
                self.unnamed[len(self.columns)] = cell.spot
            else:
                spots[name] = cell.spot
            self.columns.append(name)
        self.table.columns = tuple(spots)
        return True

    def read_row(self, line: _Line) -> None:
        cells = line.cells
        while len(cells) > len(self.columns) and not cells[-1].text:
            cells.pop()
        if not any(cell.text for cell in cells):
            return
        if len(cells) > len(self.columns):
            message = f"This row has {len(cells)} cells, and the header names {len(self.columns)}."
            remedy = "Delete the cells too many; if a comma is a decimal comma, type a point."
            self.report(cells[len(self.columns)].spot, "text-too-many-cells", message, remedy)
        cells += [_Cell("", line.end)] * (len(self.columns) - len(cells))
        for at in [at for at in self.unnamed if cells[at].text]:
            remedy = "Type its name, or delete it."
            self.report(self.unnamed.pop(at), "text-unnamed-column", "This column has no name.", remedy)
        named = [(name, cell) for name, cell in zip(self.columns, cells, strict=False) if name]
        texts = {name: cell.text for name, cell in named}
        spots = {name: cell.spot for name, cell in named}
        self.table.rows.append(Row(self.table.file, unpack(cells[0].spot)[0], texts, spots))

    def give_up(self, spot: int, rule: str, message: str, remedy: str) -> None:
        self.table.broken = True
        self.report(spot, rule, message, remedy)

    def report(self, spot: int, rule: str, message: str, remedy: str) -> None:
        if len(self.table.findings) < _MAX_FINDINGS:
            self.table.findings.append(fault(Place(self.table.file, *unpack(spot)), rule, message, remedy))


class _Line(NamedTuple):
    cells: list[_Cell]
    end: int  # packed place behind the last cell


class _Cutter:
    """Cuts a text into rows of cells, from `index` on. Blanks around a cell's text are left out."""

    def __init__(self, text: str, index: int, separator: str) -> None:
        self.text = text
        self.index = index
        self.separator = separator
        self.line, column = line_and_column(text, index)
        self.start = index - column + 1  # index where the line begins
        self.plain = re.compile(rf"[^{separator}\r\n]*")

    def lines(self) -> Iterator[_Line]:
        """All rows. Raises _Unclosed."""
        cells: list[_Cell] = []
        while self.index < len(self.text) or cells:
            cells.append(self.cell())
            if self.text.startswith(self.separator, self.index):
                self.index += 1
                continue
            yield _Line(cells, self.spot(self.index))
            cells = []
            if line_end := LINE_BREAK.match(self.text, self.index):
                self.index = line_end.end()
                self.line, self.start = self.line + 1, self.index

    def cell(self) -> _Cell:
        words, spot = "", 0
        if opening := _OPENING.match(self.text, self.index):
            quoted = _QUOTED.match(self.text, opening.end())
            if not quoted:
                raise _Unclosed(opening.end() - 1)
            words, spot = quoted[1].replace('""', '"'), self.spot(opening.end())
            for line_end in LINE_BREAK.finditer(self.text, quoted.start(), quoted.end()):
                self.line, self.start = self.line + 1, line_end.end()
            self.index = quoted.end()
        plain = self.plain.match(self.text, self.index)
        tail = plain.group() if plain else ""
        if not spot:
            spot = self.spot(self.index + len(tail) - len(tail.lstrip()))
        self.index += len(tail)
        return _Cell((words + tail).strip(), spot)

    def spot(self, index: int) -> int:
        return pack(self.line, index - self.start + 1)
