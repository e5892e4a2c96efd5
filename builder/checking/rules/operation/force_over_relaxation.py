"""A step that takes more force than its station's relaxation was built for."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Problem, Rule, Subject
from builder.finding import Severity
from builder.model import FORCE_ROWS_LB, Quantity, Relaxation, force_of_row, force_row_lb, show_quantity


def check(subject: Subject) -> Iterator[Problem]:
    """`force:` of steps above the row of the force table that the station's relaxation stands in.

    A station that states no force has the table's first row, which adds nothing. A station without relaxation rests
    on the plant's fatigue allowance alone, so nothing can be said of its force.
    """
    model = subject.model
    for name, operation in model.operations.items():
        station = model.stations.get(operation.station)
        if station is None or station.relaxation is None:
            continue
        row = _row(station.relaxation)
        for number, step in enumerate(operation.steps):
            if step.force is None or not _is_over(step.force, row):
                continue
            force = show_quantity(step.force, model.plant.units, both=False)
            built = show_quantity(force_of_row(row), model.plant.units, both=False)
            message = f"step {step.step} takes {force}; the relaxation of {station.title} is built for {built} at most"
            about = (f"step:{step.step}", f"station:{operation.station}")
            yield Problem(("operation", name), ("steps", number, "force"), message, about)


def _is_over(force: Quantity, row: int) -> bool:
    needed = force_row_lb(force)
    return needed is None or needed > row


def _row(relaxation: Relaxation) -> int:
    row = force_row_lb(relaxation.force) if relaxation.force is not None else None
    return row or next(iter(FORCE_ROWS_LB))


RULE = Rule(
    slug="force-over-relaxation",
    severity=Severity.warning,
    why="Who pulls harder than the allowance was built for is owed more rest than the standard time holds.",
    remedy="Type the force in the station's `relaxation:`, or let a jig or a lever take it.",
    check=check,
    bad="""
stations/all.yaml:
  stations: {snap-press: {relaxation: {force: 8 lb}}}
operations/press-snap.yaml:
  steps: [{step: press, force: 60 N}]
""",
    good="""
stations/all.yaml:
  stations: {snap-press: {relaxation: {force: 6 kg}}}
operations/press-snap.yaml:
  steps: [{step: press, force: 60 N}]
""",
    follows_from=("force-too-often",),
)
