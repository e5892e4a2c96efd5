"""Webbing that frays, cut cold."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.cuts import cuts
from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity


def check(subject: Subject) -> Iterator[Problem]:
    """Materials with `ends: sealed` cut at a station whose kind doesn't work by heat."""
    for cut in cuts(subject, "contour", "chop", "cycle"):
        name = subject.model.material_of(cut.part)
        material = subject.model.materials.get(name) if name is not None else None
        if material is not None and material.ends == "sealed" and not cut.kind.heat:
            message = f"{cut.part} is cut from {name}, whose ends must be sealed; a {cut.kind.title} leaves them open"
            yield Problem(("operation", cut.operation), cut.path, message, (f"part:{cut.part}", f"material:{name}"))


_PLANT = """
products/pouch.yaml: {route: [cut-panel, cut-strap, sew-hem, press-snap]}
operations/sew-hem.yaml: {needs: {panel: 1, strap: 1}}
materials/all.yaml:
  materials:
    webbing:
      title: Nylon webbing 25 mm
      form: webbing
      width: 25 mm
      mass per length: 20 g/m
      ends: sealed
      composition: [nylon]
      evidence: {kind: safety data sheet, document: SS-2, date: 2026-01-10}
stations/all.yaml:
  stations:
    strip-cutter:
      title: Strip cutter
      kind: KIND
      count: 1
      distance: 0.6 m
      attendance: constant
      pace: {feed: 350 mm/s, chop: 0.4 s, dwell: 0.6 s, calibrated: 2026-09-01}
      protection: [blade guard, finger guard, heat-resistant gloves, extraction]
      start: {extraction: A tissue sticks to the slot., temperature: Feel the cooled end of a piece.}
parts/strap.yaml: {part: strap, title: Strap, material: webbing, outline: {strip: {length: 200 mm}}}
operations/cut-strap.yaml:
  operation: cut-strap
  title: Cut the strap
  code: CUT-20
  station: strip-cutter
  makes: strap
  settings: {SETTINGS}
  steps: [{step: cut, cut: strap, do: Let it cut.}]
"""

RULE = Rule(
    slug="cold-cut-frays",
    severity=Severity.warning,
    why="An open end frays under the seam, and the seam pulls out of it in use.",
    remedy="Cut it at a hot cutter, or drop `ends: sealed` if this webbing holds its ends.",
    check=check,
    bad=_PLANT.replace("KIND", "strip cutter").replace("SETTINGS", "feed speed: 350 mm/s"),
    good=_PLANT.replace("KIND", "hot strip cutter").replace("SETTINGS", "temperature: 360 °C, dwell: 0.6 s"),
    follows_from=("kind-unknown",),
)
