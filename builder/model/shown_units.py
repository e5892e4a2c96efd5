"""Units for show: two families, the unit and the step in which each kind is shown in them, their spelling.

Only shown.py uses it.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from builder.model.units import UNITS, UNITS_OF, Unit

First = Literal["mm", "in"]

PRETTY = {name: name.replace("2", "²") for name in UNITS if name.endswith("2")} | {"deg": "°"}

# The unit of the other family, with the step a value is rounded to.
METRIC: dict[str, tuple[str, Fraction]] = {
    "length": ("mm", Fraction(1, 10)),
    "mass": ("g", Fraction(1)),
    "force": ("N", Fraction(1, 10)),
    "force per width": ("N/mm", Fraction(1, 10)),
    "areal mass": ("g/m2", Fraction(1)),
    "linear mass": ("g/m", Fraction(1, 10)),
    "linear density": ("tex", Fraction(1)),
    "stitch length": ("mm", Fraction(1, 10)),
    "speed": ("mm/s", Fraction(1)),
    "acceleration": ("mm/s2", Fraction(1)),
    "temperature": ("°C", Fraction(1)),
    "pressure": ("kPa", Fraction(1)),
    "area": ("mm2", Fraction(1)),
}
US: dict[str, tuple[str, Fraction]] = {
    "length": ("in", Fraction(1, 100)),
    "mass": ("oz", Fraction(1, 10)),
    "force": ("lbf", Fraction(1, 10)),
    "force per width": ("lbf/in", Fraction(1, 10)),
    "areal mass": ("oz/yd2", Fraction(1, 10)),
    "linear mass": ("oz/yd", Fraction(1, 100)),
    "stitch length": ("st/in", Fraction(1, 10)),
    "speed": ("in/s", Fraction(1, 10)),
    "acceleration": ("in/s2", Fraction(1)),
    "temperature": ("°F", Fraction(1)),
    "pressure": ("psi", Fraction(1, 10)),
    "area": ("in2", Fraction(1, 10)),
}


@dataclass(frozen=True, slots=True)
class Scale:
    """The unit in which a value of the other family is shown, and its coarsest step."""

    unit: Unit
    step: Fraction

    def finer(self) -> Iterator[Fraction]:
        """The step, a tenth of it, a hundredth ..."""
        step = self.step
        while True:
            yield step
            step /= 10


def other_scale(dimension: str, unit: str) -> Scale | None:
    """Unit and step of the family that `unit` is not of; None if there is only one."""
    system = UNITS_OF[dimension][unit].system
    table = {"mm": US, "in": METRIC}.get(system, {})
    if dimension not in table:
        return None
    name, step = table[dimension]
    return Scale(UNITS_OF[dimension][name], step)


def with_unit(number: str, unit: str) -> str:
    """The number with its unit in its printed spelling."""
    return f"{number}°" if unit == "deg" else f"{number} {PRETTY.get(unit, unit)}".rstrip()
