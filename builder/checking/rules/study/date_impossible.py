"""A day that can't be, or hasn't come yet."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity


def check(subject: Subject) -> Iterator[Problem]:
    """Dates of operations, of their studies, of calibrations, templates and evidence, against today."""
    model, today = subject.model, subject.today
    for name, operation in model.operations.items():
        if operation.date is not None and operation.date > today:
            yield _later(("operation", name), ("date",), operation.date)
        study = model.study_of(name)
        typed = study.head.get("date", "") if study is not None else ""
        if study is None or not typed:
            continue
        message = _fault(typed, today)
        if message:
            yield Problem(
                ("operation", name), ("times",), message, (f"study:{study.name}",), spot=study.head_places.get("date")
            )
    for name, station in model.stations.items():
        if station.pace.calibrated is not None and station.pace.calibrated > today:
            yield _later(("station", name), ("pace", "calibrated"), station.pace.calibrated)
    for name, template in model.templates.items():
        if template.date > today:
            yield _later(("template", name), ("date",), template.date)
        if template.measured is not None and template.measured.date > today:
            yield _later(("template", name), ("measured", "date"), template.measured.date)
    for name, material in model.materials.items():
        if material.evidence is not None and material.evidence.date > today:
            yield _later(("material", name), ("evidence", "date"), material.evidence.date)


def _later(owner: tuple[str, str], path: tuple[str, ...], day: date) -> Problem:
    return Problem(owner, path, f"{day.isoformat()} has not come yet", ())


def _fault(typed: str, today: date) -> str:
    try:
        day = date.fromisoformat(typed)
    except ValueError:
        return f"{typed} is no day; a date is written as 2026-10-12"
    return f"{typed} has not come yet" if day > today else ""


RULE = Rule(
    slug="date-impossible",
    severity=Severity.warning,
    why="How old a time, a calibration or a data sheet is, is counted from its date.",
    remedy="Correct the date.",
    check=check,
    bad="""
operations/sew-hem.yaml:
  times: studies/hem.csv
studies/hem.csv: |
  # operation: sew-hem
  # station: lockstitch
  # date: 2026-13-09
  step,cycle,reading,rating,note
  hem,1,8.0,100,
  hem,2,8.1,100,
""",
    good="""
operations/sew-hem.yaml:
  times: studies/hem.csv
studies/hem.csv: |
  # operation: sew-hem
  # station: lockstitch
  # date: 2026-09-13
  step,cycle,reading,rating,note
  hem,1,8.0,100,
  hem,2,8.1,100,
""",
)
