"""A standard that hangs on one reading."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Place, Severity
from builder.model import EACH_PIECE, StepStudy, Study


def check(subject: Subject) -> Iterator[Problem]:
    """Steps done with every piece that a study timed once; of what is done once a bundle or batch few are read."""
    if subject.results is None:
        return
    for name, summary in subject.results.studies.items():
        study = subject.model.study_of(name)
        often = {step.step for step in subject.model.operations[name].steps if step.per in (None, EACH_PIECE)}
        for one in summary.steps:
            if study is not None and one.step in often and one.n == 1:
                about = (f"study:{study.name}", f"step:{one.step}")
                yield Problem(("operation", name), ("times",), message_of(one), about, spot=place_of(study, one))


def message_of(one: StepStudy) -> str:
    """What is wrong, in words."""
    return f"{one.step} was read once; nobody can say how far off that is"


def place_of(study: Study, one: StepStudy) -> Place:
    """The reading that counts, else the first."""
    return next(reading.place for reading in study.by_step()[one.step] if not reading.out)


RULE = Rule(
    slug="reading-single",
    severity=Severity.warning,
    why="One reading may be the best or the worst of a hundred, and it has no interval.",
    remedy="Time more cycles: two show whether they agree, the study's page says how many are enough.",
    check=check,
    bad="""
operations/sew-hem.yaml:
  times: studies/hem.csv
studies/hem.csv: |
  # operation: sew-hem
  step,cycle,reading,rating,note
  hem,1,8.0,100,
""",
    good="""
operations/sew-hem.yaml:
  times: studies/hem.csv
studies/hem.csv: |
  # operation: sew-hem
  step,cycle,reading,rating,note
  hem,1,8.0,100,
  hem,2,8.2,100,
""",
    follows_from=("study-step-gone", "value-unreadable"),
    needs_results=True,
)
