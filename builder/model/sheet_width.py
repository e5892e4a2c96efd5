"""How wide the sheet of a nest is: as typed, else as its goods."""

from __future__ import annotations

from builder.model.operation import Operation
from builder.model.plant_model import PlantModel
from builder.model.quantity import Quantity


def nest_width(operation: Operation, model: PlantModel) -> Quantity | None:
    """Width of an operation's sheet across the roll; None without a nest, or where nobody says it."""
    if operation.nest is None:
        return None
    if operation.nest.sheet.width is not None:
        return operation.nest.sheet.width
    for piece in operation.nest.pieces:
        material = model.materials.get(model.material_of(piece.part) or "")
        if material is not None and material.width is not None:
            return material.width
    return None
