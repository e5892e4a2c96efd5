"""An element whose studies say too little for a time, or readings that can't count for it."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.flow import whole
from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.model import left_out_words, refusal_words


def check(subject: Subject) -> Iterator[Problem]:
    """Derived elements without a time, then readings left out of those that have one; silent beside other errors.

    A study no operation names is a finding of its own, so a step of it is told only where it leaves no time.
    """
    results, units = subject.results, subject.model.plant.units
    if results is None or not whole(subject):
        return
    for name, data in results.standard_data.items():
        if data.blind:
            continue
        typed = [one.text for one in subject.model.elements[name].from_]
        reasons = [left_out_words(step) for step in data.left_out]
        if data.refusal is not None:
            if data.steps or not reasons:
                reasons.append(refusal_words(data.refusal, len(data.steps), units))
            message = f"no time can be derived for {name}: {'; '.join(reasons)}"
            yield Problem(("element", name), ("from",), message, data.about, key=True)
            continue
        for step, reason in zip(data.left_out, reasons, strict=True):
            if step.why == "no operation":
                continue
            path = ("from", typed.index(step.name))
            yield Problem(("element", name), path, reason, step.about, severity=Severity.warning)


RULE = Rule(
    slug="element-not-derived",
    severity=Severity.error,
    why="Every step that takes its time from the element would stand in the product with no time at all.",
    remedy="Name more steps under `from:`, leave out what doesn't belong there, or type a time.",
    check=check,
    bad="""
elements/all.yaml:
  elements: {fold-edge: {title: Fold an edge, from: hem/fold-over, varies with: length}}
operations/sew-hem.yaml:
  times: studies/hem.csv
studies/hem.csv: |
  # operation: sew-hem
  step,cycle,reading,rating,note
  fold-over,1,5.0,100,
  fold-over,2,5.2,100,
""",
    good="""
elements/all.yaml:
  elements: {fold-edge: {title: Fold an edge, from: hem/fold-over}}
operations/sew-hem.yaml:
  times: studies/hem.csv
studies/hem.csv: |
  # operation: sew-hem
  step,cycle,reading,rating,note
  fold-over,1,5.0,100,
  fold-over,2,5.2,100,
""",
    follows_from=("name-unknown", "study-unused", "study-step-gone", "step-name-twice"),
    needs_results=True,
)
