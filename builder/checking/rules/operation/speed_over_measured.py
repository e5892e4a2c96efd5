"""A sewing speed nobody here keeps on such a seam."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.geometry import measured_speed
from builder.model import SeamSpeed, Station, show_quantity


def check(subject: Subject) -> Iterator[Problem]:
    """The typed speed against the slowest measured speed that fits a seam of the operation."""
    model = subject.model
    for name, operation in model.operations.items():
        station = model.stations.get(operation.station)
        typed = subject.settings(name).get("speed")
        if station is None or not station.seam_speeds or typed is None or typed.nominal is None:
            continue
        seam, slowest = _slowest(subject, name, station)
        if slowest is None or typed.nominal <= slowest.top_speed.value:
            continue
        measured = show_quantity(slowest.top_speed, model.plant.units, both=False)
        message = f"{seam} is kept on its line by {slowest.held}, measured at {measured} at most, not {typed.words}"
        about = ("setting:speed", f"station:{operation.station}", f"feature:{seam}")
        yield Problem(("operation", name), ("settings", "speed"), message, about)


def _slowest(subject: Subject, operation: str, station: Station) -> tuple[str, SeamSpeed | None]:
    """The seam with the lowest measured speed, and that speed."""
    seam, slowest = "", None
    for one in subject.worked(operation):
        shape = subject.book.shape(one.part, subject.dimensions.values) if one.key == "sew" else None
        built = shape.features.get(one.name) if shape is not None else None
        speed = measured_speed(built, station) if built is not None else None
        if speed is not None and (slowest is None or speed.top_speed.value < slowest.top_speed.value):
            seam, slowest = one.name, speed
    return seam, slowest


_PLANT = """
stations/all.yaml:
  stations:
    lockstitch:
      seam speeds: [{held: edge stop, top speed: 2200 st/min, study: 20 hems}]
parts/panel.yaml:
  features: {hem-seam: {held: edge stop}}
"""

RULE = Rule(
    slug="speed-over-measured",
    severity=Severity.warning,
    why="The motor reaches it, the hands don't: the seam leaves its line, or the operator never treadles so far.",
    remedy="Set the speed measured for such a seam, or measure it again and type what was found.",
    check=check,
    bad=f"""{_PLANT}
operations/sew-hem.yaml:
  settings: {{speed: 2600 st/min}}
""",
    good=f"""{_PLANT}
operations/sew-hem.yaml:
  settings: {{speed: 2200 st/min}}
""",
    follows_from=("setting-unreadable", "setting-outside-range", "step-feature-missing"),
)
