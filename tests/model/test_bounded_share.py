"""Shares of a shift and the learning rate, within the bounds their formulas need."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest
from pydantic import TypeAdapter, ValidationError

from builder.model import bounded_share
from builder.pipeline import check_plant
from tests.checking.overlay import lay_over

GOOD: list[tuple[str, Any, Fraction]] = [
    ("Performance", "88 %", Fraction(88, 100)),
    ("Performance", "130 %", Fraction(13, 10)),
    ("Availability", 0.94, Fraction(94, 100)),
    ("Availability", "100 %", Fraction(1)),
    ("LostShare", "0 %", Fraction(0)),
    ("LostShare", "99 %", Fraction(99, 100)),
    ("LearningRate", "50.1 %", Fraction(501, 1000)),
    ("LearningRate", "100 %", Fraction(1)),
]
BAD = [
    ("Performance", "0 %", "nothing is ever made"),
    ("Availability", "0 %", "nothing is ever made"),
    ("Availability", "101 %", "100 % is the most"),
    ("LostShare", "100 %", "no time to work"),
    ("LearningRate", "50 %", "above 50 %"),
    ("LearningRate", "15 %", "above 50 %"),
    ("LearningRate", "101 %", "100 % at most"),
    ("LearningRate", "soon", "soon"),
    ("LearningRate", "86 mm", "mm is a length"),
]


def adapter(name: str) -> TypeAdapter[Any]:
    return TypeAdapter(getattr(bounded_share, name))


@pytest.mark.parametrize(("name", "typed", "value"), GOOD)
def test_what_lies_within_is_read(name: str, typed: Any, value: Fraction) -> None:
    assert adapter(name).validate_python(typed) == value


@pytest.mark.parametrize(("name", "typed", "words"), BAD)
def test_what_lies_beyond_is_refused_with_a_reason(name: str, typed: str, words: str) -> None:
    with pytest.raises(ValidationError) as caught:
        adapter(name).validate_python(typed)
    assert words in str(caught.value)


FACTS = [
    ("plant.yaml", "performance: 0 %", "0 %"),
    ("plant.yaml", "off standard: 100 %", "100 %"),
    ("plant.yaml", "learning: {rate: 14 %, standard after: 900, source: records}", "14 %"),
    ("plant.yaml", "shift: {paid: 8 h, breaks: 8 h}", "paid"),
    ("stations/all.yaml", "stations: {lockstitch: {availability: 120 %}}", "120 %"),
]


@pytest.mark.parametrize(("file", "line", "at"), FACTS)
def test_a_fact_beyond_its_bounds_is_one_finding_at_the_value(file: str, line: str, at: str, tmp_path: Path) -> None:
    """Such a fact used to stop the program, or to be left aside without a word."""
    folder = lay_over(f"{file}: {{{line}}}", tmp_path / "plant")
    findings = check_plant(folder).findings
    assert [one.rule for one in findings] == ["value-unreadable"]
    place = findings[0].place
    text = (folder / file).read_text(encoding="utf-8").splitlines()[place.line - 1]
    assert place.file == file
    assert text[place.column - 1 :].lstrip("'\"").startswith(at), text
