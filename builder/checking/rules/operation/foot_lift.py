"""Goods thicker than what passes under the foot."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from fractions import Fraction

from builder.checking.lengths import length_words
from builder.checking.rule import Problem, Rule, Subject
from builder.checking.under_needle import stacks_under
from builder.finding import Severity
from builder.geometry import Stack


def check(subject: Subject) -> Iterator[Problem]:
    """Each seam's thickest stack against the station's `foot lift`.

    Materials of unknown thickness count as none, soft ones as pressed.
    """
    model = subject.model
    for name, operation in model.operations.items():
        station = model.stations.get(operation.station)
        if station is None or station.foot_lift is None:
            continue
        for one, stacks in stacks_under(subject, name):
            thickness, stack = max(((_thickness(subject, stack), stack) for stack in stacks), default=(Fraction(0), ()))
            if thickness <= station.foot_lift.value:
                continue
            message = (
                f"{one.name} goes through {length_words(subject, thickness)} of goods ({_said(subject, stack)}); "
                f"the foot of {station.title} lifts {length_words(subject, station.foot_lift.value)}"
            )
            about = (f"station:{operation.station}", f"feature:{one.name}")
            yield Problem(("operation", name), one.path, message, about)


def _thickness(subject: Subject, stack: Stack) -> Fraction:
    """Of all layers whose material states its thickness, mm."""
    known = (subject.model.material_under(layer) for layer in stack)
    return sum((one[1].under_foot or Fraction(0) for one in known if one is not None), Fraction(0))


def _said(subject: Subject, stack: Stack) -> str:
    """`2 x pack-cloth-420 + 2 x padded-mesh-3, pressed`."""
    known = [one for layer in stack if (one := subject.model.material_under(layer)) is not None and one[1].thickness]
    counts = Counter(name + (", pressed" if material.soft else "") for name, material in known)
    return " + ".join(f"{count} x {name}" if count > 1 else name for name, count in counts.items())


_PLANT = """
stations/all.yaml:
  stations: {lockstitch: {foot lift: 5 mm}}
operations/sew-hem.yaml:
  steps: [{step: hem, sew: hem-seam}]
"""

RULE = Rule(
    slug="foot-lift",
    severity=Severity.error,
    why="Goods that must be forced under the foot bend the needle, and a needle that breaks flies.",
    remedy="Sew it at a machine that lifts its foot higher, sew fewer layers at once, or lay the fold elsewhere.",
    check=check,
    bad=f"""{_PLANT}
materials/all.yaml:
  materials: {{cloth: {{thickness: 3 mm}}}}
""",
    good=f"""{_PLANT}
materials/all.yaml:
  materials: {{cloth: {{thickness: 2 mm}}}}
""",
    follows_from=("step-feature-missing", "shape-impossible"),
)
