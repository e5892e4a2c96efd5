"""An element pooled from steps that are not the same work."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.model import ElementData, show_percent, show_seconds


def check(subject: Subject) -> Iterator[Problem]:
    """Constant elements whose steps differ more than their own errors allow, and by more than the plant asks of a mean.

    With many readings the smallest difference shows; one below the plant's precision is nobody's concern.
    """
    results = subject.results
    for name, data in results.standard_data.items() if results is not None else ():
        pooled = data.pooled
        if pooled is None or pooled.homogeneous is not False or data.blind or pooled.between_sd_s is None:
            continue
        share = pooled.between_sd_s / pooled.mean_s
        if results is not None and share > results.precision.within:
            message = f"the steps of {name} differ by ± {show_percent(share, 0)}: {_ends(data)}"
            yield Problem(("element", name), ("from",), message, data.about, key=True)


def _ends(data: ElementData) -> str:
    """The shortest and the longest step."""
    low, high = (end(data.steps, key=lambda step: step.seconds) for end in (min, max))
    return f"{low.name} takes {show_seconds(low.seconds)}, {high.name} {show_seconds(high.seconds)}"


RULE = Rule(
    slug="element-not-homogeneous",
    severity=Severity.warning,
    why="A mean of unequal work is the time of none of it: too much in one place, too little in the other.",
    remedy="Make two elements, let the time vary with length or corners, or leave out the step that is other work.",
    check=check,
    bad="""
elements/all.yaml:
  elements: {turn-over: {title: Turn a panel over, from: [hem/lay, hem/look]}}
operations/sew-hem.yaml:
  times: studies/hem.csv
studies/hem.csv: |
  # operation: sew-hem
  step,cycle,reading,rating,note
  lay,1,2.9,100,
  lay,2,3.1,100,
  lay,3,3.0,100,
  look,1,1.9,100,
  look,2,2.0,100,
  look,3,2.1,100,
""",
    good="""
elements/all.yaml:
  elements: {turn-over: {title: Turn a panel over, from: [hem/lay, hem/look]}}
operations/sew-hem.yaml:
  times: studies/hem.csv
studies/hem.csv: |
  # operation: sew-hem
  step,cycle,reading,rating,note
  lay,1,2.9,100,
  lay,2,3.1,100,
  lay,3,3.0,100,
  look,1,2.9,100,
  look,2,3.0,100,
  look,3,3.1,100,
""",
    follows_from=("reading-implausible", "study-conditions-changed"),
    needs_results=True,
)
