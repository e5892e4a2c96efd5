"""Reading tables: cells, places, what spreadsheets do to a file, and a case for every finding."""

from __future__ import annotations

import csv
import io
import random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.finding import Place
from builder.reading import CSV_LIMIT, WHY, Table, read_table

STUDY = """\
# date: 2026-01-05
# operation: sew-handle-end
# by hand

lay,box,look
3.1,6.0,2.2
3.3,,"2,4"
"""

CASES: dict[str, tuple[str | bytes, bool, list[str]]] = {
    "no byte at all": ("", True, ["1:1 empty-file"]),
    "only blanks": ("\n \n", True, ["1:1 empty-file"]),
    "not UTF-8": (b"lay\n3\xb5\n", True, ["2:2 encoding"]),
    "larger than allowed": (b"a" * (CSV_LIMIT + 1), True, ["1:1 too-large"]),
    "control character": ("lay\n3\x004\n", False, ["2:2 control-character"]),
    "only a head": ("# date: x\n", True, ["2:1 no-header"]),
    "only separators below the head": ("# date: x\n,,\n", True, ["3:1 no-header"]),
    "numbers in the first row": ("# date: x\n3.1,6.0\n3.3,6.1\n", True, ["2:1 no-header"]),
    "separated by tabs": ("lay\tbox\n1\t2\n", True, ["1:4 separator"]),
    "duplicate column": ("lay,box,lay\n1,2,3\n", False, ["1:9 duplicate-column"]),
    "column without a name": ("lay,,box\n1,2,3\n", False, ["1:5 unnamed-column"]),
    "too many cells": ("lay,box\n3,1,6\n", False, ["2:5 too-many-cells"]),
    "unclosed quote": ('lay,box\n1,"2\n3,4\n', True, ["2:3 unclosed-quote"]),
    "head key twice": ("# a: x\n# b: y\n# a: z\nlay\n1\n", False, ["3:3 duplicate-key"]),
    "head key without a value": ("# date:\nlay\n1\n", False, ["1:3 empty-value"]),
}  # fmt: skip


def encoded(text: str | bytes) -> bytes:
    return text if isinstance(text, bytes) else text.encode()


def texts(table: Table) -> list[list[str]]:
    return [list(row.cells.values()) for row in table.rows]


@pytest.mark.parametrize(("text", "broken", "expected"), CASES.values(), ids=CASES.keys())
def test_finding_stands_at_its_place(text: str | bytes, broken: bool, expected: list[str]) -> None:
    table = read_table(encoded(text), "studies/f.csv")
    found = [f"{one.place.line}:{one.place.column} {one.rule.removeprefix('text-')}" for one in table.findings]
    assert found == expected
    assert table.broken is broken
    assert all(one.message and one.why and one.remedy for one in table.findings)


def test_a_study_is_read_with_its_places() -> None:
    table = read_table(STUDY.encode(), "studies/sew.csv")
    assert (table.findings, table.broken, table.name) == ([], False, "sew")
    assert table.head == {"date": "2026-01-05", "operation": "sew-handle-end"}
    assert table.head_place("operation") == Place("studies/sew.csv", 2, 14)
    assert table.head_place("missing") == Place("studies/sew.csv", 1, 1)
    assert table.columns == ("lay", "box", "look")
    assert table.column_place("box") == Place("studies/sew.csv", 5, 5)
    assert texts(table) == [["3.1", "6.0", "2.2"], ["3.3", "", "2,4"]]
    assert [row.line for row in table.rows] == [6, 7]
    assert table.rows[0].place("look") == Place("studies/sew.csv", 6, 9)
    assert table.rows[1].place("box") == Place("studies/sew.csv", 7, 5)
    assert table.rows[1].place("look") == Place("studies/sew.csv", 7, 7)
    assert table.rows[1].place("missing") == Place("studies/sew.csv", 7, 1)


@pytest.mark.parametrize("end", ["\n", "\r\n", "\r"])
@pytest.mark.parametrize("start", ["", "\ufeff"])
def test_line_ends_and_byte_order_mark_change_nothing(end: str, start: str) -> None:
    table = read_table((start + STUDY.replace("\n", end)).encode(), "f.csv")
    assert table.findings == []
    assert texts(table) == [["3.1", "6.0", "2.2"], ["3.3", "", "2,4"]]
    assert table.rows[1].place("look") == Place("f.csv", 7, 7)


def test_semicolons_let_a_comma_stand_in_a_number() -> None:
    table = read_table(b"# a: b; c;;\nlay;box\n3,1;6,0\n", "f.csv")
    assert texts(table) == [["3,1", "6,0"]]
    assert table.head == {"a": "b; c"}


def test_what_a_spreadsheet_adds_is_left_out() -> None:
    """Empty columns and rows at the end, separators behind and quotes around a head line, its own line."""
    text = 'sep=,\n# date: x,,,\n"# note: a, ""b""",,,\n,,,\nlay,box,,\n1,2,,\n3,,,\n,,,\n\n,,,\n'
    table = read_table(text.encode(), "f.csv")
    assert table.findings == []
    assert table.head == {"date": "x", "note": 'a, "b"'}
    assert table.columns == ("lay", "box")
    assert texts(table) == [["1", "2"], ["3", ""]]


def test_short_row_is_filled_and_the_missing_cell_stands_at_its_end() -> None:
    table = read_table(b"a,b,c\n1, 2\n", "f.csv")
    assert texts(table) == [["1", "2", ""]]
    assert table.rows[0].place("b") == Place("f.csv", 2, 4)
    assert table.rows[0].place("c") == Place("f.csv", 2, 5)


def test_quoted_cell_may_hold_line_breaks() -> None:
    table = read_table(b'a,b\n"x\ny",2\n3,4\n', "f.csv")
    assert texts(table) == [["x\ny", "2"], ["3", "4"]]
    assert table.rows[0].place("b") == Place("f.csv", 3, 4)
    assert table.rows[1].line == 4


def test_column_that_cannot_be_used_is_left_out_and_moves_no_other() -> None:
    table = read_table(b"a,b,a,,c\n1,2,3,4,5\n", "f.csv")
    assert table.columns == ("a", "b", "c")
    assert texts(table) == [["1", "2", "5"]]


def test_too_many_cells_leave_the_row_readable() -> None:
    assert texts(read_table(b"a,b\n1,2,3\n4,5\n", "f.csv")) == [["1", "2"], ["4", "5"]]


CELLS = st.text(st.sampled_from('ab1,;" \n#é'), max_size=6)


@given(st.lists(st.lists(CELLS, min_size=3, max_size=3), max_size=6), st.sampled_from(",;"), st.booleans())
def test_what_is_written_is_read(rows: list[list[str]], separator: str, quoted: bool) -> None:
    """Random cells come back the same, blanks around them and empty rows apart."""
    out = io.StringIO()
    dialect = csv.unix_dialect if quoted else csv.excel  # one quotes every cell
    writer = csv.writer(out, dialect, delimiter=separator, lineterminator="\n")
    writer.writerows([["x", "y", "z"], *rows])
    table = read_table(out.getvalue().encode(), "f.csv")
    expected = [[cell.strip() for cell in row] for row in rows]
    assert table.findings == []
    assert texts(table) == [row for row in expected if any(row)]


def test_a_storm_of_mutations_never_raises() -> None:
    """Whatever the bytes are: no exception, and every place lies inside the file."""
    for seed in range(2000):
        chance = random.Random(seed)
        data = bytearray(STUDY.encode())
        for _ in range(chance.randint(1, 5)):
            at = chance.randrange(len(data))
            if chance.random() < 0.5:
                data[at] = chance.randrange(256)
            else:
                data[at:at] = chance.choice([b'"', b"\n", b",", b";", b"#", b"\r", b"\t", b":", b"sep=;\n"])
        table = read_table(bytes(data), "f.csv")
        lines = bytes(data).replace(b"\r\n", b"\n").replace(b"\r", b"\n").split(b"\n")
        places = [one.place for one in table.findings]
        places += [row.place(column) for row in table.rows for column in table.columns]
        for place in places:
            assert 1 <= place.line <= len(lines), seed
            assert 1 <= place.column <= len(lines[place.line - 1]) + 1, seed
        assert {one.rule for one in table.findings} <= set(WHY)


@given(st.binary(max_size=100))
def test_any_bytes_can_be_read(data: bytes) -> None:
    table = read_table(data, "f.csv")
    assert table.findings or table.columns
