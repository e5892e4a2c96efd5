"""How thick and of how many layers the goods are that each seam of an operation goes through, at most."""

from __future__ import annotations

from dataclasses import dataclass

from builder.geometry.shapes import ShapeBook
from builder.geometry.stack import Stack
from builder.geometry.under_needle import sewn_by
from builder.model import FeatureRef, PlantModel, Values


@dataclass(frozen=True, slots=True)
class Goods:
    """What a seam goes through where it is thickest, as far as anybody knows.

    layers       : most layers under the needle, 0 where none is known
    thickness_mm : thickest stack, of the layers whose material states its thickness; 0 where none does
    """

    layers: int = 0
    thickness_mm: float = 0.0


def seam_goods(operation: str, model: PlantModel, book: ShapeBook, values: Values) -> dict[FeatureRef, Goods]:
    """Goods of each seam an operation sews."""
    return {
        FeatureRef(one.part, one.feature.name): Goods(
            max((len(stack) for stack in one.stacks), default=0),
            max((_thickness(stack, model) for stack in one.stacks), default=0.0),
        )
        for one in sewn_by(model, book, operation, values)
    }


def _thickness(stack: Stack, model: PlantModel) -> float:
    known = (model.material_under(layer) for layer in stack)
    layers = [one[1].under_foot for one in known if one is not None]
    return float(sum(one for one in layers if one is not None))
