"""Studies as engineers and spreadsheets write them, and one message for each fault."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.finding import Finding
from builder.model import Study, read_study
from builder.reading import read_table


def read(text: str) -> tuple[Study | None, list[Finding]]:
    """A study's text to the study and all findings."""
    table = read_table(text.encode(), "studies/hem.csv")
    findings = list(table.findings)
    return read_study(table, findings), findings


def seconds(text: str) -> list[float]:
    """Seconds of all readings of a study without faults."""
    study, findings = read(text)
    assert not findings
    assert study is not None
    return [float(one.seconds) for one in study.readings]


def test_a_study_as_a_spreadsheet_saves_it() -> None:
    """Byte-order mark, semicolons, decimal commas that the head announces, empty columns, blanks."""
    text = (
        "\ufeff# operation: sew-hem;;;;;;\r\n# decimal: comma;;;;;;\r\n"
        "Step;Cycle;Reading;Rating;Note;;\r\nlay;1;3,25;100;;;\r\nhem; 1 ;8,5;95;;;\r\n;;;;;;\r\n"
    )
    assert seconds(text) == [3.25, 8.5]


def test_columns_of_other_names_are_not_read() -> None:
    """An observer's own column is nobody's business."""
    assert seconds("step,weather,reading,rating\nlay,wet,3.0,100\n") == [3.0]


def test_decimal_minutes_when_the_header_says_so() -> None:
    assert seconds("step,cycle,reading (min),rating\nlay,1,0.05,100\n") == [3.0]


def test_a_running_watch_is_read_by_differences() -> None:
    """A foreign element takes its time out of the next; `start` sets the watch."""
    text = (
        "step,cycle,clock,rating,note\n"
        ",,0:10.0,,start\nlay,1,0:13.0,100,\n,1,0:20,,foreign: talk with the supervisor\nhem,1,0:28.5,100,\n"
    )
    study, findings = read(text)
    assert not findings
    assert study is not None
    assert [float(one.seconds) for one in study.readings] == [3.0, 7.0, 8.5]
    assert [one.foreign for one in study.readings] == [False, True, False]


def test_a_running_watch_in_minutes_with_decimal_comma() -> None:
    assert seconds("# decimal: comma\nstep;clock (min);rating\nlay;0,05;100\nhem;0,20;100\n") == [3.0, 9.0]


def test_pieces_are_divided_out() -> None:
    assert seconds("step,cycle,reading,rating,pieces\ncut,1,30.0,100,12\n") == [2.5]


def test_a_whole_step_without_ratings_counts_at_100() -> None:
    study, findings = read("step,cycle,reading,rating\npress,1,2.0,\npress,2,2.1,\n")
    assert not findings
    assert study is not None
    assert {one.rating for one in study.readings} == {Fraction(100)}


def test_left_out_and_foreign_readings_are_known_by_their_notes() -> None:
    study, _ = read("step,cycle,reading,rating,note\nlay,1,3,100,\nlay,2,9,100,Out: fell\nlay,3,9,100,foreign: call\n")
    assert study is not None
    assert [float(one.seconds) for one in study.of_step("lay")] == [3.0]
    assert len(study.by_step()["lay"]) == 2


FAULTS = [
    ("wrong header", "stepp,cycle,reading,rating\nlay,1,3,100\n", "1:1", "lacks step; `stepp` may be meant for step"),
    ("no rating column", "step,cycle,reading\nlay,1,3\n", "1:1", "lacks rating"),
    ("reading and clock", "step,reading,clock,rating\nlay,1,2,100\n", "1:1", "both reading and clock"),
    ("negative time", "step,cycle,reading,rating\nlay,1,-3,100\n", "2:7", "the reading is -3"),
    ("no number", "step,cycle,reading,rating\nlay,1,three,100\n", "2:7", "`three` is no number"),
    ("empty reading", "step,cycle,reading,rating\nlay,1,,100\n", "2:7", "the reading is empty"),
    ("rating of nothing", "step,cycle,reading,rating\nlay,1,3,0\n", "2:9", "the rating is 0"),
    ("rating forgotten", "step,cycle,reading,rating\nlay,1,3,100\nlay,2,3,\n", "3:1", "the rating is empty"),
    ("comma unannounced", "step;cycle;reading;rating\nlay;1;3,2;100\n", "2:7", "has a decimal comma"),
    ("unknown decimal sign", "# decimal: dot\nstep,reading,rating\nlay,1,100\n", "1:12", "`dot` is not known"),
    ("watch goes back", "step,clock,rating\nlay,5,100\nhem,4,100\n", "3:5", "the watch goes from 5 s to 4 s"),
    ("out without why", "step,reading,rating,note\nlay,1,100,out:\n", "2:11", "says `out:` but not why"),
    ("half a piece", "step,reading,rating,pieces\nlay,1,100,0.5\n", "2:11", "0.5 pieces"),
    ("no step", "step,cycle,reading,rating\n,1,3,100\n", "2:1", "the step is empty"),
    ("header only", "step,cycle,reading,rating\n", "1:1", "no reading below the header"),
]


@pytest.mark.parametrize(("text", "at", "words"), [one[1:] for one in FAULTS], ids=[one[0] for one in FAULTS])
def test_each_fault_is_one_clear_finding(text: str, at: str, words: str) -> None:
    """At its line and column, with something to do; the study is not used."""
    study, findings = read(text)
    assert study is None
    assert len(findings) == 1
    assert f"{findings[0].place.line}:{findings[0].place.column}" == at
    assert words in findings[0].message
    assert findings[0].remedy


def test_all_faults_of_a_study_are_told_at_once() -> None:
    _, findings = read("step,reading,rating\nlay,-1,100\nlay,x,100\nlay,2,0\n")
    assert [one.place.line for one in findings] == [2, 3, 4]


@given(st.lists(st.integers(min_value=1, max_value=10**6), min_size=1, max_size=30))
def test_a_running_watch_and_single_readings_say_the_same(milliseconds: list[int]) -> None:
    """Adding up and taking apart are inverse, exactly."""
    total, rows, clocks = 0, [], []
    for one in milliseconds:
        total += one
        rows.append(f"lay,{one / 1000:.3f},100")
        clocks.append(f"lay,{total / 1000:.3f},100")
    single, _ = read("step,reading,rating\n" + "\n".join(rows))
    running, _ = read("step,clock,rating\n" + "\n".join(clocks))
    assert single is not None
    assert running is not None
    assert [one.seconds for one in single.readings] == [one.seconds for one in running.readings]


@given(st.text(max_size=200))
def test_no_text_breaks_the_reader(text: str) -> None:
    """Findings, never an exception."""
    read("step,cycle,reading,rating,note\n" + text)
