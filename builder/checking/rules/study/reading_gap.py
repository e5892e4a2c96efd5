"""A cycle of a study without its reading of a step."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.model import Study

# Common practice, no source: a step read in most cycles is done in each; one read in few is occasional.
REGULAR_SHARE = 0.8
_LEAST_CYCLES = 5


def check(subject: Subject) -> Iterator[Problem]:
    """Steps read in nearly every cycle that lack one; numbers of cycles only."""
    for name in subject.model.operations:
        study = subject.model.study_of(name)
        if study is None:
            continue
        for step, cycles in _missing(study):
            at = next(reading.place for reading in study.readings if reading.step == step)
            message = f"{step} has no reading in cycle {', '.join(map(str, cycles))}"
            yield Problem(("operation", name), ("times",), message, (f"study:{study.name}", f"step:{step}"), spot=at)


def _missing(study: Study) -> Iterator[tuple[str, list[int]]]:
    read: dict[str, set[int]] = {}
    for reading in study.readings:
        if reading.cycle.strip().isdecimal():
            read.setdefault(reading.step, set()).add(int(reading.cycle))
    every = set().union(*read.values()) if read else set()
    for step, cycles in read.items():
        if len(every) >= _LEAST_CYCLES and REGULAR_SHARE * len(every) <= len(cycles) < len(every):
            yield step, sorted(every - cycles)


RULE = Rule(
    slug="reading-gap",
    severity=Severity.note,
    why="A line was lost, or the observer missed it; either way somebody should know before the mean is trusted.",
    remedy="Add the reading, or a line with the reading guessed and the note `out: missed`.",
    check=check,
    bad="""
operations/sew-hem.yaml:
  times: studies/hem.csv
studies/hem.csv: |
  # operation: sew-hem
  step,cycle,reading,rating,note
  lay,1,3.0,100,
  hem,1,8.0,100,
  lay,2,3.1,100,
  hem,2,8.1,100,
  lay,3,2.9,100,
  lay,4,3.0,100,
  hem,4,8.2,100,
  lay,5,3.1,100,
  hem,5,8.0,100,
""",
    good="""
operations/sew-hem.yaml:
  times: studies/hem.csv
studies/hem.csv: |
  # operation: sew-hem
  step,cycle,reading,rating,note
  lay,1,3.0,100,
  hem,1,8.0,100,
  lay,2,3.1,100,
  hem,2,8.1,100,
  lay,3,2.9,100,
  hem,3,8.1,100,out: missed
  lay,4,3.0,100,
  hem,4,8.2,100,
  lay,5,3.1,100,
  hem,5,8.0,100,
""",
    follows_from=("study-step-gone", "value-unreadable"),
)
