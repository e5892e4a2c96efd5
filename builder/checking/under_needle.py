"""What lies under the needle of each seam of an operation, shared by the rules on thickness and on needle points."""

from __future__ import annotations

from collections.abc import Iterator

from builder.checking.rule import Subject, Worked
from builder.geometry import Layer, Stack, layers_of, stacks_along
from builder.model import Material, Seam, earlier_work


def stacks_under(subject: Subject, operation: str) -> Iterator[tuple[Worked, frozenset[Stack]]]:
    """Each sewn feature with the stacks it goes through, as typed first size; a binding tape lies above and below.

    Strips and folds count once an earlier operation, or a step before in this one, has laid or made them.
    """
    model, values = subject.model, subject.dimensions.values
    done: set[tuple[str, str]] = set()
    for made in model.operations[operation].makes:
        done |= earlier_work(made, model.states)
    layers: dict[str, tuple[Layer, ...]] = {}
    for one in subject.worked(operation):
        shape = subject.book.shape(one.part, values)
        feature = shape.features.get(one.name) if shape is not None else None
        if one.key != "sew":
            done.add((one.part, one.name))
            layers.clear()
        elif shape is not None and feature is not None:
            tape = one.feature.binding if isinstance(one.feature, Seam) else None
            wrapped = (tape, tape) if tape is not None else ()
            if one.part not in layers:
                layers[one.part] = layers_of(shape, done)
            stacks = stacks_along(feature, layers[one.part])
            yield one, frozenset((*stack, *wrapped) for stack in stacks)


def materials_near(subject: Subject, operation: str) -> frozenset[str]:
    """All materials of what an operation needs and makes, strips and tapes included: more than any seam meets."""
    model = subject.model
    one = model.operations[operation]
    seen: set[str] = set()
    stack = [*one.needs, *one.makes]
    while stack:
        name = stack.pop()
        if name in seen:
            continue
        seen.add(name)
        if (part := model.base_of(name)) is not None:
            stack += [component.part for component in part.from_]
            for feature in part.features.values():
                stack += [inner for key in ("strip", "binding") if (inner := getattr(feature, key, None)) is not None]
    known = (material_under(subject, name) for name in seen)
    return frozenset(found[0] for found in known if found is not None)


def material_under(subject: Subject, layer: str) -> tuple[str, Material] | None:
    """Name and facts of the material of a layer: of a part, or the tape itself. None when nobody says."""
    model = subject.model
    name = model.material_of(layer) if layer in model.states else layer
    material = model.materials.get(name) if name is not None else None
    return (name, material) if name is not None and material is not None else None
