"""Which materials a laser or a hot blade cuts, shared by the two rules on composition."""

from __future__ import annotations

from builder.checking.rule import Subject
from builder.model import KINDS


def cut_by_heat(subject: Subject) -> dict[str, list[str]]:
    """Material → operations that cut it at a station whose kind works by heat, in any colour of a product."""
    model = subject.model
    found: dict[str, list[str]] = {}
    for name, operation in model.operations.items():
        station = model.stations.get(operation.station)
        kind = KINDS.get(station.kind) if station is not None else None
        if kind is None or not kind.heat:
            continue
        for part in (*operation.makes, *operation.needs):
            for material in _materials(part, subject, frozenset()):
                if name not in found.setdefault(material, []):
                    found[material].append(name)
    _add_colours(subject, found)
    return found


def _add_colours(subject: Subject, found: dict[str, list[str]]) -> None:
    """What takes the place of a material in a colour goes through the same heat."""
    for product, one in subject.model.products.items():
        on_route = {stop.operation for stop in subject.route(product)} if any(one.colours.values()) else set()
        for swaps in one.colours.values():
            for old, new in swaps.items():
                hot = [name for name in found.get(old, ()) if name in on_route]
                if hot and new in subject.model.materials:
                    known = found.setdefault(new, [])
                    known.extend(name for name in hot if name not in known)


def _materials(part: str, subject: Subject, inside: frozenset[str]) -> set[str]:
    """Materials of a part and of all it is made from: heat on a sub-assembly reaches every layer."""
    model = subject.model
    state = model.states.get(part)
    if state is None or part in inside:
        return set()
    base = model.parts[state.base]
    own = model.material_of(part)
    materials = {own} if own is not None and own in model.materials else set()
    for inner in (*(one.part for one in base.from_), *state.needs):
        materials |= _materials(inner, subject, inside | {part})
    return materials
