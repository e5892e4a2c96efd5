"""What a template names: its part or tolerance, its features, its size."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import TYPE_CHECKING

from builder.model.product import Product
from builder.model.sizes import Dimensions, Values
from builder.model.states import operation_dimension
from builder.model.template import Template
from builder.model.tolerance import Tolerance

if TYPE_CHECKING:
    from builder.model.plant_model import PlantModel
    from builder.model.references import Reference


def template_references(model: PlantModel) -> Iterator[Reference]:
    """Every place where a template names another object."""
    from builder.model.references import Reference

    for name, template in model.templates.items():
        owner = ("template", name)
        if template.kind == "gauge":
            yield from _of_gauge(owner, template, model)
        else:
            yield Reference(owner, ("of",), template.of, ("part",))
            base = model.base_of(template.of)
            for number, feature in enumerate(template.features if base is not None else ()):
                assert base is not None
                yield Reference(owner, ("features", number), feature, local=base.features, what="feature")
        if template.size is not None:
            yield Reference(owner, ("size",), template.size, local=size_names(model.products), what="size")


def _of_gauge(owner: tuple[str, str], template: Template, model: PlantModel) -> Iterator[Reference]:
    from builder.model.references import Reference

    yield Reference(owner, ("of",), template.operation, ("operation",))
    operation = model.operations.get(template.operation)
    if operation is not None:
        at = len(template.operation) + 1
        yield Reference(owner, ("of",), template.tolerance, local=operation.tolerances, what="tolerance", offset=at)


def size_names(products: Mapping[str, Product]) -> frozenset[str]:
    """All ways a size may be named: `PRODUCT/SIZE`, and `SIZE` alone where it means one thing."""
    full = {f"{name}/{size}" for name, product in products.items() for size in product.sizes}
    return frozenset(full | {size for size in _sizes(products) if len(_meanings(size, products)) == 1})


def sized_values(size: str | None, products: Mapping[str, Product], dimensions: Dimensions) -> Values:
    """The dimensions of a size, as typed without one. Raises KeyError for an unknown or ambiguous size."""
    if size is None:
        return dimensions.values
    product, _, name = size.rpartition("/")
    if product:
        return dimensions.sized(products[product].sizes[name])
    meanings = _meanings(size, products)
    if len(meanings) != 1:
        raise KeyError(size)
    return dimensions.sized(products[meanings[0]].sizes[size])


def _sizes(products: Mapping[str, Product]) -> set[str]:
    return {size for product in products.values() for size in product.sizes}


def _meanings(size: str, products: Mapping[str, Product]) -> list[str]:
    """A product for each different meaning of a size's name."""
    found: dict[tuple[tuple[str, str], ...], str] = {}
    for name, product in products.items():
        if size in product.sizes:
            facts = tuple(sorted((full, str(value.value)) for full, value in product.sizes[size].items()))
            found.setdefault(facts, name)
    return list(found.values())


def gauge_tolerance(
    template: Template, model: PlantModel, definitions: Mapping[str, object], values: Values
) -> Tolerance | None:
    """The tolerance a gauge is for, a band put around its dimension's value; None where it gives no length to cut.

    A band whose nominal nobody named has none, and so has what isn't a length.
    """
    operation = model.operations.get(template.operation)
    spec = operation.tolerances.get(template.tolerance) if operation is not None else None
    if operation is None or spec is None or spec.is_.dimension != "length":
        return None
    full = operation_dimension(operation, spec.of, model.states, definitions) if spec.of is not None else None
    nominal = values.get(full) if full is not None else None
    tolerance = spec.is_.around(nominal) if nominal is not None else spec.is_
    return None if tolerance.form == "band" else tolerance
