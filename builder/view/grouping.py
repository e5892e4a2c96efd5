"""Which sheets an operation needs: one for each distinct set of geometry among the products and sizes that use it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from builder.computing import operation_dimensions, variants
from builder.geometry import ShapeBook
from builder.model import Dimensions, PlantModel, Values, route_of, stood_for


@dataclass(frozen=True, slots=True)
class SheetGroup:
    """Products whose dimensions agree for an operation, with the sizes it is made in.

    sizes   : size name → values, in the order typed; {'': values} when nothing differs
    varying : full names of dimensions that differ between these sizes
    """

    operation: str
    products: tuple[str, ...]
    sizes: Mapping[str, Values]
    varying: frozenset[str]
    alone: bool

    @property
    def values(self) -> Values:
        """Those of the reference size, the first."""
        return next(iter(self.sizes.values()))

    @property
    def stem(self) -> str:
        """File name of the sheet without ending."""
        return self.operation if self.alone else f"{self.operation}--{self.products[0]}"


@dataclass(slots=True)
class Usage:
    """Which products use which operation; worked out once for a plant."""

    model: PlantModel
    dimensions: Dimensions
    book: ShapeBook
    usable: frozenset[str]

    def groups(self) -> Iterator[SheetGroup]:
        """All sheets of the plant, operations in the order of their files."""
        users: dict[str, list[str]] = {name: [] for name in self.model.operations}
        for product in self.model.products:
            for step in route_of(product, self.model.products, self.model.operations):
                if step.operation in users:
                    users[step.operation].append(product)
        for operation in users:
            if operation in self.usable:  # a deviation serves the products of the operation it stands in for
                yield from self._groups(operation, users.get(stood_for(self.model.operations, operation), []))

    def _groups(self, operation: str, products: list[str]) -> Iterator[SheetGroup]:
        names = operation_dimensions(self.model, self.book, operation)
        found: dict[tuple[tuple[str, tuple[str, ...]], ...], list[str]] = {}
        tables: dict[str, dict[str, Values]] = {}
        for product in products or [""]:
            tables[product] = sizes = self._sizes(product)
            keys = {size: _key(names, values) for size, values in sizes.items()}
            same = len(set(keys.values())) == 1
            shape = (("", next(iter(keys.values()))),) if same else tuple(keys.items())
            found.setdefault(shape, []).append(product)
        for shape, owners in found.items():
            sizes = tables[owners[0]]
            if len(shape) == 1:
                sizes = {"": next(iter(sizes.values()))}
            yield SheetGroup(
                operation, tuple(one for one in owners if one), sizes, _varying(names, sizes), len(found) == 1
            )

    def _sizes(self, product: str) -> dict[str, Values]:
        if not product:
            return {"": self.dimensions.values}
        spec = self.model.products[product]
        return {
            size or "": self.dimensions.sized(spec.sizes[size] if size is not None else {}) for size in variants(spec)
        }


def _key(names: tuple[str, ...], values: Values) -> tuple[str, ...]:
    return tuple(str(values[name].value) if name in values else "" for name in names)


def _varying(names: tuple[str, ...], sizes: Mapping[str, Values]) -> frozenset[str]:
    if len(sizes) < 2:
        return frozenset()
    return frozenset(
        name for name in names if len({values[name].value for values in sizes.values() if name in values}) > 1
    )
