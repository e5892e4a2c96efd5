"""Steps that studies have timed, for the rules on what their readings say."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from builder.checking.rule import Problem, Subject
from builder.finding import Place
from builder.model import StepStudy, Study

Told = Callable[[StepStudy], str]
"""What is wrong with a step's readings, in words; '' where nothing is."""


def problems_of_steps(subject: Subject, told: Told, only: Callable[[str, str], bool]) -> Iterator[Problem]:
    """A problem for each studied step that `told` has words for, at the first reading that counts.

    only : whether a step of an operation, by their names, is asked at all
    """
    for name, summary in subject.results.studies.items() if subject.results is not None else ():
        study = subject.model.study_of(name)
        for one in summary.steps:
            message = told(one) if study is not None and only(name, one.step) else ""
            if study is not None and message:
                about = (f"study:{study.name}", f"step:{one.step}")
                yield Problem(("operation", name), ("times",), message, about, spot=first_reading(study, one))


def first_reading(study: Study, one: StepStudy) -> Place:
    """Where the first reading of a step stands that counts."""
    return next(reading.place for reading in study.by_step()[one.step] if not reading.out)
