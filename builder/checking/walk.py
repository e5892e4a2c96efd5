"""Walks over the plant that several rules make: shapes in all sizes, parts inside a part, who works what first.

Facts only: what is wrong with them is for the rules to say.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from builder.geometry import PartShape, Placing, ShapeBook
from builder.model import Part, PlantModel, Quantity, Values, earlier_work, show_quantity

FeatureName = tuple[str, str]
"""Base part and feature."""


def distinct_shapes(
    parts: Mapping[str, Part], book: ShapeBook, sizes: Sequence[tuple[str, Values]]
) -> Iterator[tuple[str, PartShape]]:
    """(size, shape) of each part that can be built, '' for the values as typed; equal shapes once.

    Only parts that rest on a dimension a size changes are asked for again.
    """
    resting: dict[str, list[str]] = {}
    for part in parts:
        for name in book.dimension_names(part):
            resting.setdefault(name, []).append(part)
    seen: set[int] = set()
    for number, (size, values) in enumerate(sizes):
        touched = dict.fromkeys(parts) if number == 0 else _touched(values, sizes[0][1], resting)
        for part in touched:
            shape = book.shape(part, values)
            if shape is not None and id(shape) not in seen:
                seen.add(id(shape))
                yield size, shape


def _touched(values: Values, typed: Values, resting: Mapping[str, Sequence[str]]) -> dict[str, None]:
    changed = (name for name, value in values.items() if value is not typed.get(name))
    return dict.fromkeys(part for name in changed for part in resting.get(name, ()))


@dataclass(frozen=True, slots=True)
class Inner:
    """A part somewhere inside another: its shape, and how its coordinates lie in the outer one's."""

    shape: PartShape
    placing: Placing


def inner_parts(shape: PartShape) -> Iterator[Inner]:
    """All parts inside a sub-assembly, through all levels, in the order of the files."""
    for placed in shape.components:
        yield Inner(placed.shape, placed.placing)
        for inner in inner_parts(placed.shape):
            yield Inner(inner.shape, inner.placing.then(placed.placing))


@dataclass(frozen=True, slots=True)
class Worker:
    """The operation and the step that work a feature."""

    operation: str
    step: int


def is_earlier(model: PlantModel, workers: Mapping[FeatureName, Worker], one: FeatureName, other: FeatureName) -> bool:
    """Is one feature surely worked before the other? False where nobody works one of them."""
    first, second = workers.get(one), workers.get(other)
    if first is None or second is None:
        return False
    if first.operation == second.operation:
        return first.step < second.step
    return any(one in earlier_work(made, model.states) for made in model.operations[second.operation].makes)


def length_words(mm: float | Fraction, model: PlantModel) -> str:
    """A length in the plant's own unit."""
    exact = Fraction(mm).limit_denominator(10**6)
    return show_quantity(Quantity.of(exact, "length", model.plant.units), model.plant.units, both=False)


def in_size(size: str) -> str:
    """` in size L`, or nothing for the values as typed."""
    return f" in size {size}" if size else ""
