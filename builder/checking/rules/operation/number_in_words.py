"""A length in a sentence that the part no longer has."""

from __future__ import annotations

import re
from collections.abc import Iterator
from fractions import Fraction

from builder.checking.prose import step_sentences
from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.model import Quantity, Step, Tolerance, ToleranceSpec, show_quantity

_LENGTH = re.compile(r"(?<![\w./])(?:(\d+) +)?(\d+/\d+|\d+(?:\.\d+)?) ?(mm|cm|in)\b(?!\.?\w)")
_MM = {"mm": Fraction(1), "cm": Fraction(10), "in": Fraction(254, 10)}
_NEAR = Fraction(1, 5)
"""A number this near to a dimension of the work, but not equal to it, was meant for it: ours, no source."""


def check(subject: Subject) -> Iterator[Problem]:
    """Lengths in `do` and `key` against all the operation knows; those that only just miss a measure of the step.

    A number near no measure of the work is the sentence's own (`trim to 5 mm`) and is left alone.
    """
    units, shop = subject.model.plant.units, _shop(subject)
    for name, operation in subject.model.operations.items():
        known: set[Fraction] | None = None
        for sentence in step_sentences(operation, ("do", "key")):
            for found in _LENGTH.finditer(sentence.text):
                if found[2].endswith("/0"):
                    continue
                known = _known(subject, name) if known is None else known
                number = _number(found)
                if number in known or number in shop:
                    continue
                step = operation.steps[int(sentence.path[1])]
                meant = [one for one in _of_step(subject, name, step) if _may_mean(number, one.value)]
                if meant:
                    nearest = min(meant, key=lambda one: abs(one.value - number))
                    shown = show_quantity(nearest, units, both=False)
                    message = f"{sentence.owner} says {found[0]}; the nearest measure of its work is {shown}"
                    about = (f"step:{step.step}",)
                    yield Problem(("operation", name), sentence.path, message, about, offset=found.start())


def _may_mean(number: Fraction, measure: Fraction) -> bool:
    """Whether a number only just misses a measure, or is it with the point slipped."""
    return abs(measure - number) <= _NEAR * measure or number in (10 * measure, measure / 10)


def _number(found: re.Match[str]) -> Fraction:
    return (Fraction(found[1] or 0) + Fraction(found[2])) * _MM[found[3]]


def _known(subject: Subject, name: str) -> set[Fraction]:
    """Every length the operation has: dimensions in all sizes, tolerances, settings."""
    model = subject.model
    operation = model.operations[name]
    names = {one for part in (*operation.makes, *operation.needs) for one in subject.book.dimension_names(part)}
    known = {values[one].value for _, values in subject.sizes() for one in names if one in values}
    for spec in operation.tolerances.values():
        known |= _ends(spec.is_)
    for setting in subject.settings(name).values():
        if isinstance(setting.value, Quantity):
            known.add(setting.value.value)
        elif isinstance(setting.value, Tolerance):
            known |= _ends(setting.value)
    return known


def _shop(subject: Subject) -> set[Fraction]:
    """Lengths that belong to the plant: gauges, widths and thicknesses of materials."""
    model = subject.model
    sizes = [one for material in model.materials.values() for one in (material.width, material.thickness)]
    sizes += [gauge.graduation for gauge in model.plant.gauges.values()]
    return {one.value for one in sizes if one is not None}


def _ends(spec: Tolerance) -> set[Fraction]:
    nominal = spec.nominal.value if spec.nominal is not None else None
    return {abs(one) for one in (spec.low, spec.high, nominal) if one is not None}


def _of_step(subject: Subject, name: str, step: Step) -> Iterator[Quantity]:
    """Measures of what a step works on, and what its checks ask for."""
    values = subject.dimensions.values
    for worked in subject.worked(name):
        if worked.step is step:
            begin = f"{worked.part}/{worked.name}."
            for short, _ in worked.feature.dimensions():
                if f"{begin}{short}" in values:
                    yield values[f"{begin}{short}"]
    for check_name in step.check:
        spec = subject.model.operations[name].tolerances.get(check_name)
        if spec is not None:
            yield from _nominal(subject, name, spec)


def _nominal(subject: Subject, name: str, spec: ToleranceSpec) -> Iterator[Quantity]:
    full = subject.dimension(name, spec.of) if spec.of else None
    if full is not None and full in subject.dimensions.values:
        yield subject.dimensions.values[full]
    elif spec.is_.nominal is not None and spec.is_.dimension == "length":
        yield spec.is_.nominal


RULE = Rule(
    slug="number-in-words",
    severity=Severity.warning,
    why="The drawing moved on and the sentence stayed; the operator reads the sentence.",
    remedy="Correct the number, or leave it out: the sheet prints the measure beside the step from its `check:`.",
    check=check,
    bad="""
operations/sew-hem.yaml:
  steps: [{step: fold-over, do: Fold 16 mm of the top edge over.}]
""",
    good="""
operations/sew-hem.yaml:
  steps: [{step: fold-over, do: Fold 15 mm of the top edge over.}]
""",
    follows_from=("expression-unreadable", "tolerance-dimension"),
)
