"""A standard that hangs on one reading."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.checking.studied import problems_of_steps
from builder.finding import Severity
from builder.model import EACH_PIECE, StepStudy


def check(subject: Subject) -> Iterator[Problem]:
    """Steps done with every piece that a study timed once; of what is done once a bundle or batch few are read."""
    operations = subject.model.operations

    def often(operation: str, name: str) -> bool:
        return any(step.step == name and step.per in (None, EACH_PIECE) for step in operations[operation].steps)

    return problems_of_steps(subject, told, often)


def told(one: StepStudy) -> str:
    """What is wrong, in words."""
    return f"{one.step} was read once; nobody can say how far off that is" if one.n == 1 else ""


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
