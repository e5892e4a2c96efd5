"""A pattern sewn at a machine with programs, without the program."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.model import Bartack, Box


def check(subject: Subject) -> Iterator[Problem]:
    """Boxes and bartacks at stations that list `program`; where the kind requires one, setting-missing says it."""
    model = subject.model
    for name, operation in model.operations.items():
        station, kind = model.stations.get(operation.station), model.kind_of(name)
        if station is None or kind is None or "program" not in station.settings or "program" in operation.settings:
            continue
        if "program" not in kind.settings or kind.settings["program"].required:
            continue
        pattern = next(
            (one for one in subject.worked(name) if one.key == "sew" and isinstance(one.feature, Box | Bartack)), None
        )
        if pattern is not None:
            where = ("settings",) if operation.settings else ("station",)
            message = f"{pattern.name} is a pattern, and no program of {station.title} is named for it"
            about = ("setting:program", f"station:{operation.station}", f"feature:{pattern.name}")
            yield Problem(("operation", name), where, message, about, key=True)


_PLANT = """
stations/all.yaml:
  stations: {lockstitch: {settings: {program: {set at: panel, verify: value}}}}
parts/panel.yaml:
  features: {corner: {box: cross, width: 30 mm, height: 20 mm, at: {left: 20 mm, bottom: 20 mm}}}
"""

RULE = Rule(
    slug="program-missing",
    severity=Severity.warning,
    why="The operator takes the program of the last job; stitches and corners are then another's.",
    remedy="Name the program under `settings:`, or write `program: none` if it is steered by hand.",
    check=check,
    bad=f"""{_PLANT}
operations/sew-hem.yaml:
  settings: {{stitch: 301}}
  steps: [{{step: corner, sew: corner, do: Sew the corner., time: 2 s}}]
""",
    good=f"""{_PLANT}
operations/sew-hem.yaml:
  settings: {{stitch: 301, program: "14"}}
  steps: [{{step: corner, sew: corner, do: Sew the corner., time: 2 s}}]
""",
    follows_from=("setting-unreadable", "step-feature-missing"),
)
