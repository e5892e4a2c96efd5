"""A seam through goods no speed of the station was measured on."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.lengths import length_words
from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.geometry import Goods, seam_goods, speed_short_of_goods
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
            short = speed_short_of_goods(shape.features[one.name], station, goods)
            if short is not None:
                message = f"{one.name} {_over(subject, goods, short)}; {station.title} was measured on no such goods"
                about = (f"station:{operation.station}", f"feature:{one.name}")
                yield Problem(("operation", name), one.path, message, about)


def _over(subject: Subject, goods: Goods, speed: SeamSpeed) -> str:
    """`goes through 5 layers, 4 at most when measured by edge stop`: the first fact that is too much."""
    if speed.layers is not None and goods.layers > speed.layers:
        mine, its = f"{goods.layers} layers", str(speed.layers)
    else:
        mine = length_words(subject, goods.thickness_mm)
        its = length_words(subject, speed.thickest.value) if speed.thickest is not None else ""
    return f"goes through {mine}, not {its} as by {speed.held}"


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
