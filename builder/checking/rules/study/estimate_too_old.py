"""An estimate nobody has timed for longer than the plant allows."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.model import Estimate


def check(subject: Subject) -> Iterator[Problem]:
    """Estimated elements by their date, operations with estimated steps by theirs; what has no date is not judged."""
    model = subject.model
    months = model.plant.oldest_estimate_months
    if months is None:
        return
    oldest = months_before(subject.today, months)
    for name, element in model.elements.items():
        if element.basis == "estimate" and element.date is not None and element.date < oldest:
            message = f"the element {name} is an estimate of {element.date}, older than {months} months"
            yield Problem(("element", name), ("date",), message)
    for name, operation in model.operations.items():
        if operation.date is None or operation.date >= oldest:
            continue
        study = model.study_of(name)
        timed = {reading.step for reading in study.readings if not reading.out} if study is not None else set()
        count = sum(isinstance(step.time, Estimate) and step.step not in timed for step in operation.steps)
        if count:
            steps = "1 step rests" if count == 1 else f"{count} steps rest"
            message = f"{steps} on estimates of {operation.date}, older than {months} months"
            yield Problem(("operation", name), ("date",), message)


def months_before(day: date, months: int) -> date:
    """The same day that many months earlier, or the last day of that month.

    >>> months_before(date(2026, 3, 31), 1)
    datetime.date(2026, 2, 28)
    """
    year, month = divmod(day.year * 12 + day.month - 1 - months, 12)
    if year < 1:
        return date.min
    for last in (day.day, 30, 29, 28):
        try:
            return date(year, month + 1, min(day.day, last))
        except ValueError:
            continue
    raise AssertionError("every month has 28 days")


RULE = Rule(
    slug="estimate-too-old",
    severity=Severity.warning,
    why="An estimate is a promise to time the work soon; kept for years it passes for a fact.",
    remedy="Time the work, or look at it again and date the estimate anew.",
    check=check,
    bad="""
plant.yaml: {oldest estimate months: 24}
operations/sew-hem.yaml: {date: 2023-05-11}
""",
    good="""
plant.yaml: {oldest estimate months: 24}
operations/sew-hem.yaml: {date: 2026-05-11}
""",
)
