"""What one finished piece of a product takes of each material: net, without waste, from the geometry of one size."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from fractions import Fraction

from builder.computing.sewn_thread import SewnThread, all_thread, thread_names
from builder.geometry import NestLayout, ShapeBook, operation_nest
from builder.model import Elastic, Laid, MaterialUse, PlantModel, RouteStep, Seam, Values, cut_here, laid_by


def product_use(route: Iterable[RouteStep], uses: Mapping[str, tuple[MaterialUse, ...]]) -> tuple[MaterialUse, ...]:
    """Materials of a route in the order it first takes them, its quantities multiplied in. `uses` by operation."""
    sums: dict[str, MaterialUse] = {}
    for step in route:
        for use in uses.get(step.operation, ()):
            before = sums.get(use.material, MaterialUse(use.material))
            sums[use.material] = before.plus(use, float(step.quantity))
    return tuple(sums.values())


def operation_use(
    name: str,
    model: PlantModel,
    book: ShapeBook,
    values: Values,
    sewn: tuple[SewnThread, ...],
    taken: Mapping[str, Fraction],
) -> tuple[MaterialUse, ...]:
    """What one run of an operation takes from the store, for the pieces of it that are `taken`; `sewn` is its thread.

    Sheet goods count by the area of the outlines, strips by their length, bindings by the seam they cover, zips and
    elastic by what is laid, hardware by the piece, threads by their length where it can be worked out, else by the seam
    sewn with them. Net: none of the pieces left over, no overlap, nothing of what stays on a bobbin; waste beside it,
    where a nest says how much.
    """
    operation = model.operations[name]
    found = [use for made, count in taken.items() for use in _cut(name, made, float(count), model, book, values)]
    found += [MaterialUse(need, pieces=count) for need, count in operation.needs.items() if need in model.materials]
    for one in sewn:
        if isinstance(one.feature.feature, Seam) and one.feature.feature.binding is not None:
            found.append(MaterialUse(one.feature.feature.binding, length_mm=one.seam_mm))
    found += _laid(name, model, book, values)
    return (*found, *_threads(name, model, sewn))


def _laid(name: str, model: PlantModel, book: ShapeBook, values: Values) -> Iterator[MaterialUse]:
    """Zips by the length of their line, elastic by its relaxed length, both with what is added at either end."""
    for ref in laid_by(model, name):
        shape = book.shape(ref.part, values)
        one = shape.features.get(ref.feature) if shape is not None else None
        if one is None or not isinstance(one.feature, Laid) or one.feature.material not in model.materials:
            continue
        length = one.size[1] if isinstance(one.feature, Elastic) else one.paths[0].length
        ends = values.get(f"{ref.part}/{ref.feature}.ends")
        yield MaterialUse(one.feature.material, length_mm=length + (2 * float(ends.value) if ends is not None else 0.0))


def _threads(name: str, model: PlantModel, sewn: tuple[SewnThread, ...]) -> Iterator[MaterialUse]:
    """Needle threads to the material their setting names, bobbin and looper threads to theirs."""
    names = thread_names(model, name)
    if names is None or not sewn:
        return
    seam, use = sum(one.seam_mm for one in sewn), all_thread(sewn)
    for material in dict.fromkeys(names):
        if use is None:
            yield MaterialUse(material, seam_mm=seam, thread_known=False)
            continue
        least, most = use.total if names[0] == names[1] else use.needle if material == names[0] else use.under
        yield MaterialUse(material, seam_mm=seam, thread_mm=least, thread_most_mm=most)


def _cut(
    name: str, made: str, count: float, model: PlantModel, book: ShapeBook, values: Values
) -> Iterator[MaterialUse]:
    material = model.material_of(made)
    shape = book.shape(made, values) if material is not None and cut_here(model, name, made) else None
    if shape is None or material is None:
        return
    if shape.part.outline is not None and shape.part.outline.strip is not None:
        left, _, right, _ = shape.bounds
        yield MaterialUse(material, length_mm=count * (right - left))
    else:
        area = count * shape.outline.area()
        sheet = operation_nest(model, book, name, values)
        waste = area * (1 / sheet.used - 1) if isinstance(sheet, NestLayout) and sheet.used > 0 else 0.0
        yield MaterialUse(material, area_mm2=area, waste_mm2=waste)
