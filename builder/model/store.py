"""Which bought materials an operation takes from the store, and what for."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from builder.model.deviation import stood_for
from builder.model.feature import Seam
from builder.model.operation import Step
from builder.model.plant_model import FeatureRef, PlantModel
from builder.model.settings import settings_of
from builder.model.shaping import Laid
from builder.model.states import find_feature


def consumed(model: PlantModel, operation: str) -> Mapping[str, str]:
    """Material → what it is to the operation: `goods` it cuts, hardware, threads, `binding`, `zip`, `elastic`.

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
    for ref in laid_by(model, operation):
        feature = model.parts[ref.part].features[ref.feature]
        if isinstance(feature, Laid):
            found.setdefault(feature.material, type(feature).__name__.lower())
    for name, value in settings_of(model, operation).items():
        if value.kind.sort == "thread":
            found.setdefault(value.words, name)
    return {name: role for name, role in found.items() if name in model.materials}


def laid_by(model: PlantModel, operation: str) -> tuple[FeatureRef, ...]:
    """Zips and elastic an operation lays of a material it doesn't count by the piece, each once.

    Laid by the step that places them; by the one that sews them where no step of the plant does.
    """
    one = model.operations[operation]
    found: dict[FeatureRef, None] = {}
    for step in one.steps:
        for ref in _laid(model, operation, step):
            if step.place or not _placed(model, ref):
                found[ref] = None
    return tuple(found)


def _laid(model: PlantModel, operation: str, step: Step) -> Iterator[FeatureRef]:
    for name in (*step.place, *step.sew):
        ref = find_feature(name, model.homes[operation])
        feature = model.parts[ref.part].features[ref.feature] if ref is not None else None
        if ref is not None and isinstance(feature, Laid) and feature.material not in model.operations[operation].needs:
            yield ref


def _placed(model: PlantModel, ref: FeatureRef) -> bool:
    return any(
        find_feature(name, model.homes[operation]) == ref
        for operation, one in model.operations.items()
        for step in one.steps
        for name in step.place
    )


def cut_here(model: PlantModel, operation: str, made: str) -> bool:
    """Whether an operation cuts a part out of bought goods: it is made there from no other part."""
    state = model.states.get(made)
    maker = stood_for(model.operations, operation)
    return state is not None and state.maker == maker and not state.needs


def in_colour(material: str, swaps: Mapping[str, str]) -> str:
    """The material that takes the place of another in a colour."""
    return swaps.get(material, material)
