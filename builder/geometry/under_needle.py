"""What lies under the needle of each seam an operation sews, as far as parts, strips, folds and tapes tell."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from builder.geometry.shape import FeatureShape, PartShape
from builder.geometry.shapes import ShapeBook
from builder.geometry.stack import Layer, Stack, layers_of, stacks_along
from builder.model import Dart, PlantModel, Seam, Values, earlier_work, find_feature


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


def sewn_by(model: PlantModel, book: ShapeBook, operation: str, values: Values) -> tuple[Sewn, ...]:
    """Each feature the steps of an operation sew, with the stacks it goes through, in one size.

    Strips and folds count once an earlier operation, or a step before in this one, has laid or made them. Names that
    lead nowhere and parts without a shape are left out.
    """
    one, homes = model.operations[operation], model.homes[operation]
    parts = dict.fromkeys(ref.part for step in one.steps for name in step.sew if (ref := find_feature(name, homes)))
    shapes = {part: shape for part in parts if (shape := book.shape(part, values)) is not None}
    # The book hands out one object for equal shapes, so sizes that agree share the answer.
    key = ("sewn", operation, *map(id, shapes.values()))
    if key not in book.kept:
        book.kept[key] = tuple(_sewn(model, operation, shapes))
    found: tuple[Sewn, ...] = book.kept[key]
    return found


def _sewn(model: PlantModel, operation: str, shapes: Mapping[str, PartShape]) -> Iterator[Sewn]:
    one, homes = model.operations[operation], model.homes[operation]
    done: set[tuple[str, str]] = set()
    for made in one.makes:
        done |= earlier_work(made, model.states)
    layers: dict[str, tuple[Layer, ...]] = {}
    for number, step in enumerate(one.steps):
        key, names = step.work
        for index, ref in enumerate(find_feature(name, homes) for name in names):
            if ref is not None and key != "sew":
                done.add((ref.part, ref.feature))
                layers.clear()
            elif ref is not None and ref.part in shapes and ref.feature in shapes[ref.part].features:
                shape = shapes[ref.part]
                feature = shape.features[ref.feature]
                if ref.part not in layers:
                    layers[ref.part] = layers_of(shape, done)
                stacks = stacks_along(feature, layers[ref.part])
                yield Sewn(number, index, ref.part, feature, _with_tape(feature, stacks))


def _with_tape(feature: FeatureShape, stacks: frozenset[Stack]) -> frozenset[Stack]:
    if isinstance(feature.feature, Dart):
        # Its legs lie on each other, and all that lies there lies twice.
        return frozenset(tuple(sorted((*stack, *stack))) for stack in stacks)
    tape = feature.feature.binding if isinstance(feature.feature, Seam) else None
    return stacks if tape is None else frozenset((*stack, tape, tape) for stack in stacks)
