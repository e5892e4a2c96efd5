"""Rated readings that are all the same."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.checking.studied import problems_of_steps
from builder.finding import Severity
from builder.model import StepStudy, show_seconds

# Common practice, no source: hands never take the same tenth of a second five times running.
LEAST = 5


def check(subject: Subject) -> Iterator[Problem]:
    """Steps of hand work with five readings or more, all equal; a machine's own cycle may well be."""
    return problems_of_steps(subject, told, lambda operation, step: True)


def told(one: StepStudy) -> str:
    """What is wrong, in words."""
    if not (one.rated and one.n >= LEAST and one.sd_s == 0):
        return ""
    return f"all {one.n} readings of {one.step} are {show_seconds(one.mean_s)}"


RULE = Rule(
    slug="readings-equal",
    severity=Severity.warning,
    why="Hand work varies; equal readings were copied or read too coarsely, and look surer than they are.",
    remedy="Time it anew, to a tenth of a second; of a machine's own cycle the head says `# machine paced: STEP`.",
    check=check,
    bad="""
operations/sew-hem.yaml:
  times: studies/hem.csv
studies/hem.csv: |
  # operation: sew-hem
  step,cycle,reading,rating,note
  hem,1,8.0,100,
  hem,2,8.0,100,
  hem,3,8.0,100,
  hem,4,8.0,100,
  hem,5,8.0,100,
""",
    good="""
operations/sew-hem.yaml:
  times: studies/hem.csv
studies/hem.csv: |
  # operation: sew-hem
  step,cycle,reading,rating,note
  hem,1,8.0,100,
  hem,2,8.0,100,
  hem,3,7.9,100,
  hem,4,8.0,100,
  hem,5,8.0,100,
""",
    follows_from=("study-step-gone", "value-unreadable"),
    needs_results=True,
)
