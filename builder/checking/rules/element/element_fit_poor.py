"""A variable element whose line through the steps is unsure even in its middle."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.model import show_percent, show_seconds

MOST = 2
"""A line drawn from a few steps may be this many times as unsure as the mean of a study. Ours, no source."""


def check(subject: Subject) -> Iterator[Problem]:
    """Fits whose interval at the middle lies further to either side than twice the plant's precision."""
    results = subject.results
    for name, data in results.standard_data.items() if results is not None else ():
        if data.fit is None or data.blind or results is None:
            continue
        share = data.fit.middle_half_s / data.fit.middle_s
        most = MOST * results.precision.within
        if share > most:
            middle = f"{show_seconds(data.fit.middle_s)} ± {show_percent(share, 0)}"
            message = f"in the middle of its range {name} takes {middle}; more than ± {show_percent(most, 0)} is unsure"
            yield Problem(("element", name), ("varies with",), message, data.about, key=True)


_STEPS = """
operations/sew-hem.yaml:
  times: studies/hem.csv
  steps:
  - {step: first, do: Fold the first edge over., fold: first}
  - {step: second, do: Fold the second edge over., fold: second}
  - {step: third, do: Fold the third edge over., fold: third}
parts/panel.yaml:
  features:
    first: {fold: line, points: [{left: 20 mm, bottom: 50 mm}, {left: 60 mm, bottom: 50 mm}]}
    second: {fold: line, points: [{left: 20 mm, bottom: 80 mm}, {left: 120 mm, bottom: 80 mm}]}
    third: {fold: line, points: [{left: 20 mm, bottom: 110 mm}, {left: 220 mm, bottom: 110 mm}]}
elements/all.yaml:
  elements:
    fold-edge: {title: Fold an edge, from: [hem/first, hem/second, hem/third], varies with: length}
studies/hem.csv: |
  # operation: sew-hem
  step,cycle,reading,rating,note
"""
"""Three folds of 40, 100 and 200 mm."""

RULE = Rule(
    slug="element-fit-poor",
    severity=Severity.warning,
    why="A time read off such a line is a guess that looks like a measurement.",
    remedy="Name more steps of other lengths under `from:`; if one lies far off the line, look at how it was timed.",
    check=check,
    bad=f"""{_STEPS}  first,1,2.0,100,
  first,2,2.1,100,
  second,1,4.4,100,
  second,2,4.6,100,
  third,1,4.5,100,
  third,2,4.7,100,
""",
    good=f"""{_STEPS}  first,1,2.0,100,
  first,2,2.1,100,
  second,1,3.2,100,
  second,2,3.4,100,
  third,1,5.2,100,
  third,2,5.5,100,
""",
    follows_from=("reading-implausible", "study-conditions-changed", "element-not-derived"),
    needs_results=True,
)
