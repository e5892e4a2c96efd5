"""Heat on a material nobody declared."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.heat import cut_by_heat
from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity


def check(subject: Subject) -> Iterator[Problem]:
    """Materials cut by laser or hot blade: composition declared, none of it unknown, with evidence."""
    for name, operations in cut_by_heat(subject).items():
        material = subject.model.materials[name]
        unknown = next((i for i, one in enumerate(material.composition) if "unknown" in one.lower()), None)
        by = f"{', '.join(operations)} cuts it by heat"
        if not material.composition:
            yield Problem(("material", name), (), f"{name} has no declared composition, and {by}", (), key=True)
        elif unknown is not None:
            message = f"part of {name} is unknown, and {by}"
            yield Problem(("material", name), ("composition", unknown), message, ())
        elif material.evidence is None:
            message = f"the composition of {name} rests on nothing, and {by}"
            yield Problem(("material", name), ("composition",), message, (), key=True)


RULE = Rule(
    slug="heat-composition",
    severity=Severity.error,
    why="Unknown goods under a laser or a hot blade may give off poison or burn.",
    remedy="Get the safety data sheet and type composition and evidence; until then cut it cold.",
    check=check,
    bad="""
materials/all.yaml:
  materials: {cloth: {composition: [nylon, unknown coating]}}
""",
    good="""
materials/all.yaml:
  materials: {cloth: {composition: [nylon, polyurethane coating]}}
""",
    safety=True,
)
