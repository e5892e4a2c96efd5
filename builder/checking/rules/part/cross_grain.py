"""A part cut against the direction its goods must be cut in."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.model import Part


def check(subject: Subject) -> Iterator[Problem]:
    """Grain of each part of lengthwise goods, and how such parts are turned inside a sub-assembly."""
    for name, part in subject.model.parts.items():
        cut = part.outline is not None and part.outline.strip is None and part.material is not None
        if cut and part.grain != "up" and _lengthwise(subject, name):
            grain = "lies across" if part.grain == "across" else "is free"
            message = f"the grain of {name} {grain}, but {part.material} is cut lengthwise only"
            yield Problem(("part", name), ("grain",), message, (f"material:{part.material}",))
        yield from _turned(subject, name, part)


def _turned(subject: Subject, name: str, part: Part) -> Iterator[Problem]:
    """Of the lengthwise parts inside one sub-assembly, those that lie crosswise to the first of them."""
    first: tuple[str, float] | None = None
    for number, component in enumerate(part.from_):
        if not _lengthwise(subject, component.part):
            continue
        turn = float(component.turn.value) if component.turn is not None else 0.0
        first = first or (component.part, turn)
        if abs((turn - first[1]) % 180 - 90) < _CROSSWISE_DEG:
            message = f"{component.part} lies crosswise to {first[0]}, and both are of lengthwise goods"
            about = (f"part:{component.part}", f"part:{first[0]}")
            yield Problem(("part", name), ("from", number, "turn"), message, about)


_CROSSWISE_DEG = 45.0


def _lengthwise(subject: Subject, part: str) -> bool:
    material = subject.model.materials.get(subject.model.material_of(part) or "")
    return material is not None and material.direction == "lengthwise"


RULE = Rule(
    slug="cross-grain",
    severity=Severity.warning,
    why="Cut crosswise, goods with nap, print or stretch look another shade, or grow in the wrong direction.",
    remedy="Type `grain: up`, and give the part the outline it then needs; or turn it in the sub-assembly.",
    check=check,
    bad="""
materials/all.yaml:
  materials: {cloth: {direction: lengthwise}}
parts/panel.yaml: {grain: across}
""",
    good="""
materials/all.yaml:
  materials: {cloth: {direction: lengthwise}}
parts/panel.yaml: {grain: up}
""",
)
