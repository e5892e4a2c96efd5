"""Whether the part lies the other way up than in the picture before, so that the picture says to turn it over."""

from __future__ import annotations

from builder.model import Step
from builder.view.scene import Work


def turned_over(step: Step, work: Work) -> str:
    """'over' where the step shows another side of the same part than the last step of the operation with a picture."""
    here = _shown(step, work)
    if here is None:
        return ""
    last = None
    for one in work.operation.steps:
        if one is step:
            break
        last = _shown(one, work) or last
    return "over" if last is not None and last[0] == here[0] and last[1] != here[1] else ""


def _shown(step: Step, work: Work) -> tuple[str, bool] | None:
    """Base part a step shows, and whether its wrong side is up; None without a picture of a part."""
    shown = step.part_shown
    name = shown.name if shown is not None else work.part_of(step)
    if name is None or name not in work.model.states:
        return None
    return work.model.states[name].base, shown is not None and shown.wrong
