"""A gauge too coarse for its tolerance."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from builder.checking.rule import Problem, Rule, Subject
from builder.checking.walk import length_words
from builder.finding import Severity
from builder.model import show_number

RULE_OF_TENS = 10
"""Divisions a tolerance should hold: the rule of tens of gauge studies, as the automotive manual on measurement
systems analysis has it (memory)."""
FEW = 4
"""Below this a good piece and a bad one may read the same. Common practice, no source."""


def check(subject: Subject) -> Iterator[Problem]:
    """Width of each tolerance in divisions of its gauge; go / no-go gauges have none and are passed."""
    gauges = subject.model.plant.gauges
    for name, operation in subject.model.operations.items():
        for tolerance_name, spec in operation.tolerances.items():
            gauge = gauges.get(spec.with_ or "")
            width = spec.is_.band
            if gauge is None or gauge.limit is not None or gauge.graduation is None or width is None:
                continue
            if spec.is_.dimension != gauge.graduation.dimension:
                continue
            divisions = width / gauge.graduation.value
            if divisions < RULE_OF_TENS:
                band = length_words(width, subject.model)
                mark = length_words(gauge.graduation.value, subject.model)
                count = show_number(divisions, 1)
                message = f"the {spec.with_} reads {mark}, the tolerance is {band} wide: {count} divisions"
                about = (f"tolerance:{tolerance_name}", f"gauge:{spec.with_}")
                path = ("tolerances", tolerance_name, "with")
                severity = _severity(divisions)
                yield Problem(("operation", name), path, message, about, severity=severity)


def _severity(divisions: Fraction) -> Severity:
    if divisions < 1:
        return Severity.error
    return Severity.warning if divisions < FEW else Severity.note


RULE = Rule(
    slug="gauge-too-coarse",
    severity=Severity.warning,
    why="Between two lines the reader guesses, and near a limit a guess passes bad work or stops good work.",
    remedy="Take a finer gauge or a go / no-go gauge, or widen the tolerance: ten divisions are good, four the least.",
    check=check,
    bad="""
plant.yaml: {gauges: {tape measure: {graduation: 1 mm}}}
operations/sew-hem.yaml:
  tolerances: {hem: {with: tape measure}}
""",
    good="""
plant.yaml: {gauges: {tape measure: {graduation: 1 mm}}}
operations/sew-hem.yaml:
  tolerances: {hem: {with: rule}}
""",
    follows_from=("name-unknown", "gauge-missing"),
)
