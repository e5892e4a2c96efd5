"""Times of the whole plant: every operation in every size that needs it, every product along its route."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace
from fractions import Fraction

from builder.computing.allowance import station_allowance
from builder.computing.conditions import bench_then, is_stale
from builder.computing.learning import newcomer_weeks
from builder.computing.material_use import operation_use, product_use
from builder.computing.mixed_sheet import Whole, pieces_taken, run_share, taken_whole
from builder.computing.occurrence import lots_of
from builder.computing.operation_time import attendance_share, operation_time
from builder.computing.product_spread import RouteShare, labour_parts, product_spread
from builder.computing.sewn_thread import SewnThread, thread_sewn
from builder.computing.shift_capacity import capacity, crew_of
from builder.computing.standard_data import standard_data
from builder.computing.step_bench import Bench, bench_of
from builder.computing.step_time import self_paced_steps, step_times
from builder.computing.study_summary import summarise
from builder.computing.sureness import allowance_error, precision_of, rating_error
from builder.computing.tending import tending_of
from builder.geometry import ShapeBook
from builder.model import (
    KINDS,
    Dimensions,
    ElementData,
    MaterialUse,
    OperationTime,
    Plant,
    PlantModel,
    Product,
    ProductTime,
    Results,
    RouteLine,
    RouteStep,
    Spread,
    StationShare,
    StudySummary,
    Tending,
    Values,
    Week,
    deviations,
    route_of,
)


def variants(product: Product) -> tuple[str | None, ...]:
    """Sizes of a product, or None alone when it has none."""
    return tuple(product.sizes) or (None,)


_Key = tuple[str, tuple[str, ...]]
"""An operation with the values of the dimensions it may rest on."""

_UseKey = tuple[_Key, tuple[Fraction, ...]]
"""The same, with the pieces of a run that are taken."""

_TimeKey = tuple[_Key, Fraction]
"""The same, with the runs in a batch; 0 where no step is done once a batch, so that its time serves every batch."""


@dataclass(slots=True)
class _Clock:
    """Computes operation times and what operations take, each distinct geometry once.

    whole : of what an operation makes, that of which some product takes all
    """

    model: PlantModel
    book: ShapeBook
    dimensions: Dimensions
    whole: Whole = frozenset()
    studies: dict[str, StudySummary] = field(default_factory=dict)
    standard: dict[str, ElementData] = field(default_factory=dict)
    _seen: dict[_TimeKey, OperationTime | None] = field(default_factory=dict)
    _threads: dict[_Key, tuple[SewnThread, ...]] = field(default_factory=dict)
    _uses: dict[_UseKey, tuple[MaterialUse, ...]] = field(default_factory=dict)
    _names: dict[str, tuple[str, ...]] = field(default_factory=dict)
    _keys: dict[tuple[str, int], _Key] = field(default_factory=dict)

    def time(self, name: str, values: Values, runs_a_batch: Fraction) -> OperationTime | None:
        """Times of one run, in a batch of so many."""
        batchwise = any(step.per is not None and step.per.per == "batch" for step in self.model.operations[name].steps)
        key = self._key(name, values), runs_a_batch if batchwise else Fraction(0)
        if key not in self._seen:
            self._seen[key] = self._compute(name, values, runs_a_batch)
        return self._seen[key]

    def use(self, step: RouteStep, values: Values) -> tuple[MaterialUse, ...]:
        """What one run takes from the store for the pieces of it that a product takes."""
        name, taken = step.operation, pieces_taken(step, self.model.operations[step.operation])
        key = self._key(name, values), tuple(taken.values())
        if key not in self._uses:
            self._uses[key] = operation_use(name, self.model, self.book, values, self._thread(name, values), taken)
        return self._uses[key]

    def _thread(self, name: str, values: Values) -> tuple[SewnThread, ...]:
        key = self._key(name, values)
        if key not in self._threads:
            self._threads[key] = tuple(thread_sewn(self.model, self.book, name, values))
        return self._threads[key]

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

    def _compute(self, name: str, values: Values, runs_a_batch: Fraction) -> OperationTime | None:
        bench = bench_of(self.model, self.book, name, values)
        if bench is None:
            return None
        bench = replace(bench, standard=self.standard)
        if any(step.per is not None for step in bench.operation.steps):
            bench = replace(bench, lots=lots_of(bench, runs_a_batch, self._thread(name, values)))
        if self.model.study_of(name) is not None:
            bench = self._studied(bench)
        allowed = station_allowance(self.model.plant, bench.station)
        return operation_time(name, tuple(step_times(bench)), bench.station, bench.kind, allowed)

    def _studied(self, bench: Bench) -> Bench:
        """The bench with what its study says, and the conditions it was taken under."""
        then = bench_then(bench, self.dimensions, self._names[bench.name])
        return replace(bench, summary=self.summary(bench), then=then, stale=is_stale(bench))

    def derive(self, usable: Mapping[str, bool]) -> None:
        """The plant's standard data, once, before any time is computed from it."""
        wanted = {one.study for element in self.model.elements.values() for one in element.from_}
        benches: dict[str, Bench] = {}
        blind: set[str] = set()
        for name in self.model.operations if wanted else ():
            study = self.model.study_of(name)
            if study is None or study.name not in wanted or study.name in benches:
                continue
            self._key(name, self.dimensions.values)  # its dimensions are known from here on
            bench = bench_of(self.model, self.book, name, self.dimensions.values) if usable.get(name, True) else None
            if bench is None:
                blind.add(study.name)
            else:
                benches[study.name] = self._studied(bench)
        confidence = precision_of(self.model.plant).confidence
        self.standard = standard_data(self.model.elements, benches, blind - benches.keys(), confidence)

    def summary(self, bench: Bench) -> StudySummary | None:
        """What the study of an operation says; the readings are gone through once."""
        study = self.model.study_of(bench.name)
        if study is None:
            return None
        if bench.name not in self.studies:
            self.studies[bench.name] = summarise(study, bench.sure.precision, self_paced_steps(bench))
        return self.studies[bench.name]


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
    clock.derive(usable)
    others = deviations(operations)
    times: dict[tuple[str, str, str], OperationTime] = {}
    products: list[ProductTime] = []
    routes = {name: route_of(name, model.products, operations) for name in model.products}
    clock.whole = taken_whole(routes.values(), operations)
    for name, product in model.products.items():
        route = routes[name]
        batch = product.batch or model.plant.batch
        for variant in variants(product):
            values = dimensions.sized(product.sizes[variant] if variant is not None else {})
            found = {step.operation: clock.time(step.operation, values, batch * step.quantity) for step in route}
            for operation, time in found.items():
                if time is not None:
                    times[operation, name, variant or ""] = time
            for step in route:
                for other in others.get(step.operation, ()):
                    if (time := clock.time(other, values, batch * step.quantity)) is not None:
                        times[other, name, variant or ""] = time
            takes = product_use(route, {step.operation: clock.use(step, values) for step in route})
            products.append(_product_time(name, variant, route, found, clock, values, takes))
    for name in operations:
        time = clock.time(name, dimensions.values, Fraction(model.plant.batch))
        if time is not None:
            times[name, "", ""] = time
    precision = precision_of(model.plant)
    tending = dict(_tended(model, times))
    return Results(times, tuple(products), model.plant.batch, clock.studies, clock.standard, precision, tending)


def _tended(model: PlantModel, times: Mapping[tuple[str, str, str], OperationTime]) -> Iterator[tuple[str, Tending]]:
    for (name, product, _), time in times.items():
        kind = model.kind_of(name)
        if not product and kind is not None and kind.paced == "machine":
            station = model.stations[model.operations[name].station]
            found = tending_of(time, station, attendance_share(station, kind))
            if found is not None:
                yield name, found


def _product_time(
    name: str,
    variant: str | None,
    route: tuple[RouteStep, ...],
    times: Mapping[str, OperationTime | None],
    clock: _Clock,
    values: Values,
    materials: tuple[MaterialUse, ...],
) -> ProductTime:
    model = clock.model
    lines = tuple(_lines(route, times, clock, values))
    total = sum(line.own_min for line in lines)
    estimated = sum(line.own_min * line.estimate_share for line in lines)
    machine = sum(line.own_machine_min for line in lines)
    spread = _spread(lines, times, clock) if total else None
    share = estimated / total if total else 0.0
    stations, newcomer = tuple(_stations(lines, model)), tuple(_newcomer(total, model.plant))
    return ProductTime(name, variant, lines, total, machine, share, materials, spread, stations, newcomer)


WEEKS = 8
"""Weeks of a newcomer that are worked out."""


def _stations(lines: tuple[RouteLine, ...], model: PlantModel) -> Iterator[StationShare]:
    sums: dict[str, tuple[float, float]] = {}
    for line in lines:
        labour, machine = sums.get(line.station, (0.0, 0.0))
        sums[line.station] = (labour + line.own_min, machine + line.own_machine_min)
    for name, (labour, machine) in sums.items():
        station = model.stations[name]
        kind = KINDS.get(station.kind)
        crew = crew_of(model.plant, station, kind is not None and kind.paced != "none")
        yield StationShare(name, labour, machine, capacity(crew, labour, machine))


def _newcomer(total: float, plant: Plant) -> Iterator[Week]:
    learning = plant.learning
    if learning is None or total <= 0:
        return
    off = float(plant.off_standard) if plant.off_standard is not None else 0.0
    minutes = WORKDAYS * float(plant.shift.paid.value - plant.shift.breaks.value) / 60 * (1 - off)
    yield from newcomer_weeks(float(learning.rate), learning.standard_after, total, minutes, WEEKS)


WORKDAYS = 5
"""Shifts in a week. Common practice, no source."""


def _spread(lines: tuple[RouteLine, ...], times: Mapping[str, OperationTime | None], clock: _Clock) -> Spread:
    model, shares, plant = clock.model, [], clock.model.plant
    ratings, allowed = rating_error(plant), allowance_error(plant)
    for line in lines:
        time, kind = times[line.operation], model.kind_of(line.operation)
        if time is not None and kind is not None and time.labour_min > 0:
            own = line.own_min / time.labour_min
            parts = labour_parts(time, model.stations[line.station], kind, own, ratings, allowed)
            shares.append(RouteShare(line.operation, line.own_min, time.labour_min, parts))
    return product_spread(shares, clock.studies, precision_of(plant))


def _lines(
    route: tuple[RouteStep, ...], times: Mapping[str, OperationTime | None], clock: _Clock, values: Values
) -> Iterator[RouteLine]:
    cumulative, model = 0.0, clock.model
    for step in route:
        time = times[step.operation]
        if time is None:
            continue
        taken = pieces_taken(step, model.operations[step.operation])
        share = run_share(step.operation, taken, clock.whole, model, clock.book, values)
        quantity = float(step.quantity) * share
        own = quantity * time.labour_min
        cumulative += own
        station = model.operations[step.operation].station
        machine = quantity * time.machine_min
        yield RouteLine(step.operation, station, step.quantity, own, machine, cumulative, time.estimate_share, share)
