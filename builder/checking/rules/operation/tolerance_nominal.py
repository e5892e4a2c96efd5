"""A tolerance around another value than the geometry has."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.model import show_quantity


def check(subject: Subject) -> Iterator[Problem]:
    """The nominal value typed in a tolerance against the dimension it is a tolerance of."""
    from builder.checking.dimension_of import dimension_of

    model = subject.model
    for name, operation in model.operations.items():
        for tolerance_name, tolerance in operation.tolerances.items():
            full = dimension_of(subject, operation, tolerance.of) if tolerance.of else None
            value = subject.dimensions.values.get(full) if full else None
            spec = tolerance.is_
            if value is None or spec.form == "band" or spec.dimension != "length":
                continue
            if spec.nominal is not None and spec.nominal.value != value.value:
                words = show_quantity(value, model.plant.units, both=False)
                message = f"{tolerance.of} is {words} on the part, but the tolerance is around {spec.nominal.text}"
            elif spec.nominal is None and not spec.contains(value):
                words = show_quantity(value, model.plant.units, both=False)
                message = f"{tolerance.of} is {words} on the part, outside its own tolerance {spec.text}"
            else:
                continue
            about = (f"tolerance:{tolerance_name}", f"dimension:{full}")
            yield Problem(("operation", name), ("tolerances", tolerance_name, "is"), message, about)


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
