"""Which parts are turned right side out, by the steps that say `turn: right side out`."""

from __future__ import annotations

from collections.abc import Mapping

from builder.model.operation import Operation
from builder.model.plant_model import State

RIGHT_SIDE_OUT = "right side out"


def turned_behind(
    name: str, states: Mapping[str, State], operations: Mapping[str, Operation], own: bool = False
) -> dict[str, bool]:
    """By base part, whether it is right side out after the work behind a part state; its own maker's with `own`.

    Of several turns the one nearest to the state counts; parts nobody turns are left out.
    """
    found: dict[str, bool] = {}
    start = [name] if own else list(states[name].needs) if name in states else []
    seen, waiting = set() if own else {name}, start
    while waiting:
        at = waiting.pop(0)
        if at in seen or at not in states:
            continue
        seen.add(at)
        state = states[at]
        turns = [step.turn for step in operations[state.maker].steps if step.turn] if state.maker in operations else []
        if turns:
            found.setdefault(state.base, turns[-1] == RIGHT_SIDE_OUT)
        waiting += state.needs
    return found
