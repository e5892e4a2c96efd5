"""What a sheet says of a deviation: its own banner, and on the ordinary sheet the other ways it may be done."""

from __future__ import annotations

from dataclasses import dataclass

from builder.model import Operation, PlantModel, deviations, say, show_date
from builder.view.marking import controlled, shown


@dataclass(frozen=True, slots=True)
class DeviationView:
    """The banner of a deviation.

    until     : the last day it holds, ISO 8601
    only      : the batches and the day, as a sentence; instead : which operation it stands in for
    instead_title : that operation's code and title
    """

    batches: tuple[str, ...] = controlled()
    until: str = controlled()
    because: str = controlled()
    instead_of: str = controlled()
    only: str = shown()
    instead: str = shown()
    instead_title: str = shown()


@dataclass(frozen=True, slots=True)
class OtherWay:
    """A deviation from an operation, as the operation's page names it. path : inside its language"""

    path: str = shown()
    title: str = shown()
    only: str = shown()


def deviation_view(operation: Operation, model: PlantModel) -> DeviationView | None:
    """The banner of an operation's sheet, None for an ordinary operation."""
    typed = operation.deviation
    if typed is None:
        return None
    replaced = model.operations[typed.instead_of]
    title = f"{replaced.code} {replaced.title}"
    return DeviationView(
        batches=typed.batches,
        until=typed.until.isoformat(),
        because=typed.because,
        instead_of=typed.instead_of,
        only=_only(operation),
        instead=say("In place of {operation}.", operation=title),
        instead_title=title,
    )


def other_ways(name: str, model: PlantModel) -> tuple[OtherWay, ...]:
    """Deviations from an operation. They are no part of its method: the sheet on the wall stays as it is."""
    found = ((other, model.operations[other]) for other in deviations(model.operations).get(name, ()))
    return tuple(
        OtherWay(f"operations/{other}.html", f"{operation.code} {operation.title}", _only(operation))
        for other, operation in found
    )


def _only(operation: Operation) -> str:
    """`Only for batches B-1042, B-1043, until 2026-12-15.`"""
    typed = operation.deviation
    assert typed is not None
    batches, date = ", ".join(typed.batches), show_date(typed.until.isoformat())
    if len(typed.batches) == 1:
        return say("Only for batch {batches}, until {date}.", batches=batches, date=date)
    return say("Only for batches {batches}, until {date}.", batches=batches, date=date)
