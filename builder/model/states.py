"""States of parts: what `makes` names, step by step from cut piece to product.

A name in `makes` without a part file is the next state of the first part in `needs`: same outline, plus what the
operation's steps made. Work is earlier if it lies behind the needed parts, not by a product's order.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from builder.model.deviation import ordinary
from builder.model.feature import DrillHole, Hole, Notch, Slot
from builder.model.operation import Operation
from builder.model.part import Part
from builder.model.plant_model import FeatureRef, Homes, State
from builder.model.sizes import find_dimension

CUT_WITH_OUTLINE = (Notch, Hole, DrillHole, Slot)
"""Kinds of features a cutter makes together with the outline."""


def part_states(
    parts: Mapping[str, Part], operations: Mapping[str, Operation]
) -> tuple[dict[str, State], dict[str, Homes]]:
    """All part names of the plant with their base, and where each operation's feature names lead.

    A name that rests only on itself has no state.
    """
    makers = {made: name for name, operation in ordinary(operations).items() for made in operation.makes}
    bases: dict[str, str] = {}
    states: dict[str, State] = {}
    for name in (*parts, *makers):
        base = _base(name, parts, operations, makers, bases)
        if base is None:
            continue
        maker = makers.get(name, "")
        needs = _needed_parts(operations[maker], parts, makers) if maker else ()
        states[name] = State(name, base, maker, needs, frozenset())
    homes = {name: feature_homes(operation, states, parts) for name, operation in operations.items()}
    named = _named_elsewhere(operations, homes)
    return {name: _with_work(state, operations, homes, parts, named) for name, state in states.items()}, homes


def _named_elsewhere(operations: Mapping[str, Operation], homes: Mapping[str, Homes]) -> frozenset[tuple[str, str]]:
    """Features some step names as its own work, so that cutting the part out doesn't make them."""
    found: set[tuple[str, str]] = set()
    for name, operation in operations.items():
        for step in operation.steps:
            refs = (find_feature(one, homes[name]) for one in step.work[1])
            found.update((ref.part, ref.feature) for ref in refs if ref is not None)
    return frozenset(found)


def _needed_parts(operation: Operation, parts: Mapping[str, Part], makers: Mapping[str, str]) -> tuple[str, ...]:
    return tuple(name for name in operation.needs if name in parts or name in makers)


def _base(
    name: str,
    parts: Mapping[str, Part],
    operations: Mapping[str, Operation],
    makers: Mapping[str, str],
    known: dict[str, str],
) -> str | None:
    """The part file behind a name, following first needs; None if there is none, or a ring."""
    trail: list[str] = []
    at = name
    while at not in parts and at not in known:
        maker = makers.get(at)
        needs = _needed_parts(operations[maker], parts, makers) if maker else ()
        if at in trail or not needs:
            return None
        trail.append(at)
        at = needs[0]
    base = at if at in parts else known[at]
    known.update(dict.fromkeys(trail, base))
    return base


def _with_work(
    state: State,
    operations: Mapping[str, Operation],
    homes: Mapping[str, Homes],
    parts: Mapping[str, Part],
    named: frozenset[tuple[str, str]],
) -> State:
    if not state.maker:
        return state
    operation = operations[state.maker]
    worked: set[tuple[str, str]] = set()
    for step in operation.steps:
        for name in step.work[1]:
            if (ref := find_feature(name, homes[state.maker])) is not None:
                worked.add((ref.part, ref.feature))
            elif step.cut and name in parts:
                worked.update((name, cut) for cut in cut_with(parts[name]) if (name, cut) not in named)
    return State(state.name, state.base, state.maker, state.needs, frozenset(worked))


def cut_with(part: Part) -> tuple[str, ...]:
    """Features a cutter makes together with the outline: notches, holes of all kinds."""
    return tuple(name for name, feature in part.features.items() if isinstance(feature, CUT_WITH_OUTLINE))


def operation_bases(operation: Operation, states: Mapping[str, State]) -> tuple[str, ...]:
    """Parts whose files an operation's names may mean: those of what it makes, then of what it needs, each once."""
    names = (*operation.makes, *operation.needs)
    return tuple(dict.fromkeys(states[name].base for name in names if name in states))


def operation_dimension(
    operation: Operation, text: str, states: Mapping[str, State], definitions: Mapping[str, object]
) -> str | None:
    """Full name of a dimension as an operation's file names it, None if no part of it has such a dimension."""
    found = (find_dimension(text, base, definitions) for base in operation_bases(operation, states))
    return next((full for full in found if full is not None), None)


def feature_homes(operation: Operation, states: Mapping[str, State], parts: Mapping[str, Part]) -> Homes:
    """Feature names an operation may use, with where each is found.

    Made parts first, then needed ones in order, then the parts inside those.
    """
    bases = dict.fromkeys(operation_bases(operation, states))
    for base in tuple(bases):
        bases.update(dict.fromkeys(_inside(base, states, parts)))
    homes: dict[str, tuple[FeatureRef, ...]] = {}
    for base in bases:
        for feature in parts[base].features:
            homes[feature] = (*homes.get(feature, ()), FeatureRef(base, feature))
            homes[f"{base}/{feature}"] = (FeatureRef(base, feature),)
    return homes


def _inside(base: str, states: Mapping[str, State], parts: Mapping[str, Part]) -> Iterator[str]:
    """Base parts a sub-assembly is made from, through all levels."""
    seen: set[str] = {base}
    stack = [base]
    while stack:
        for component in parts[stack.pop()].from_:
            inner = states[component.part].base if component.part in states else ""
            if inner and inner not in seen:
                seen.add(inner)
                stack.append(inner)
                yield inner


def find_feature(name: str, homes: Homes) -> FeatureRef | None:
    """The feature a step names, the made part's before the needed parts'."""
    found = homes.get(name, ())
    return found[0] if found else None


def earlier_work(name: str, states: Mapping[str, State]) -> frozenset[tuple[str, str]]:
    """All (part, feature) made in the states behind a part state, its own maker's work not counted."""
    done: set[tuple[str, str]] = set()
    for state in _behind(name, states):
        done |= state.worked
    return frozenset(done)


def _behind(name: str, states: Mapping[str, State]) -> Iterator[State]:
    seen = {name}
    stack = list(states[name].needs) if name in states else []
    while stack:
        at = stack.pop()
        if at in seen or at not in states:
            continue
        seen.add(at)
        yield states[at]
        stack.extend(states[at].needs)
