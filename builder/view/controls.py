"""The parts of a sheet that come from the station and the operation's tables: cautions, settings, measures, faults."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping
from dataclasses import replace
from typing import Literal

from builder.model import (
    DEFER,
    HAZARDS,
    KINDS,
    PROTECTIONS,
    Operation,
    PlantModel,
    Quantity,
    SettingValue,
    Station,
    Step,
    Tolerance,
    Values,
    named,
    operation_dimension,
    phrase,
    say,
    settings_of,
    show_quantity,
)
from builder.view.figures import Studio, exact
from builder.view.plan_words import plan_words
from builder.view.sheet import Caution, FaultLine, Measure, Protection, Setting
from builder.view.template_use import gauge_words
from builder.view.words import dimension_words, tolerance_pair


def cautions_of(station: Station) -> Iterator[Caution]:
    """Hazards that come with the station's kind, then those typed, each once; the worst signal word first."""
    order = {"DANGER": 0, "WARNING": 1, "CAUTION": 2}
    names = dict.fromkeys((*KINDS[station.kind].hazards, *station.hazards))
    hazards = [HAZARDS[name] for name in names if name in HAZARDS]
    for one in sorted(hazards, key=lambda hazard: order[hazard.signal]):
        yield Caution(say(one.name), one.sign, say(one.signal), say(one.text))


POWER_OFF = phrase("Power off first.")
"""Before the remedy of a fault; what it means in this plant stands once on the sheet, among the notices."""

_SIGNALS = ("DANGER", "WARNING", "CAUTION")


def own_cautions(operation: Operation, model: PlantModel) -> Iterator[Caution]:
    """Cautions an operation types itself, then those of its materials that begin with a signal word."""
    yield from (own_caution(text) for text in operation.cautions)
    yield from (own_caution(text) for text in _material_words(operation, model) if _signalled(text))


def _signalled(text: str) -> bool:
    """Whether a text in own words begins with a signal word: it says what can hurt, not what spoils the goods."""
    return text.partition(":")[0] in _SIGNALS


def _material_words(operation: Operation, model: PlantModel) -> dict[str, None]:
    """What the materials of an operation warn of, each once."""
    parts = (*operation.makes, *operation.needs)
    found = [model.materials.get(part) or model.materials.get(model.material_of(part) or "") for part in parts]
    return dict.fromkeys(text for one in found if one is not None for text in one.cautions)


def own_caution(text: str) -> Caution:
    """A typed caution with the general sign; CAUTION unless it begins with a signal word, `WARNING: …`."""
    signal, _, words = text.partition(":")
    if signal not in _SIGNALS:
        signal, words = "CAUTION", text
    return Caution(words.strip(), "W001", say(signal), words.strip())


def step_cautions(step: Step, operation: Operation, model: PlantModel) -> Iterator[Caution]:
    """What a step warns of: the lock-out first where its power is off, then its own, by hazard name or in words."""
    if step.power == "off":
        yield Caution(say("power off"), "M021", say("WARNING"), say(model.plant.lock_out))
    known = {caution.hazard: caution for caution in cautions_of(model.stations[operation.station])}
    for text in step.cautions:
        yield known.get(say(text)) or own_caution(text)


def protection_of(station: Station) -> Iterator[Protection]:
    """What to wear and what must be in place, in the order typed."""
    for name in station.protection:
        if name in PROTECTIONS:
            one = PROTECTIONS[name]
            yield Protection(say(one.name), one.sign, say(one.text))


def notices_of(operation: Operation, station: Station, model: PlantModel) -> Iterator[str]:
    """Cautions of the materials in words, what power off means here, and the sentence that defers to the manual."""
    yield from (text for text in _material_words(operation, model) if not _signalled(text))
    if any(fault.power == "off" for fault in operation.faults):
        yield f"{say(POWER_OFF)} {say(model.plant.lock_out)}"
    if any(True for _ in cautions_of(station)):
        yield say(DEFER)


def settings_shown(operation: str, model: PlantModel, coloured: Collection[str] = ()) -> Iterator[Setting]:
    """Settings as they are set on the machine, in the order typed.

    coloured : materials that change with the colour, which the colours table names
    """
    station = model.stations[model.operations[operation].station]
    for name, value in settings_of(model, operation).items():
        limit = station.settings.get(name)
        shown, other = (say("see Colours"), "") if value.words in coloured else setting_words(value, model)
        set_at = limit.set_at if limit is not None else ""
        verify = proved_by(limit.verify, limit.how) if limit is not None else ""
        yield Setting(say(name), setting_fact(value), shown, other, set_at, verify)


def proved_by(by: str, how: str | None) -> str:
    """How a setting is proved, in the station's own words or those of its kind of proof."""
    words = {
        "value": say("read the value"),
        "gauge": say("measure with a gauge"),
        "sample seam": say("sew a sample seam"),
    }
    return how or words[by]


def setting_words(value: SettingValue, model: PlantModel) -> tuple[str, str]:
    """A setting as (value, other unit)."""
    first = model.plant.units
    if isinstance(value.value, Tolerance):
        return tolerance_pair(value.value, first)
    if isinstance(value.value, Quantity):
        whole, _, other = show_quantity(value.value, first).partition(" (")
        return whole, other.removesuffix(")")
    if value.kind.sort == "thread" and value.words in model.materials:
        return model.materials[value.words].title, ""
    return named(value.words), ""


def setting_fact(value: SettingValue) -> str:
    """A setting as a controlled fact."""
    if isinstance(value.value, Quantity):
        return exact(value.value)
    if isinstance(value.value, Tolerance):
        return tolerance_fact(value.value)
    return str(value.count) if value.count is not None else value.words


def tolerance_fact(tolerance: Tolerance) -> str:
    """A tolerance as a controlled fact: exact limits in base units, form and unit typed."""
    nominal = tolerance.nominal.value if tolerance.nominal is not None else "-"
    return f"{tolerance.form} {nominal} {tolerance.low} {tolerance.high} {tolerance.dimension} in {tolerance.unit}"


def measures_of(
    operation: Operation, studio: Studio, sizes: Mapping[str, Values]
) -> dict[str, tuple[Measure, str | None, Tolerance]]:
    """By tolerance name: the measure as shown, its dimension's full name, and the tolerance around its value.

    sizes : values by size; a measure that differs between them is shown for each, with the size before it
    """
    found: dict[str, tuple[Measure, str | None, Tolerance]] = {}
    for name, spec in operation.tolerances.items():
        full = None
        if spec.of is not None:
            full = operation_dimension(operation, spec.of, studio.model.states, studio.dimensions.definitions)
        tolerance, fact = spec.is_, tolerance_fact(spec.is_)
        what = spec.what or named(name)
        if full is not None:
            definition = studio.dimensions.definitions[full]
            what = spec.what or dimension_words(definition.short, studio.model.parts[definition.part])
            if tolerance.form == "band":
                tolerance = _with_nominal(tolerance, studio.values[full])
                fact = f"{full} {fact}" if full in studio.varying else f"{full} {tolerance_fact(tolerance)}"
        value, other = tolerance_pair(tolerance, studio.model.plant.units)
        by_size: tuple[tuple[str, str, str], ...] = ()
        if full in studio.varying and spec.is_.form == "band":
            by_size = tuple(_by_size(spec.is_, full, sizes, studio.model.plant.units))
            value = ", ".join(f"{size} {one}" for size, one, _ in by_size)
            other = ", ".join(f"{size} {two}" for size, _, two in by_size if two)
        plan = plan_words(spec.every) if spec.every is not None else ""
        found[name] = (
            Measure(name, what, fact, gauge_words(spec.with_ or "", studio.model), plan, value, other, by_size),
            full,
            tolerance,
        )
    return found


def _by_size(band: Tolerance, full: str, sizes: Mapping[str, Values], first: str) -> Iterator[tuple[str, str, str]]:
    """Each size with the band around its own value, in both units."""
    for size, values in sizes.items():
        yield size, *tolerance_pair(_with_nominal(band, values[full]), first)


def _with_nominal(band: Tolerance, value: Quantity) -> Tolerance:
    """A band put around the part's own value, worded as an engineer would type it: `276 mm ± 1`."""
    nominal = Quantity.of(value.value, value.dimension, band.unit)
    metric: Literal["mm", "in"] = "in" if band.unit in ("in", "ft", "yd") else "mm"
    words = f"{show_quantity(nominal, metric, both=False)} {band.text.removesuffix(band.unit).rstrip()}"
    return replace(band.around(nominal), text=words)


def faults_of(operation: Operation) -> Iterator[FaultLine]:
    """Faults, the critical ones first."""
    order = {"critical": 0, "major": 1, "minor": 2}
    for one in sorted(operation.faults, key=lambda fault: order[fault.class_]):
        yield FaultLine(
            one.sign,
            say(one.class_),
            one.cause,
            one.do or "",
            one.stop or "",
            say(POWER_OFF) if one.power == "off" else "",
        )
