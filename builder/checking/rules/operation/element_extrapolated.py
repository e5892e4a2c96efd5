"""A step longer, or with more corners, than any its element was timed with."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Literal

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.model import Beyond, Results, span_words, variable_words


def check(subject: Subject) -> Iterator[Problem]:
    """Steps whose time is read off a fit beyond its range, in every size; each step once, with its first size."""
    model, results = subject.model, subject.results
    if results is None:
        return
    for (name, step), (size, beyond) in _first(results).items():
        data = results.standard_data.get(beyond.element)
        if data is not None and data.blind:
            continue  # a study that can't be read now may well reach so far
        steps = model.operations[name].steps
        number = next(number for number, one in enumerate(steps) if one.step == step)
        message = f"step {step} {_words(beyond, size, model.plant.units)}"
        yield Problem(("operation", name), ("steps", number, "time"), message, (f"element:{beyond.element}",))


def _first(results: Results) -> dict[tuple[str, str], tuple[str, Beyond]]:
    """By operation and step, the size it lies beyond the fit in, '' for the values as typed, and by how much."""
    found: dict[tuple[str, str], tuple[str, Beyond]] = {}
    for (name, product, size), time in results.operations.items():
        for step in time.steps:
            if step.beyond is not None and (not product or (name, step.step) not in found):
                found[name, step.step] = size, step.beyond
    return found


def _words(beyond: Beyond, size: str, units: Literal["mm", "in"]) -> str:
    timed = span_words(beyond.variable, (beyond.low, beyond.high), units)
    if beyond.value is None:
        return f"has no {beyond.variable} that {beyond.element} could go by; the middle of {timed} counts"
    value = variable_words(beyond.variable, beyond.value, units)
    where = f" in size {size}" if size else ""
    return f"works on {value}{where}, but {beyond.element} was timed with {timed}"


_STEPS = """
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
    fourth: {fold: line, points: [{left: 20 mm, bottom: 140 mm}, {left: END, bottom: 140 mm}]}
elements/all.yaml:
  elements:
    fold-edge: {title: Fold an edge, from: [hem/first, hem/second, hem/third], varies with: length}
studies/hem.csv: |
  # operation: sew-hem
  step,cycle,reading,rating,note
  first,1,2.0,100,
  first,2,2.1,100,
  second,1,3.2,100,
  second,2,3.4,100,
  third,1,5.2,100,
  third,2,5.5,100,
"""
_FOURTH = "  - {step: fourth, do: Fold the fourth edge over., fold: fourth, time: fold-edge}\nparts/panel.yaml:"


def _example(end: str) -> str:
    """A fourth fold from 20 mm to `end`, timed by the line through folds of 40, 100 and 200 mm."""
    return "\noperations/sew-hem.yaml:" + _STEPS.replace("END", end).replace("parts/panel.yaml:", _FOURTH)


RULE = Rule(
    slug="element-extrapolated",
    severity=Severity.warning,
    why="A line through timed work says nothing beyond it; the time at the nearest end counts, as an estimate.",
    remedy="Time a step of this size and name it under the element's `from:`, or type the step's own time.",
    check=check,
    bad=_example("260 mm"),
    good=_example("180 mm"),
    follows_from=("element-not-derived", "element-fit-poor"),
    needs_results=True,
)
