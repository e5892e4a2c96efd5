"""Times of the whole plant: every operation in every size that needs it, every product along its route."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field

from builder.computing.allowance import station_allowance
from builder.computing.material_use import operation_use, product_use
from builder.computing.operation_time import operation_time
from builder.computing.step_time import bench_of, step_times
from builder.geometry import ShapeBook
from builder.model import (
    Dimensions,
    MaterialUse,
    OperationTime,
    PlantModel,
    Product,
    ProductTime,
    Results,
    RouteLine,
    RouteStep,
    Values,
    route_of,
)


def variants(product: Product) -> tuple[str | None, ...]:
    """Sizes of a product, or None alone when it has none."""
    return tuple(product.sizes) or (None,)


_Key = tuple[str, tuple[str, ...]]
"""An operation with the values of the dimensions it may rest on."""


@dataclass(slots=True)
class _Clock:
    """Computes operation times and what operations take, each distinct geometry once."""

    model: PlantModel
    book: ShapeBook
    dimensions: Dimensions
    _seen: dict[_Key, OperationTime | None] = field(default_factory=dict)
    _uses: dict[_Key, tuple[MaterialUse, ...]] = field(default_factory=dict)
    _names: dict[str, tuple[str, ...]] = field(default_factory=dict)
    _keys: dict[tuple[str, int], _Key] = field(default_factory=dict)

    def time(self, name: str, values: Values) -> OperationTime | None:
        key = self._key(name, values)
        if key not in self._seen:
            self._seen[key] = self._compute(name, values)
        return self._seen[key]

    def use(self, name: str, values: Values) -> tuple[MaterialUse, ...]:
        """What one run takes from the store."""
        key = self._key(name, values)
        if key not in self._uses:
            self._uses[key] = operation_use(name, self.model, self.book, values)
        return self._uses[key]

    def _key(self, name: str, values: Values) -> _Key:
        known = self._keys.get((name, id(values)))
        if known is None:
            known = self._keys[name, id(values)] = self._key_of(name, values)
        return known

    def _key_of(self, name: str, values: Values) -> _Key:
        names = self._names.get(name)
        if names is None:
            names = self._names[name] = operation_dimensions(self.model, self.book, name)
        return name, tuple(str(values[one].value) if one in values else "" for one in names)

    def _compute(self, name: str, values: Values) -> OperationTime | None:
        bench = bench_of(self.model, self.book, name, values, self._studied(name, values))
        if bench is None:
            return None
        allowed = station_allowance(self.model.plant, bench.station)
        return operation_time(name, tuple(step_times(bench)), bench.station, bench.kind, allowed)

    def _studied(self, name: str, values: Values) -> Values | None:
        """Dimensions of the size a study was taken in, None when they are these or the study names no size."""
        study = self.model.study_of(name)
        size = study.head.get("size", "") if study is not None else ""
        for product in self.model.products.values():
            if size not in product.sizes:
                continue
            then = self.dimensions.sized(product.sizes[size])
            if any(then[one].value != values[one].value for one in self._names[name] if one in then and one in values):
                return then
        return None


def operation_dimensions(model: PlantModel, book: ShapeBook, name: str) -> tuple[str, ...]:
    """Full names of the dimensions an operation may rest on: those of the parts it needs and makes."""
    operation = model.operations[name]
    names: dict[str, None] = {}
    for part in (*operation.makes, *operation.needs):
        names.update(dict.fromkeys(book.dimension_names(part)))
    return tuple(names)


def compute(model: PlantModel, dimensions: Dimensions, book: ShapeBook, usable: Mapping[str, bool]) -> Results:
    """All times of a plant. `usable` says which operations may be computed; the rest leave the routes quietly."""
    clock = _Clock(model, book, dimensions)
    operations = {name: one for name, one in model.operations.items() if usable.get(name, True)}
    times: dict[tuple[str, str, str], OperationTime] = {}
    products: list[ProductTime] = []
    for name, product in model.products.items():
        route = route_of(name, model.products, operations)
        for variant in variants(product):
            values = dimensions.sized(product.sizes[variant] if variant is not None else {})
            found = {step.operation: clock.time(step.operation, values) for step in route}
            for operation, time in found.items():
                if time is not None:
                    times[operation, name, variant or ""] = time
            takes = product_use(route, {step.operation: clock.use(step.operation, values) for step in route})
            products.append(_product_time(name, variant, route, found, model, takes))
    for name in operations:
        time = clock.time(name, dimensions.values)
        if time is not None:
            times[name, "", ""] = time
    return Results(times, tuple(products), model.plant.batch)


def _product_time(
    name: str,
    variant: str | None,
    route: tuple[RouteStep, ...],
    times: Mapping[str, OperationTime | None],
    model: PlantModel,
    materials: tuple[MaterialUse, ...],
) -> ProductTime:
    lines = tuple(_lines(route, times, model))
    total = sum(line.own_min for line in lines)
    estimated = sum(line.own_min * line.estimate_share for line in lines)
    machine = sum(line.own_machine_min for line in lines)
    return ProductTime(name, variant, lines, total, machine, estimated / total if total else 0.0, materials)


def _lines(
    route: tuple[RouteStep, ...], times: Mapping[str, OperationTime | None], model: PlantModel
) -> Iterator[RouteLine]:
    cumulative = 0.0
    for step in route:
        time = times[step.operation]
        if time is None:
            continue
        quantity = float(step.quantity)
        own = quantity * time.labour_min
        cumulative += own
        station = model.operations[step.operation].station
        yield RouteLine(
            step.operation, station, step.quantity, own, quantity * time.machine_min, cumulative, time.estimate_share
        )
