"""A tolerance that lets nearly anything pass."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.model import Quantity, ToleranceSpec, show_percent

# Common practice, no source: below this length a millimetre is a large share of anything.
SMALLEST_MM = 10
MOST_SHARE = Fraction(1, 4)


def check(subject: Subject) -> Iterator[Problem]:
    """Half the band of each tolerance on a length of 10 mm and more, against the length itself."""
    for name, operation in subject.model.operations.items():
        for tolerance_name, spec in operation.tolerances.items():
            nominal, band = _nominal(subject, name, spec), spec.is_.band
            if nominal is None or band is None or nominal.value < SMALLEST_MM:
                continue
            share = band / 2 / nominal.value
            if share > MOST_SHARE:
                message = f"{spec.is_.text} is {show_percent(share, 0)} to either side of {nominal.text}"
                path = ("tolerances", tolerance_name, "is")
                yield Problem(("operation", name), path, message, (f"tolerance:{tolerance_name}",))


def _nominal(subject: Subject, operation: str, spec: ToleranceSpec) -> Quantity | None:
    if spec.is_.dimension != "length":
        return None
    full = subject.dimension(operation, spec.of) if spec.of is not None else None
    return subject.dimensions.values.get(full, spec.is_.nominal) if full is not None else spec.is_.nominal


RULE = Rule(
    slug="tolerance-too-wide",
    severity=Severity.warning,
    why="A slipped point makes a check that every piece passes, and the fault goes on to the customer.",
    remedy="Type what the product can bear.",
    check=check,
    bad="""
operations/sew-hem.yaml:
  tolerances: {hem: {is: ± 6 mm}}
""",
    good="""
operations/sew-hem.yaml:
  tolerances: {hem: {is: ± 1 mm}}
""",
    follows_from=("tolerance-nominal", "tolerance-dimension"),
)
