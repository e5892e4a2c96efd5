"""A tolerance around another value than the geometry has."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.model import Quantity, Tolerance, show_quantity


def check(subject: Subject) -> Iterator[Problem]:
    """The nominal value typed in a tolerance against the dimension it is a tolerance of."""
    model = subject.model
    for name, operation in model.operations.items():
        for tolerance_name, tolerance in operation.tolerances.items():
            full = subject.dimension(name, tolerance.of) if tolerance.of else None
            spec = tolerance.is_
            if full is None or spec.form == "band" or spec.dimension != "length":
                continue
            wrong = next(
                (one[full] for _, one in subject.sizes() if full in one and not _agrees(spec, one[full])), None
            )
            if wrong is None:
                continue
            words = show_quantity(wrong, model.plant.units, both=False)
            around = f"is around {spec.nominal.text}" if spec.nominal is not None else f"is {spec.text}"
            message = f"{tolerance.of} is {words} on the part, but the tolerance {around}"
            about = (f"tolerance:{tolerance_name}", f"dimension:{full}")
            yield Problem(("operation", name), ("tolerances", tolerance_name, "is"), message, about)


def _agrees(spec: Tolerance, value: Quantity) -> bool:
    """A typed nominal is the part's own value; limits hold it."""
    return spec.nominal.value == value.value if spec.nominal is not None else spec.contains(value)


RULE = Rule(
    slug="tolerance-nominal",
    severity=Severity.error,
    why="The drawing shows one value and the check asks for another; the inspector can't tell which is meant.",
    remedy="Correct the one that is wrong; or type the band alone (`± 1 mm`), and the value follows from the part.",
    check=check,
    bad="""
operations/sew-hem.yaml:
  tolerances: {hem: {is: 14 mm ± 1}}
""",
    good="""
operations/sew-hem.yaml:
  tolerances: {hem: {is: ± 1 mm}}
""",
    follows_from=("expression-unreadable",),
)
