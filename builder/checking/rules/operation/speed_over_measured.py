"""A sewing speed nobody here keeps on such a seam."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Literal

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.geometry import measured_speed, seam_goods
from builder.model import FeatureRef, SeamSpeed, Station, show_quantity


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
        held = f"{slowest.held}{_measured_on(slowest, model.plant.units)}"
        message = f"{seam} is kept on its line by {held}, measured at {measured} at most, not {typed.words}"
        about = ("setting:speed", f"station:{operation.station}", f"feature:{seam}")
        yield Problem(("operation", name), ("settings", "speed"), message, about)


def _slowest(subject: Subject, operation: str, station: Station) -> tuple[str, SeamSpeed | None]:
    """The seam with the lowest measured speed, and that speed."""
    seam, slowest = "", None
    goods = seam_goods(operation, subject.model, subject.book, subject.dimensions.values)
    for one in subject.worked(operation):
        shape = subject.book.shape(one.part, subject.dimensions.values) if one.key == "sew" else None
        built = shape.features.get(one.name) if shape is not None else None
        speed = measured_speed(built, station, goods.get(FeatureRef(one.part, one.name))) if built is not None else None
        if speed is not None and (slowest is None or speed.top_speed.value < slowest.top_speed.value):
            seam, slowest = one.name, speed
    return seam, slowest


def _measured_on(speed: SeamSpeed, units: Literal["mm", "in"]) -> str:
    """` in goods up to 4 mm and 3 layers`, '' where the speed names none."""
    thick = show_quantity(speed.thickest, units, both=False) if speed.thickest is not None else ""
    layers = f"{speed.layers} layer{'' if speed.layers == 1 else 's'}" if speed.layers is not None else ""
    both = " and ".join(one for one in (thick, layers) if one)
    return f" in goods up to {both}" if both else ""


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
