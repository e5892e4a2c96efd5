"""What rests on something nobody could read leaves quietly: its own findings would only be echoes."""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import replace
from types import MappingProxyType

from builder.model.feature import Strip
from builder.model.part import Part
from builder.model.plant_model import PlantModel
from builder.model.states import part_states

Key = tuple[str, str]


def without_unreadable(model: PlantModel, unreadable: Collection[Key]) -> tuple[PlantModel, frozenset[Key]]:
    """The model without operations and parts that rest on unreadable objects, and which ones those are."""
    parts = {name for kind, name in unreadable if kind == "part"}
    stations = {name for kind, name in unreadable if kind == "station"}
    operations: set[str] = set()
    while True:
        before = len(parts) + len(operations)
        for name, operation in model.operations.items():
            named = (*operation.needs, *operation.makes)
            replaced = ("operation", operation.deviation.instead_of) if operation.deviation is not None else None
            if operation.station in stations or any(part in parts for part in named) or replaced in unreadable:
                operations.add(name)
                if replaced is None:
                    parts.update(made for made in operation.makes if made not in model.parts)
        parts.update(name for name, part in model.parts.items() if parts.intersection(_inside(part)))
        if len(parts) + len(operations) == before:
            break
    kept_parts = MappingProxyType({name: part for name, part in model.parts.items() if name not in parts})
    kept = MappingProxyType({name: one for name, one in model.operations.items() if name not in operations})
    states, homes = part_states(kept_parts, kept)
    left_out = {("operation", name) for name in operations} | {("part", name) for name in parts}
    reduced = replace(
        model,
        parts=kept_parts,
        operations=kept,
        states=MappingProxyType(states),
        homes=MappingProxyType(homes),
    )
    return reduced, frozenset(left_out)


def _inside(part: Part) -> list[str]:
    strips = [one.strip for one in part.features.values() if isinstance(one, Strip)]
    return [*strips, *(component.part for component in part.from_)]
