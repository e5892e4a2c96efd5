"""A colour that changes more than the colour."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.model import Material, Quantity, show_quantity


def check(subject: Subject) -> Iterator[Problem]:
    """What takes the place of a material is the same goods; a fact one of the two lacks is not compared."""
    model = subject.model
    for name, product in model.products.items():
        for colour, swaps in product.colours.items():
            for old, new in swaps.items():
                if old not in model.materials or new not in model.materials:
                    continue
                differences = list(_differences(model.materials[old], model.materials[new], subject))
                if differences:
                    message = f"{new} differs from {old} in {', '.join(differences)}"
                    about = (f"material:{old}", f"material:{new}")
                    yield Problem(("product", name), ("colours", colour, old), message, about)


_COMPARED = ("form", "structure", "width", "thickness", "tex", "direction", "ends", "die")


def _differences(old: Material, new: Material, subject: Subject) -> Iterator[str]:
    """Each fact in which they differ, with both values."""
    for key in _COMPARED:
        before, after = getattr(old, key), getattr(new, key)
        if before is None or after is None or before == after or _harmless(key, before, after, old):
            continue
        yield f"{key} ({_shown(after, subject)} for {_shown(before, subject)})"


def _harmless(key: str, before: object, after: object, old: Material) -> bool:
    """Equal in other units, or sheet goods from a wider roll: the lay still fits."""
    if not isinstance(before, Quantity) or not isinstance(after, Quantity):
        return False
    wider = key == "width" and old.form in ("sheet", "foam") and after.value > before.value
    return before.value == after.value or wider


def _shown(value: object, subject: Subject) -> str:
    if isinstance(value, Quantity):
        return show_quantity(value, subject.model.plant.units, both=False)
    return str(value)


_MOSS = """
materials/all.yaml:
  materials:
    thread-moss: {title: "Thread, moss", form: thread, tex: TEX}
products/pouch.yaml: {colours: {slate: {}, moss: {thread-70: thread-moss}}}
"""

RULE = Rule(
    slug="colour-changes-goods",
    severity=Severity.error,
    why="Drawings, settings and times were made for other goods, and the sheet would be wrong in that colour.",
    remedy="Take goods that differ in colour only, or write a product of its own for the other goods.",
    check=check,
    bad=_MOSS.replace("TEX", "135 tex"),
    good=_MOSS.replace("TEX", "70 tex"),
    follows_from=("name-unknown",),
)
