"""A study no operation names."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.flow import whole
from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Place, Severity


def check(subject: Subject) -> Iterator[Problem]:
    """Files of studies that are in no operation's `times:`; silent while a file can't be read."""
    model = subject.model
    if not whole(subject):
        return
    named = {study.name for name in model.operations if (study := model.study_of(name)) is not None}
    for name, study in model.studies.items():
        if name not in named:
            message = f"no operation names {study.file} under `times:`"
            yield Problem(("plant", "plant"), (), message, (f"study:{name}",), spot=Place(study.file))


RULE = Rule(
    slug="study-unused",
    severity=Severity.note,
    why="Somebody stood at the machine with a watch, and the product is still priced by an estimate.",
    remedy="Name it under `times:` of the operation it was taken at, or take the file away.",
    check=check,
    bad="""
studies/hem.csv: |
  # operation: sew-hem
  step,cycle,reading,rating,note
  hem,1,8.0,100,
  hem,2,8.1,100,
""",
    good="""
operations/sew-hem.yaml:
  times: studies/hem.csv
studies/hem.csv: |
  # operation: sew-hem
  step,cycle,reading,rating,note
  hem,1,8.0,100,
  hem,2,8.1,100,
""",
    follows_from=("name-unknown",),
)
