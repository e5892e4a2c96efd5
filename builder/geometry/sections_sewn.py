"""The section of each feature an operation sews, as the goods lie when its step has sewn it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from builder.geometry.cross_cut import CutAsk
from builder.geometry.section import Section, section_of
from builder.geometry.shapes import ShapeBook
from builder.model import PlantModel, Values, earlier_work, find_feature


@dataclass(frozen=True, slots=True)
class SewnSection:
    """A feature a step sews, cut across. step, index : of the step, and of the name in its `sew`."""

    step: int
    index: int
    section: Section


def sections_by(model: PlantModel, book: ShapeBook, operation: str, values: Values) -> Iterator[SewnSection]:
    """Sections of all that the steps of an operation sew, in one size; what has no shape is left out."""
    one, homes = model.operations[operation], model.homes[operation]
    done: set[tuple[str, str]] = set()
    for made in one.makes:
        done |= earlier_work(made, model.states)
    for number, step in enumerate(one.steps):
        refs = [find_feature(name, homes) for name in step.work[1]]
        done |= {(ref.part, ref.feature) for ref in refs if ref is not None}
        for index, ref in enumerate(refs if step.sew else ()):
            shape = book.shape(ref.part, values) if ref is not None else None
            if ref is None or shape is None or ref.feature not in shape.features:
                continue
            ask = CutAsk(frozenset(done), lambda name: book.shape(name, values), lambda tape: tape_width(model, tape))
            found = section_of(shape, ref.feature, ask)
            if found is not None:
                yield SewnSection(number, index, found)


def tape_width(model: PlantModel, tape: str) -> float | None:
    """Width of a tape, mm; None where nobody typed it."""
    material = model.materials.get(tape)
    return float(material.width.value) if material is not None and material.width is not None else None
