"""A needle point that harms what it goes through."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.checking.under_needle import materials_near, stacks_under
from builder.finding import Severity
from builder.model import NEEDLE_POINTS

HARM: dict[str, dict[str, str]] = {
    "sharp": {
        "knit": "cuts its loops, which run later",
        "mesh": "cuts its loops, which run later",
        "leather": "tears it",
    },
    "round": {"knit": "may cut its loops, which run later", "mesh": "may cut its loops, which run later"},
    "light ball": {"leather": "tears it"},
    "ball": {"leather": "tears it", "film": "tears it"},
    "cutting": {
        "woven": "cuts its yarns",
        "knit": "cuts its loops",
        "mesh": "cuts its loops",
        "nonwoven": "cuts its fibres",
        "film": "cuts slits that tear on",
    },
}
"""By family of point, what it does to goods it isn't made for. Common practice, no source."""

FOR: dict[str, str] = {
    "knit": "SES",
    "mesh": "SES",
    "leather": "LR",
    "woven": "R",
    "nonwoven": "R",
    "film": "R",
}
"""A point that does no harm. Common practice, no source."""


def check(subject: Subject) -> Iterator[Problem]:
    """The typed point against the structure of every material the needle goes through."""
    for name in subject.model.operations:
        settings = subject.settings(name)
        needle = settings["needle"].needle if "needle" in settings else None
        point = NEEDLE_POINTS.get(needle.point) if needle is not None else None
        if needle is None or point is None:
            continue
        harm = HARM[point.family]
        # Geometry only where some of the goods about could be harmed.
        near = {subject.model.materials[one].structure for one in materials_near(subject, name)}
        goods = _goods(subject, name) if near & set(harm) else {}
        harmed = next((one for one in goods.items() if one[1] in harm), None)
        if harmed is None:
            continue
        material, structure = harmed
        does = harm[structure]
        message = f"{needle.text} ({point.title}) goes through {material}, which is {structure}: it {does}"
        remedy = f"Take a point for {structure}, such as Nm {needle.size} {FOR[structure]}; try it on scrap."
        about = ("setting:needle", f"material:{material}")
        yield Problem(("operation", name), ("settings", "needle"), message, about, remedy)


def _goods(subject: Subject, operation: str) -> dict[str, str]:
    """Materials under the needle with their structure, where it is stated."""
    found: dict[str, str] = {}
    layers = {layer for _, stacks in stacks_under(subject, operation) for stack in stacks for layer in stack}
    for layer in sorted(layers):
        known = subject.model.material_under(layer)
        if known is not None and known[1].structure is not None:
            found[known[0]] = known[1].structure
    return found


RULE = Rule(
    slug="needle-point-for-goods",
    severity=Severity.warning,
    why="The wrong point cuts what it should push aside, and the goods open beside the seam in use.",
    remedy="Choose a point for the goods, and try it on scrap.",
    check=check,
    bad="""
materials/all.yaml:
  materials: {cloth: {structure: woven}}
operations/sew-hem.yaml:
  settings: {needle: Nm 100 LR}
""",
    good="""
materials/all.yaml:
  materials: {cloth: {structure: woven}}
operations/sew-hem.yaml:
  settings: {needle: Nm 100 R}
""",
    follows_from=("setting-unreadable",),
)
