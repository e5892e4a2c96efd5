"""An empty study of an operation, to be filled in at the machine: its conditions as they are today, and its steps."""

from __future__ import annotations

from collections.abc import Iterator

from builder.model import EACH_PIECE, Dimensions, PlantModel, Values, find_feature, route_of, settings_of

_HEADER = "step,cycle,reading,rating,note"


def study_form(model: PlantModel, dimensions: Dimensions, name: str, day: str, cycles: int) -> str:
    """The CSV text. Its head states what the machine model reads, so that a later change can be told and scaled.

    day : as it goes into the head; cycles : at least 1
    """
    lines = [f"# {key}: {value}" for key, value in _conditions(model, dimensions, name, day)]
    steps = model.operations[name].steps
    # What is done once a bundle or a bobbin stands in the first cycle alone, to be moved to where it happens.
    rows = [
        f"{step.step},{cycle},,,"
        for cycle in range(1, cycles + 1)
        for step in steps
        if cycle == 1 or step.per in (None, EACH_PIECE)
    ]
    return "\n".join([*lines, _HEADER, *rows]) + "\n"


def _conditions(model: PlantModel, dimensions: Dimensions, name: str, day: str) -> Iterator[tuple[str, str]]:
    operation = model.operations[name]
    size, values = _size(model, dimensions, name)
    yield "operation", name
    yield "station", operation.station
    yield "date", day
    if size:
        yield "size", size
    for key, value in settings_of(model, name).items():
        # What is aimed at or counted sets the machine's pace; a thread or a needle is the work itself.
        if value.nominal is not None or value.count is not None:
            yield key, value.words
    for key in dict.fromkeys(_dimensions(model, values, name)):
        yield key, f"{float(values[key].value):.6g} mm"
    yield "conditions", "machine, observer, how long the operator has done such work, hour of the shift"


def _size(model: PlantModel, dimensions: Dimensions, name: str) -> tuple[str, Values]:
    """The reference size of the first product with sizes that the operation works for, and its dimensions."""
    for product, one in model.products.items():
        if one.sizes and any(stop.operation == name for stop in route_of(product, model.products, model.operations)):
            size, overrides = next(iter(one.sizes.items()))
            return size, dimensions.sized(overrides)
    return "", dimensions.values


def _dimensions(model: PlantModel, values: Values, name: str) -> Iterator[str]:
    """Names of the lengths the operation works on: of features worked, and of the outlines they lie on."""
    for step in model.operations[name].steps:
        kind, names = step.work
        for one in names:
            ref = None if kind == "cut" else find_feature(one, model.homes[name])
            part = one if ref is None else ref.part
            yield from (key for key in (f"{part}.width", f"{part}.height", f"{part}.length") if key in values)
            if ref is not None:
                yield from (key for key in values if key.startswith(f"{part}/{ref.feature}."))
