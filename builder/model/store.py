"""Which bought materials an operation takes from the store, and what for."""

from __future__ import annotations

from collections.abc import Mapping

from builder.model.feature import Seam
from builder.model.plant_model import PlantModel
from builder.model.settings import settings_of
from builder.model.states import find_feature


def consumed(model: PlantModel, operation: str) -> Mapping[str, str]:
    """Material → what it is to the operation: `goods` it cuts, hardware, `thread`, `bobbin thread`, `binding`.

    Parts that come from other operations bring their own material and are not counted again.
    """
    one = model.operations[operation]
    found: dict[str, str] = {}
    for made in one.makes:
        if cut_here(model, operation, made):
            found.setdefault(model.material_of(made) or "", "goods")
    for need in one.needs:
        if need in model.materials:
            found.setdefault(need, "hardware")
    homes = model.homes[operation]
    for step in one.steps:
        for name in step.sew:
            ref = find_feature(name, homes)
            feature = model.parts[ref.part].features[ref.feature] if ref is not None else None
            if isinstance(feature, Seam) and feature.binding is not None:
                found.setdefault(feature.binding, "binding")
    for name, value in settings_of(model, operation).items():
        if value.kind.sort == "thread":
            found.setdefault(value.words, name)
    return {name: role for name, role in found.items() if name in model.materials}


def cut_here(model: PlantModel, operation: str, made: str) -> bool:
    """Whether an operation cuts a part out of bought goods: it is made there from no other part."""
    state = model.states.get(made)
    return state is not None and state.maker == operation and not state.needs


def in_colour(material: str, swaps: Mapping[str, str]) -> str:
    """The material that takes the place of another in a colour."""
    return swaps.get(material, material)
