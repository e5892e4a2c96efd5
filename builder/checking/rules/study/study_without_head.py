"""A study that doesn't say what it was taken under."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Place, Severity


def check(subject: Subject) -> Iterator[Problem]:
    """Studies that an operation names, without a line of head."""
    for name in subject.model.operations:
        study = subject.model.study_of(name)
        if study is not None and not study.head and study.readings:
            yield Problem(("operation", name), ("times",), MESSAGE, (f"study:{study.name}",), spot=Place(study.file))


MESSAGE = "the study doesn't say when, at which station and in which size it was taken"

RULE = Rule(
    slug="study-without-head",
    severity=Severity.warning,
    why="When the work changes, nobody can tell whether these readings still hold.",
    remedy="Above the header, add lines such as `# operation: hem-pocket` and `# date: 2026-10-12`.",
    check=check,
    bad="""
operations/sew-hem.yaml:
  times: studies/hem.csv
studies/hem.csv: |
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
  # date: 2026-10-12
  step,cycle,reading,rating,note
  hem,1,8.0,100,
  hem,2,8.1,100,
""",
)
