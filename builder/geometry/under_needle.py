"""What lies under the needle of each seam an operation sews, as far as parts, strips, folds and tapes tell."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from builder.geometry.shape import FeatureShape
from builder.geometry.shapes import ShapeBook
from builder.geometry.stack import Layer, Stack, layers_of, stacks_along
from builder.model import PlantModel, Seam, Values, earlier_work, find_feature


@dataclass(frozen=True, slots=True)
class Sewn:
    """A feature a step sews.

    step, index : number of the step, and of the feature's name in its `sew`
    stacks      : the layers it goes through, by name of part; a binding tape lies above and below
    """

    step: int
    index: int
    part: str
    feature: FeatureShape
    stacks: frozenset[Stack]


def sewn_by(model: PlantModel, book: ShapeBook, operation: str, values: Values) -> Iterator[Sewn]:
    """Each feature the steps of an operation sew, with the stacks it goes through, in one size.

    Strips and folds count once an earlier operation, or a step before in this one, has laid or made them. Names that
    lead nowhere and parts without a shape are left out.
    """
    one, homes = model.operations[operation], model.homes[operation]
    done: set[tuple[str, str]] = set()
    for made in one.makes:
        done |= earlier_work(made, model.states)
    layers: dict[str, tuple[Layer, ...]] = {}
    for number, step in enumerate(one.steps):
        key, names = step.work
        for index, name in enumerate(names):
            ref = find_feature(name, homes)
            if ref is None:
                continue
            if key != "sew":
                done.add((ref.part, ref.feature))
                layers.clear()
                continue
            shape = book.shape(ref.part, values)
            feature = shape.features.get(ref.feature) if shape is not None else None
            if shape is not None and feature is not None:
                if ref.part not in layers:
                    layers[ref.part] = layers_of(shape, done)
                stacks = stacks_along(feature, layers[ref.part])
                yield Sewn(number, index, ref.part, feature, _with_tape(feature, stacks))


def _with_tape(feature: FeatureShape, stacks: frozenset[Stack]) -> frozenset[Stack]:
    tape = feature.feature.binding if isinstance(feature.feature, Seam) else None
    return stacks if tape is None else frozenset((*stack, tape, tape) for stack in stacks)
