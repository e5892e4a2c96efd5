"""A seam through goods no speed of the station was measured on."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.lengths import length_words
from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.geometry import seam_goods, speeds_short_of_goods
from builder.model import FeatureRef, SeamSpeed


def check(subject: Subject) -> Iterator[Problem]:
    """Each seam's layers and thickness against the measured speeds for its way of holding and its curves.

    Materials of unknown thickness count as none.
    """
    for name, operation in subject.model.operations.items():
        station = subject.model.stations.get(operation.station)
        if station is None or not any(one.thickest or one.layers for one in station.seam_speeds):
            continue
        found = seam_goods(name, subject.model, subject.book, subject.dimensions.values)
        for one in subject.worked(name):
            goods = found.get(FeatureRef(one.part, one.name)) if one.key == "sew" else None
            shape = subject.book.shape(one.part, subject.dimensions.values)
            if goods is None or shape is None:
                continue
            short = speeds_short_of_goods(shape.features[one.name], station, goods)
            if short:
                mine = _said(subject, goods.layers, goods.thickness_mm)
                its = " or ".join(dict.fromkeys(_measured(subject, speed) for speed in short))
                message = (
                    f"{one.name} goes through {mine}; by {short[0].held}, {station.title} was measured on {its} at most"
                )
                about = (f"station:{operation.station}", f"feature:{one.name}")
                yield Problem(("operation", name), one.path, message, about)


def _measured(subject: Subject, speed: SeamSpeed) -> str:
    return _said(subject, speed.layers or 0, float(speed.thickest.value) if speed.thickest is not None else 0.0)


def _said(subject: Subject, layers: int, thickness_mm: float) -> str:
    """`3 layers, 2.5 mm`; what is 0 isn't said."""
    many = f"{layers} layer{'' if layers == 1 else 's'}" if layers else ""
    thick = length_words(subject, thickness_mm) if thickness_mm else ""
    return ", ".join(one for one in (many, thick) if one)


_PLANT = """
stations/all.yaml:
  stations:
    lockstitch:
      seam speeds: [{held: edge stop, layers: LAYERS, top speed: 2200 st/min, study: 20 hems}]
parts/panel.yaml:
  features: {hem-seam: {held: edge stop}}
operations/sew-hem.yaml:
  steps: [{step: hem, sew: hem-seam}]
"""

RULE = Rule(
    slug="goods-over-measured",
    severity=Severity.warning,
    why="Nobody knows how fast such goods are sewn here: the time rests on the machine's top speed and is too short.",
    remedy="Measure the speed on these goods, and type it under the station's `seam speeds:`.",
    check=check,
    bad=_PLANT.replace("LAYERS", "1"),
    good=_PLANT.replace("LAYERS", "2"),
    follows_from=("step-feature-missing", "shape-impossible"),
)
