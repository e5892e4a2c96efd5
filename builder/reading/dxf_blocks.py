"""Blocks of a drawing put in place: nested, scaled, turned, mirrored, in rows. Counted before anything is made."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from builder.reading.dxf_pieces import CAN_BE_AN_OUTLINE
from builder.reading.dxf_scan import MOST_ENTITIES, DrawingFault

_DEEPEST = 30
_ONE_OUTLINE = "Explode the blocks, and save only the outline in a drawing of its own."


def placed_entities(document: Any) -> Iterator[tuple[str, Any]]:
    """(layer, entity) of the drawing itself and of all its blocks where they are inserted.

    What lies on layer 0 of a block lies on the layer of its insert. Raises DrawingFault for blocks that hold
    themselves, and before more than MOST_ENTITIES points are made.
    """
    for block in document.blocks:
        # Copies of what is passed over anyway would cost as much as the rest.
        for entity in [one for one in block if one.dxftype() not in CAN_BE_AN_OUTLINE]:
            block.unlink_entity(entity)
    space = document.modelspace()
    counts: dict[str, int] = {}
    total = sum(_weight(entity, document, counts, ()) for entity in space)
    if total > MOST_ENTITIES:
        raise DrawingFault(f"With its blocks in place the drawing has over {MOST_ENTITIES:,} points.", _ONE_OUTLINE)
    for entity in space:
        yield from _placed(entity, entity.dxf.layer)


def _weight(entity: Any, document: Any, counts: dict[str, int], inside: tuple[str, ...]) -> int:
    """How many points an entity comes to, at most one more than is allowed."""
    kind = entity.dxftype()
    if kind == "LWPOLYLINE":
        return max(1, len(entity))
    if kind == "POLYLINE":
        return max(1, len(entity.vertices))
    if kind == "SPLINE":
        return max(1, len(entity.control_points) + len(entity.fit_points))
    if kind != "INSERT":
        return 1
    times = max(1, int(entity.dxf.row_count)) * max(1, int(entity.dxf.column_count))
    return min(times * _of_block(entity.dxf.name, document, counts, inside), MOST_ENTITIES + 1)


def _of_block(name: str, document: Any, counts: dict[str, int], inside: tuple[str, ...]) -> int:
    key = name.casefold()
    if key in inside:
        ring = " → ".join((*inside[inside.index(key) :], key))
        raise DrawingFault(f"A block of the drawing contains itself: {ring}.", _ONE_OUTLINE)
    if len(inside) >= _DEEPEST:
        raise DrawingFault(f"Blocks of the drawing lie over {_DEEPEST} deep in each other.", _ONE_OUTLINE)
    if key not in counts:
        block = document.blocks.get(name)
        entities = block if block is not None else ()
        found = sum(_weight(one, document, counts, (*inside, key)) for one in entities)
        counts[key] = min(found, MOST_ENTITIES + 1)
    return max(1, counts[key])


def _placed(entity: Any, layer: str) -> Iterator[tuple[str, Any]]:
    if entity.dxftype() not in CAN_BE_AN_OUTLINE:
        return
    if entity.dxftype() != "INSERT":
        yield layer, entity
        return
    for insert in entity.multi_insert() if entity.mcount > 1 else (entity,):
        for inner in insert.virtual_entities():
            yield from _placed(inner, layer if inner.dxf.layer == "0" else inner.dxf.layer)
