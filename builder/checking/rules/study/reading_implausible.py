"""A reading or rating that can hardly be meant."""

from __future__ import annotations

from collections.abc import Iterator
from statistics import median

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.model import Reading, Study, show_number, show_seconds

# Common practice, no source.
LEAST_RATING, MOST_RATING = 50, 150
MOST_OF_MEDIAN, ORDINAL = 5, "fifth"
_LEAST_READINGS = 3


def check(subject: Subject) -> Iterator[Problem]:
    """Ratings far from 100 and readings far from the step's median, of the studies that operations name."""
    for name in subject.model.operations:
        study = subject.model.study_of(name)
        if study is None:
            continue
        medians = _medians(study)
        for reading in study.readings:
            if not reading.out and (words := _implausible(reading, medians.get(reading.step))):
                cycle = f", cycle {reading.cycle}" if reading.cycle else ""
                message = f"{reading.step}{cycle}: {words}"
                about = (f"study:{study.name}", f"step:{reading.step}")
                yield Problem(("operation", name), ("times",), message, about, spot=reading.place)


def _medians(study: Study) -> dict[str, float]:
    found = {step: [float(one.seconds) for one in study.of_step(step)] for step in study.by_step()}
    return {step: median(seconds) for step, seconds in found.items() if len(seconds) >= _LEAST_READINGS}


def _implausible(reading: Reading, middle: float | None) -> str:
    if not LEAST_RATING <= reading.rating <= MOST_RATING:
        return f"a rating of {show_number(reading.rating, 0)} % is outside {LEAST_RATING} to {MOST_RATING} %"
    if middle is None or reading.note:
        return ""
    seconds = float(reading.seconds)
    if seconds > MOST_OF_MEDIAN * middle:
        far = f"over {MOST_OF_MEDIAN} times"
    elif seconds * MOST_OF_MEDIAN < middle:
        far = f"under a {ORDINAL} of"
    else:
        return ""
    return f"{show_seconds(reading.seconds)} is {far} the median of {show_seconds(middle)}, without a note"


RULE = Rule(
    slug="reading-implausible",
    severity=Severity.warning,
    why="One slipped digit moves the mean of the whole step, and with it the standard.",
    remedy="Correct the slip; if it did happen, say so in the note, with `out:` or `foreign:` to leave it out.",
    check=check,
    bad="""
operations/sew-hem.yaml:
  times: studies/hem.csv
studies/hem.csv: |
  # operation: sew-hem
  step,cycle,reading,rating,note
  hem,1,8.0,100,
  hem,2,81.0,100,
  hem,3,8.2,100,
""",
    good="""
operations/sew-hem.yaml:
  times: studies/hem.csv
studies/hem.csv: |
  # operation: sew-hem
  step,cycle,reading,rating,note
  hem,1,8.0,100,
  hem,2,81.0,100,out: bobbin ran empty
  hem,3,8.2,100,
""",
)
