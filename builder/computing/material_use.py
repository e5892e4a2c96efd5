"""What one finished piece of a product takes of each material: net, without waste, from the geometry of one size."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping

from builder.geometry import FeatureShape, ShapeBook
from builder.model import (
    Bartack,
    MaterialUse,
    PlantModel,
    RouteStep,
    Seam,
    Values,
    cut_here,
    find_feature,
    settings_of,
)


def product_use(route: Iterable[RouteStep], uses: Mapping[str, tuple[MaterialUse, ...]]) -> tuple[MaterialUse, ...]:
    """Materials of a route in the order it first takes them, its quantities multiplied in. `uses` by operation."""
    sums: dict[str, MaterialUse] = {}
    for step in route:
        for use in uses.get(step.operation, ()):
            before = sums.get(use.material, MaterialUse(use.material))
            sums[use.material] = before.plus(use, float(step.quantity))
    return tuple(sums.values())


def operation_use(name: str, model: PlantModel, book: ShapeBook, values: Values) -> tuple[MaterialUse, ...]:
    """What one run of an operation takes from the store.

    Sheet goods count by the area of the outlines, strips by their length, bindings by the seam they cover, hardware
    by the piece, threads by the length of seam sewn with them. Net: no waste, no overlap, no thread per stitch.
    """
    operation = model.operations[name]
    found = [use for made, count in operation.makes.items() for use in _cut(name, made, count, model, book, values)]
    found += [MaterialUse(need, pieces=count) for need, count in operation.needs.items() if need in model.materials]
    sewn = list(_sewn(name, model, book, values))
    for feature, length in sewn:
        if isinstance(feature.feature, Seam) and feature.feature.binding is not None:
            found.append(MaterialUse(feature.feature.binding, length_mm=length))
    threads = [value.words for value in settings_of(model, name).values() if value.kind.sort == "thread"]
    total = sum(length for _, length in sewn)
    return (*found, *(MaterialUse(thread, seam_mm=total) for thread in dict.fromkeys(threads)))


def _cut(name: str, made: str, count: int, model: PlantModel, book: ShapeBook, values: Values) -> Iterator[MaterialUse]:
    material = model.material_of(made)
    shape = book.shape(made, values) if material is not None and cut_here(model, name, made) else None
    if shape is None or material is None:
        return
    if shape.part.outline is not None and shape.part.outline.strip is not None:
        left, _, right, _ = shape.bounds
        yield MaterialUse(material, length_mm=count * (right - left))
    else:
        yield MaterialUse(material, area_mm2=count * shape.outline.area())


def _sewn(name: str, model: PlantModel, book: ShapeBook, values: Values) -> Iterator[tuple[FeatureShape, float]]:
    """Seams and boxes an operation sews, with the length of their paths in mm; a bartack is no length of seam."""
    operation = model.operations[name]
    homes = model.homes[name]
    for step in operation.steps:
        for ref in (find_feature(one, homes) for one in step.sew):
            shape = book.shape(ref.part, values) if ref is not None else None
            feature = shape.features.get(ref.feature) if shape is not None and ref is not None else None
            if feature is not None and not isinstance(feature.feature, Bartack):
                yield feature, sum(path.length for path in feature.paths)
