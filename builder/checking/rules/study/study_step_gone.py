"""Readings of a step the operation no longer has."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.model import near


def check(subject: Subject) -> Iterator[Problem]:
    """Step names of studies against the operation that names the study in `times:`."""
    model = subject.model
    for name, operation in model.operations.items():
        study = model.study_of(name)
        if study is None:
            continue
        known = [step.step for step in operation.steps]
        # A name typed twice may have taken the place of the one that is missing.
        twice = tuple(f"step:{one}" for one in dict.fromkeys(known) if known.count(one) > 1)
        for step in dict.fromkeys(
            reading.step for reading in study.readings if not reading.note.startswith("foreign:")
        ):
            if step in known:
                continue
            close = near(step, known)
            hint = f"Did you mean `{close[0]}`? Rename the readings' step, or take them out." if close else ""
            message = f"{study.file} has readings of `{step}`, which is no step of {name}"
            yield Problem(
                ("operation", name),
                ("times",),
                message,
                (f"step:{step}", *twice, *(f"step:{one}" for one in close)),
                hint,
            )


RULE = Rule(
    slug="study-step-gone",
    severity=Severity.error,
    why="Readings that belong to no step are time that went missing from the product.",
    remedy="Rename the readings' step, or take them out.",
    check=check,
    bad="""
operations/sew-hem.yaml:
  times: studies/old.csv
studies/old.csv: |
  # operation: sew-hem
  step,cycle,reading,rating,note
  hemm,1,8.0,100,
  hemm,2,8.1,100,
""",
    good="""
operations/sew-hem.yaml:
  times: studies/old.csv
studies/old.csv: |
  # operation: sew-hem
  step,cycle,reading,rating,note
  hem,1,8.0,100,
  hem,2,8.1,100,
""",
    follows_from=(
        "name-unknown",
        "step-name-twice",
    ),
)
