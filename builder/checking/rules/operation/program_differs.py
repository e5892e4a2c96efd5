"""A stored program that sews another pattern than the part's file says."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.lengths import length_words
from builder.checking.rule import Problem, Rule, Subject, Worked
from builder.finding import Severity
from builder.model import Bartack, Box, StitchProgram

_SAME_MM = 0.05


def check(subject: Subject) -> Iterator[Problem]:
    """Bartacks and boxes against the facts of the program that sews them, in every size."""
    model = subject.model
    for name, operation in model.operations.items():
        station = model.stations.get(operation.station)
        typed = subject.settings(name).get("program")
        program = station.programs.get(typed.words) if station is not None and typed is not None else None
        if program is None or typed is None:
            continue
        patterns = [one for one in subject.worked(name) if one.key == "sew" and isinstance(one.feature, Bartack | Box)]
        differing = [(one, words) for one in patterns if (words := _difference(subject, one, program))]
        # When none agrees, the program is wrong; when some do, the feature is.
        alone = len(differing) == len(patterns)
        for one, words in differing[: 1 if alone else None]:
            path = ("settings", "program") if alone else one.path
            message = f"program {typed.words} sews {words}"
            about = ("setting:program", f"station:{operation.station}", f"feature:{one.name}")
            yield Problem(("operation", name), path, message, about)


def _difference(subject: Subject, one: Worked, program: StitchProgram) -> str:
    """`28 stitches, tack-mouth has 42`, '' when all agrees."""
    if isinstance(one.feature, Bartack) and one.feature.bartack != program.stitches:
        return f"{program.stitches} stitches, {one.name} has {one.feature.bartack}"
    for size, shape in subject.shapes_of(one.part):
        built = shape.features.get(one.name)
        if built is None:
            continue
        wanted, drawn = (float(program.length.value), float(program.width.value)), built.size
        if isinstance(one.feature, Box):  # a box may be clamped either way round
            wanted, drawn = (max(wanted), min(wanted)), (max(drawn), min(drawn))
        for long, mine, its in zip(("long", "wide"), drawn, wanted, strict=True):
            if abs(mine - its) > _SAME_MM:
                of = f" in size {size}" if size else ""
                return f"{length_words(subject, its)} {long}, {one.name} is {length_words(subject, mine)}{of}"
    return ""


_PLANT = """
products/pouch.yaml: {route: [cut-panel, sew-hem, press-snap, tack]}
stations/all.yaml:
  stations:
    tacker:
      title: Bartacker
      kind: bartacker
      count: 1
      distance: 0.6 m
      attendance: constant
      programs:
        P28: {stitches: 28, length: 10 mm, width: 2.5 mm}
        P42: {stitches: 42, length: 20 mm, width: 3 mm}
      pace: {top speed: 2200 st/min, start: 0.4 s, finish: 0.7 s, reposition: 2 s, calibrated: 2026-09-01}
      protection: [finger guard, eye protection]
parts/panel.yaml:
  features: {tack: {bartack: 28, length: 10 mm, width: 2.5 mm, at: {left: 50 mm, bottom: 50 mm}}}
operations/tack.yaml:
  operation: tack
  title: Tack the panel
  code: TAK-10
  station: tacker
  needs: {panel-snapped: 1}
  makes: panel-tacked
  settings: {program: PROGRAM, thread: thread-70, needle: Nm 100 R}
  steps: [{step: tack, sew: tack, do: Tack it., time: 2 s}]
"""

RULE = Rule(
    slug="program-differs",
    severity=Severity.error,
    why="The machine sews what is stored, the sheet shows something else, and its time is counted for that.",
    remedy="Name the program that sews this pattern, or correct the feature in the part's file.",
    check=check,
    bad=_PLANT.replace("PROGRAM", "P42"),
    good=_PLANT.replace("PROGRAM", "P28"),
    follows_from=("setting-unreadable", "setting-outside-range", "step-feature-missing"),
)
