"""Every place where one object names another. linking.py checks them; nothing else needs to know where names stand."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from builder.model.element import Element
from builder.model.feature import Elastic, Feature, Hardware, Notch, Seam, SewnTag, Strip, Zip, kinds_in
from builder.model.nest_names import nest_names
from builder.model.operation import Operation, Step
from builder.model.part import Part
from builder.model.plant_model import PlantModel
from builder.model.product import Product
from builder.model.shows import SIDES
from builder.model.sizes import full_name
from builder.model.template_names import template_references
from builder.model.time_text import Element as ElementText

Owner = tuple[str, str]


@dataclass(frozen=True, slots=True)
class Reference:
    """`owner` names something at `path`. It may be one of `kinds`, or one of the `local` names (called `what`)."""

    owner: Owner
    path: tuple[str | int, ...]
    name: str
    kinds: tuple[str, ...] = ()
    local: Iterable[str] = ()
    what: str = ""
    key: bool = False
    offset: int = 0


def references(model: PlantModel) -> Iterator[Reference]:
    """All references of the plant, in the order of the files."""
    for name, element in model.elements.items():
        yield from _of_element(("element", name), element, model)
    for name, part in model.parts.items():
        yield from _of_part(("part", name), part)
    for name, station in model.stations.items():
        for thread in station.bobbins:
            yield Reference(("station", name), ("bobbins", thread), thread, ("material",), key=True)
    for name, operation in model.operations.items():
        yield from _of_operation(("operation", name), operation)
        for path, text, local, what, offset in nest_names(model, name):
            yield Reference(("operation", name), path, text, local=local, what=what, offset=offset)
    dimensions = _size_names(model) if any(one.sizes for one in model.products.values()) else frozenset()
    for name, product in model.products.items():
        yield from _of_product(("product", name), product, dimensions)
    yield from template_references(model)
    if model.plant.look is not None and model.plant.look.logo is not None:
        yield Reference(("plant", "plant"), ("look", "logo"), model.plant.look.logo, ("photo",))
    for code, language in model.languages.items():
        for number, meant in enumerate(language.products):
            yield Reference(("language", code), ("products", number), meant, ("product",))


def _of_element(owner: Owner, element: Element, model: PlantModel) -> Iterator[Reference]:
    for number, one in enumerate(element.from_):
        path = ("from", number)
        yield Reference(owner, path, one.study, ("study",), offset=one.at)
        study = model.studies.get(one.study)
        if study is not None:
            what = f"step of the study {study.name}"
            yield Reference(owner, path, one.step, local=study.by_step(), what=what, offset=one.step_at)


def _of_part(owner: Owner, part: Part) -> Iterator[Reference]:
    if part.material is not None:
        yield Reference(owner, ("material",), part.material, ("material",))
    if part.outline is not None and part.outline.drawing is not None:
        yield Reference(owner, ("outline", "drawing"), part.outline.drawing, ("drawing",))
    if part.formed_from is not None:
        yield Reference(owner, ("formed from",), part.formed_from, ("part",))
    for number, component in enumerate(part.from_):
        yield Reference(owner, ("from", number, "part"), component.part, ("part",))
    for name, feature in part.features.items():
        yield from _of_feature(owner, ("features", name), feature, part)


def _of_feature(owner: Owner, path: tuple[str | int, ...], feature: Feature, part: Part) -> Iterator[Reference]:
    if feature.on is not None:
        yield Reference(owner, (*path, "on"), feature.on, local=part.features, what="feature")
    if feature.at is not None and feature.at.from_ is not None:
        yield Reference(owner, (*path, "at", "from"), feature.at.from_, local=part.features, what="feature")
    for number, point in enumerate(getattr(feature, "points", ())):
        if point.from_ is not None:
            yield Reference(owner, (*path, "points", number, "from"), point.from_, local=part.features, what="feature")
    if isinstance(feature, Zip | Elastic):
        key = kinds_in(feature)[0]
        yield Reference(owner, (*path, key), feature.material, ("material", "part"))
    if isinstance(feature, Seam) and feature.of is not None:
        yield Reference(owner, (*path, "of"), feature.of, local=part.features, what="feature")
    if isinstance(feature, SewnTag):
        yield Reference(owner, (*path, "tag"), feature.tag, ("part", "material"))
    if isinstance(feature, Strip):
        yield Reference(owner, (*path, "strip"), feature.strip, ("part",))
    if isinstance(feature, Hardware):
        yield Reference(owner, (*path, "hardware"), feature.hardware, ("material",))
    if isinstance(feature, Notch) and feature.meets is not None:
        yield Reference(owner, (*path, "meets"), feature.meets, ("part",))
    if isinstance(feature, Seam) and feature.binding is not None:
        yield Reference(owner, (*path, "binding"), feature.binding, ("material",))


def _of_operation(owner: Owner, operation: Operation) -> Iterator[Reference]:
    yield Reference(owner, ("station",), operation.station, ("station",))
    if operation.deviation is not None:
        yield Reference(owner, ("deviation", "instead of"), operation.deviation.instead_of, ("operation",))
    for name in operation.needs:
        yield Reference(owner, ("needs", name), name, ("part", "material"), key=True)
    for name, tolerance in operation.tolerances.items():
        if tolerance.with_ is not None:
            yield Reference(owner, ("tolerances", name, "with"), tolerance.with_, ("gauge", "template"))
    if operation.times is not None:
        yield Reference(owner, ("times",), operation.times, ("study",))
    names = [step.step for step in operation.steps]
    for number, step in enumerate(operation.steps):
        yield from _of_step(owner, ("steps", number), step, operation, names)


def _of_step(
    owner: Owner, path: tuple[str | int, ...], step: Step, operation: Operation, names: list[str]
) -> Iterator[Reference]:
    for number, name in enumerate(step.check):
        yield Reference(owner, (*path, "check", number), name, local=operation.tolerances, what="tolerance")
    for number, shown in enumerate(step.pictures):
        where = (*path, "shows", number)
        if shown.kind in ("part", "layers"):
            yield Reference(owner, where, shown.name, ("part",), offset=shown.offset)
        if shown.side_offset >= 0:
            yield Reference(owner, where, shown.side, local=SIDES, what="side", offset=shown.side_offset)
    for number, name in enumerate(step.with_):
        yield Reference(owner, (*path, "with", number), name, ("template",))
    if step.during is not None:
        yield Reference(owner, (*path, "during"), step.during, local=names, what="step")
    if isinstance(step.time, ElementText):
        yield Reference(owner, (*path, "time"), step.time.name, ("element",), offset=step.time.offset)
    for shot in step.shots:
        yield Reference(owner, (*path, *shot.file_path), shot.picture.file, ("photo",))


def _size_names(model: PlantModel) -> frozenset[str]:
    return frozenset(full_name(name, short) for name, part in model.parts.items() for short, _ in part.own_dimensions())


def _of_product(owner: Owner, product: Product, dimensions: frozenset[str]) -> Iterator[Reference]:
    for number, stop in enumerate(product.route):
        if stop.operation is not None:
            yield Reference(owner, ("route", number, "operation"), stop.operation, ("operation",))
        if stop.sub_assembly is not None:
            yield Reference(owner, ("route", number, "sub assembly"), stop.sub_assembly, ("product",))
    if product.sold is not None:
        yield Reference(owner, ("sold",), product.sold, ("part",))
    if product.alternative_to is not None:
        yield Reference(owner, ("alternative to",), product.alternative_to, ("product",))
    for colour, swaps in product.colours.items():
        for name, other in swaps.items():
            yield Reference(owner, ("colours", colour, name), name, ("material",), key=True)
            yield Reference(owner, ("colours", colour, name), other, ("material",))
    for size, overrides in product.sizes.items():
        for name in overrides:
            yield Reference(owner, ("sizes", size, name), name, local=dimensions, what="dimension", key=True)
