"""What pieces weigh: area times mass per area, summed along needs and makes. Thread and binding are left out.

Not here: waste, packing, and any limit.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from builder.geometry.shapes import ShapeBook
from builder.model import Material, PlantModel, Values


@dataclass(slots=True)
class Scales:
    """Weighs part states of a plant in one size; each is weighed once."""

    model: PlantModel
    book: ShapeBook
    values: Values
    _grams: dict[str, float | None] = field(default_factory=dict)

    def grams(self, name: str) -> float | None:
        """Mass of one piece of a part state, or of hardware [g]; None where a shape or a mass isn't known.

        m = A m″ for sheet goods, l m′ for webbing, the sum of what the operation needs for what is joined.
        Source: definitions of mass per area and per length.
        """
        # A stack of our own: a chain of states may be longer than Python's. A ring weighs nothing known.
        stack, begun = [name], set[str]()
        while stack:
            at = stack[-1]
            if at not in self._grams and at not in begun:
                begun.add(at)
                stack += [one for one in self._needs(at) if one not in self._grams and one not in begun]
                continue
            stack.pop()
            if at not in self._grams:
                self._grams[at] = self._weigh(at)
        return self._grams[name]

    def _needs(self, name: str) -> Mapping[str, int]:
        """What one piece is joined from, with counts; empty for a cut piece and for hardware."""
        state = self.model.states.get(name)
        operation = self.model.operations.get(state.maker) if state is not None else None
        return operation.needs if operation is not None else {}

    def _weigh(self, name: str) -> float | None:
        if name in self.model.materials:
            return _each(self.model.materials[name])
        state = self.model.states.get(name)
        if state is None:
            return None
        needs = self._needs(name)
        if not needs:
            return self._cut_piece(name)
        makes = self.model.operations[state.maker].makes
        if len(makes) > 1:
            return None  # nobody says which of them the needed parts went into
        total = 0.0
        for need, count in needs.items():
            grams = self._grams.get(need)
            if grams is None:
                return None
            total += count * grams
        return total / makes[name]

    def _cut_piece(self, name: str) -> float | None:
        material = self.model.materials.get(self.model.material_of(name) or "")
        shape = self.book.shape(name, self.values)
        if material is None or shape is None:
            return None
        if material.mass is not None:
            return shape.outline.area() * float(material.mass.value) / 1e6
        if material.mass_per_length is not None:
            left, _, right, _ = shape.bounds
            return (right - left) * float(material.mass_per_length.value) / 1000
        return _each(material)


def _each(material: Material) -> float | None:
    return float(material.mass_each.value) if material.mass_each is not None else None


def roll_grams(material: Material) -> float | None:
    """Mass of a roll or sheet as bought [g]; None where its length, width or mass isn't typed."""
    if material.length is None:
        return None
    metres = float(material.length.value) / 1000
    if material.mass_per_length is not None:
        return metres * float(material.mass_per_length.value)
    if material.mass is not None and material.width is not None:
        return metres * float(material.width.value) / 1000 * float(material.mass.value)
    return None
