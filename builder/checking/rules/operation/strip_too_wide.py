"""Webbing wider than the strip cutter takes."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.cuts import cuts
from builder.checking.lengths import length_words
from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity


def check(subject: Subject) -> Iterator[Problem]:
    """One strip's width against the station's `strip width`; lanes lie beside each other."""
    for cut in cuts(subject, "chop"):
        name = subject.model.material_of(cut.part)
        material = subject.model.materials.get(name) if name is not None else None
        most = cut.station.strip_width
        if material is None or material.width is None or most is None or material.width.value <= most.value:
            continue
        wide, takes = length_words(subject, material.width.value), length_words(subject, most.value)
        message = f"{cut.part} is cut from {name}, {wide} wide; {cut.station.title} takes {takes}"
        about = (f"part:{cut.part}", f"material:{name}")
        yield Problem(("operation", cut.operation), cut.path, message, about)


_PLANT = """
products/pouch.yaml: {route: [cut-panel, cut-strap, sew-hem, press-snap]}
operations/sew-hem.yaml: {needs: {panel: 1, strap: 1}}
materials/all.yaml:
  materials: {tape: {title: Tape, form: tape, width: WIDTH, mass per length: 15 g/m}}
stations/all.yaml:
  stations:
    strip-cutter:
      title: Strip cutter
      kind: strip cutter
      count: 1
      distance: 0.6 m
      attendance: constant
      strip width: 50 mm
      pace: {feed: 350 mm/s, chop: 0.4 s, calibrated: 2026-09-01}
      protection: [blade guard, finger guard]
parts/strap.yaml: {part: strap, title: Strap, material: tape, outline: {strip: {length: 200 mm}}}
operations/cut-strap.yaml:
  operation: cut-strap
  title: Cut the strap
  code: CUT-20
  station: strip-cutter
  makes: strap
  settings: {feed speed: 350 mm/s}
  steps: [{step: cut, cut: strap, do: Let it cut.}]
"""

RULE = Rule(
    slug="strip-too-wide",
    severity=Severity.error,
    why="It jams in the guide or runs in askew, and somebody reaches for the blade to free it.",
    remedy="Cut it at a wider machine, or take a narrower material.",
    check=check,
    bad=_PLANT.replace("WIDTH", "60 mm"),
    good=_PLANT.replace("WIDTH", "50 mm"),
)
