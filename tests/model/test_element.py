"""Elements: typed, or derived from steps of studies; what contradicts itself or leads nowhere is one finding."""

from __future__ import annotations

from pathlib import Path

import pytest

from builder.errors import TextFault
from builder.model.element import parse_study_step
from tests.plants import found, linked

STUDY = """
operations/sew-hem.yaml: {times: studies/hem.csv}
studies/hem.csv: |
  # operation: sew-hem
  step,cycle,reading,rating,note
  lay,1,2.0,100,
"""


def element(keys: str) -> str:
    return f"elements/all.yaml: {{elements: {{pick-up: {{title: Pick up, {keys}}}}}}}\n{STUDY}"


def test_the_names_of_a_study_and_its_step() -> None:
    one = parse_study_step(" hem-pocket / lay ")
    assert (one.study, one.step, one.text, one.at, one.step_at) == ("hem-pocket", "lay", "hem-pocket/lay", 1, 14)


@pytest.mark.parametrize("text", ["hem-pocket", "hem-pocket/", "/lay", "a/b/c", "Hem/lay", ""])
def test_anything_else_is_refused(text: str) -> None:
    with pytest.raises(TextFault, match="a study and one of its steps"):
        parse_study_step(text)


def test_a_derived_element_needs_neither_time_nor_basis(tmp_path: Path) -> None:
    """One step may stand without a list."""
    one = linked(element("from: hem/lay, varies with: [length, corners]"), tmp_path).model.elements["pick-up"]
    assert (one.derived, one.time, one.basis) == (True, None, "studied")
    assert [step.text for step in one.from_] == ["hem/lay"]
    assert one.varies_with == ("length", "corners")


@pytest.mark.parametrize(
    ("keys", "slug", "words"),
    [
        ("basis: studied", "key-missing", "`time:` or `from:` is missing"),
        ("time: 2 s", "key-missing", "`basis:` is missing"),
        ("time: 2 s, from: hem/lay", "key-unknown", "`time:` stands beside `from:`"),
        ("range: 5 %, from: hem/lay", "key-unknown", "`range:` stands beside `from:`"),
        ("readings: many, from: hem/lay", "key-unknown", "`readings:` stands beside `from:`"),
        ("basis: estimate, from: hem/lay", "key-unknown", "is studied, not an estimate"),
        ("time: 2 s, basis: studied, varies with: length", "key-unknown", "needs readings of several steps"),
        ("from: hem/lay, varies with: [length, length]", "name-twice", "names the same thing twice"),
        ("from: [hem/lay, hem / lay]", "name-twice", "hem/lay twice"),
        ("from: []", "value-unreadable", "`from:` is empty"),
        ("from: hem/lay, varies with: lenght", "value-unreadable", "`varies with` can't be `lenght`"),
        ("from: hem/lay, tme: 2 s", "key-unknown", "`tme` is no key"),
        ("tme: 2 s, basis: studied", "key-unknown", "`tme` is no key"),
        ("from: hem", "value-unreadable", "a study and one of its steps"),
        ("from: hemm/lay", "name-unknown", "no study is called `hemm`"),
        ("from: hem/lya", "name-unknown", "no step of the study hem is called `lya`"),
    ],
)
def test_each_fault_is_one_finding(keys: str, slug: str, words: str, tmp_path: Path) -> None:
    findings = found(element(keys), tmp_path)
    assert [one.rule for one in findings] == [slug], [one.message for one in findings]
    assert words in findings[0].message
    assert findings[0].place.file == "elements/all.yaml"


def test_a_near_name_is_offered_for_study_and_step(tmp_path: Path) -> None:
    study, step = (found(element(f"from: {name}"), tmp_path / name[:3]) for name in ("hme/lay", "hem/lya"))
    assert "Did you mean `hem`?" in study[0].remedy
    assert "Did you mean `lay`?" in step[0].remedy


def test_the_finding_points_at_the_name_that_is_wrong(tmp_path: Path) -> None:
    """The step behind the slash, not the whole text."""
    study, step = (found(element(f"from: [{name}]"), tmp_path / name[:3])[0] for name in ("hme/lay", "hem/lya"))
    assert step.place.column == study.place.column + len("hem/")


def test_a_study_that_cannot_be_read_is_no_unknown_name(tmp_path: Path) -> None:
    """It is reported itself; nothing that names it complains."""
    broken = element("from: hem/lay").replace("lay,1,2.0,100,", "lay,1,two,100,")
    assert "name-unknown" not in {one.rule for one in found(broken, tmp_path)}
