"""Hardware set with the die of another."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.model import Hardware


def check(subject: Subject) -> Iterator[Problem]:
    """The die each piece of hardware names against the setting `die`."""
    model = subject.model
    for name in model.operations:
        typed = subject.settings(name).get("die")
        if typed is None:
            continue
        asked = []
        for one in subject.worked(name):
            material = model.materials.get(one.feature.hardware) if isinstance(one.feature, Hardware) else None
            if one.key == "set" and material is not None and material.die is not None:
                asked.append((one, material.die))
        wrong = [(one, die) for one, die in asked if die != typed.words]
        # When none fits, the setting is wrong; when some do, the step is.
        alone = len(wrong) == len(asked)
        for one, die in wrong[: 1 if alone else None]:
            path = ("settings", "die") if alone else one.path
            hardware = one.feature.hardware if isinstance(one.feature, Hardware) else one.name
            message = f"{hardware} is set with die {die}, not {typed.words}"
            about = ("setting:die", f"feature:{one.name}", f"material:{hardware}")
            yield Problem(("operation", name), path, message, about)


RULE = Rule(
    slug="die-for-hardware",
    severity=Severity.error,
    why="The wrong die crushes the snap: it looks set, and opens or tears out at the first pull.",
    remedy="Type the die the hardware names, or set it in an operation of its own.",
    check=check,
    bad="""
materials/all.yaml:
  materials: {snap: {die: S-15}}
operations/press-snap.yaml:
  settings: {die: S-12}
""",
    good="""
materials/all.yaml:
  materials: {snap: {die: S-15}}
operations/press-snap.yaml:
  settings: {die: S-15}
""",
    follows_from=("setting-unreadable", "setting-outside-range", "step-feature-missing"),
)
