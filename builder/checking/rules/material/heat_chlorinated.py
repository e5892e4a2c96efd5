"""Heat on PVC, vinyl or another chlorinated polymer."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.heat import cut_by_heat
from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.model import chlorinated


def check(subject: Subject) -> Iterator[Problem]:
    """Title and composition of materials cut by laser or hot blade, whatever else is declared."""
    for name, operations in cut_by_heat(subject).items():
        material = subject.model.materials[name]
        texts = [(("composition", i), one) for i, one in enumerate(material.composition)]
        for path, text in (*texts, (("title",), material.title), ((), name.replace("-", " "))):
            found = chlorinated(text)
            if found is not None:
                message = f"{name} holds {found}, and {', '.join(operations)} cuts it by heat"
                yield Problem(("material", name), path, message, (f"composition:{found}",), key=not path)
                break


RULE = Rule(
    slug="heat-chlorinated",
    severity=Severity.error,
    why="Hot PVC and its kin give off hydrogen chloride: it burns lungs and eats the machine.",
    remedy="Cut it cold, at a knife or a cold strip cutter.",
    check=check,
    bad="""
materials/all.yaml:
  materials: {cloth: {composition: [polyester, PVC coating]}}
""",
    good="""
materials/all.yaml:
  materials: {cloth: {composition: [polyester, ethylene vinyl acetate]}}
""",
    safety=True,
)
