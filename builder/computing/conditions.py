"""What has changed since a study was taken: its head against the operation as it is now.

The head may name `operation`, `station`, `size`, dimensions by their full names and settings by theirs. What the
machine model can count is scaled by it; the rest makes the readings stale: kept for want of better, as an estimate.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

from builder.computing.step_bench import Bench
from builder.errors import TextFault
from builder.model import (
    KINDS,
    Dimensions,
    PlantModel,
    Product,
    Quantity,
    SettingValue,
    Study,
    Values,
    parse_quantity,
    read_settings,
    route_of,
)

_ROUTES = "products by operation"
"""Where the model's memo keeps them."""


def bench_then(bench: Bench, dimensions: Dimensions, names: tuple[str, ...]) -> Bench | None:
    """The bench as it was when the study was taken; None when all that the head states holds today.

    names : full names of the dimensions the operation rests on
    """
    study = bench.model.study_of(bench.name)
    if study is None:
        return None
    values = _values_then(study, bench, dimensions, names)
    settings = _settings_then(study, bench)
    station = bench.model.stations.get(study.head.get("station", ""), bench.station)
    if values is None and settings is None and station is bench.station:
        return None
    kind = KINDS.get(station.kind, bench.kind)
    return replace(
        bench,
        values=values or bench.values,
        settings=settings or bench.settings,
        station=station,
        kind=kind,
    )


def is_stale(bench: Bench) -> bool:
    """Whether the readings are of other work: another operation, a station unknown now or of another kind."""
    study = bench.model.study_of(bench.name)
    if study is None:
        return False
    if study.head.get("operation", bench.name) != bench.name:
        return True
    then = study.head.get("station")
    if then is None:
        return False
    station = bench.model.stations.get(then)
    return station is None or station.kind != bench.station.kind


def _values_then(study: Study, bench: Bench, dimensions: Dimensions, names: tuple[str, ...]) -> Values | None:
    """Dimensions of the size a study was taken in, with those its head states; None when they are today's."""
    now, model, name = bench.values, bench.model, bench.name
    size = study.head.get("size", "")
    typed = _typed_dimensions(study, names)
    candidates = [one.sizes[size] for one in _products(name, model) if size in one.sizes] or [{}]
    for overrides in candidates:
        if not typed and not overrides and size == "":
            return None
        then = dimensions.sized({**overrides, **typed}) if overrides or typed else dimensions.values
        if any(then[one].value != now[one].value for one in names if one in then and one in now):
            return then
    return None


def _products(operation: str, model: PlantModel) -> Sequence[Product]:
    """Products the operation works for: another one's size of the same name is another size. All when there is none."""
    if _ROUTES not in model.memo:
        found: dict[str, list[Product]] = {}
        for name, product in model.products.items():
            for step in route_of(name, model.products, model.operations):
                found.setdefault(step.operation, []).append(product)
        model.memo[_ROUTES] = found
    routes: Mapping[str, Sequence[Product]] = model.memo[_ROUTES]
    return routes.get(operation) or tuple(model.products.values())


def _typed_dimensions(study: Study, names: tuple[str, ...]) -> dict[str, Quantity]:
    found: dict[str, Quantity] = {}
    for key, text in study.head.items():
        if key in names:
            try:
                found[key] = parse_quantity(text, "length")
            except TextFault:
                continue
    return found


def _settings_then(study: Study, bench: Bench) -> Mapping[str, SettingValue] | None:
    typed = {key: text for key, text in study.head.items() if key in bench.kind.settings and key in bench.settings}
    if not typed:
        return None
    read, _ = read_settings(typed, bench.kind.name, bench.model.materials)
    then = {**bench.settings, **read}
    changed = any(_aimed(then[key]) != _aimed(bench.settings[key]) for key in typed)
    return then if changed else None


def _aimed(value: SettingValue) -> object:
    return value.nominal if value.nominal is not None else value.count if value.count is not None else value.words
