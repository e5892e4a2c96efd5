"""Goods that would be heavier than the fibre they are made of."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.model import Material, show_number

# Common practice, no source: solid polyester and nylon weigh 1.1 to 1.4 g/cm³, the lightest foam some 0.015, open
# hook tape some 0.17.
HEAVIEST_G_CM3 = 1.6
LIGHTEST_G_CM3 = {"sheet": 0.01, "foam": 0.01, "webbing": 0.1, "tape": 0.1}


def check(subject: Subject) -> Iterator[Problem]:
    """Mass over thickness of sheets, mass over width and thickness of webbing and tape."""
    for name, material in subject.model.materials.items():
        density = _density(material)
        if density is not None and not LIGHTEST_G_CM3[material.form] <= density <= HEAVIEST_G_CM3:
            key = "mass" if material.mass is not None else "mass per length"
            message = f"by its mass and size {name} weighs {show_number(density, 2)} g/cm³; textiles and foam don't"
            yield Problem(("material", name), (key,), message, ())


def _density(material: Material) -> float | None:
    """g/cm³ from g/m² and mm, or from g/m and mm², None where a size isn't known or the form is another."""
    if material.thickness is None:
        return None
    thickness = float(material.thickness.value)
    if material.form in ("sheet", "foam") and material.mass is not None:
        return float(material.mass.value) / thickness / 1000
    if material.form in ("webbing", "tape") and material.mass_per_length is not None and material.width is not None:
        return float(material.mass_per_length.value) / (float(material.width.value) * thickness)
    return None


RULE = Rule(
    slug="density-implausible",
    severity=Severity.warning,
    why="Mass, load of a bundle and cost of every product are wrong by that factor.",
    remedy="Read the data sheet again: mass, width and thickness, and their units.",
    check=check,
    bad="""
materials/all.yaml:
  materials: {cloth: {thickness: 0.04 mm}}
""",
    good="""
materials/all.yaml:
  materials: {cloth: {thickness: 0.4 mm}}
""",
)
