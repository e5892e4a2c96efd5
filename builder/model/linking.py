"""Names to objects: one model of the plant, with a finding for each name that leads nowhere."""

from __future__ import annotations

from dataclasses import dataclass
from types import MappingProxyType
from typing import Any

from builder.finding import Finding
from builder.model.faults import fault
from builder.model.load import Entry, Loaded, load
from builder.model.near_names import near
from builder.model.plant_model import PlantModel
from builder.model.references import Reference, references
from builder.model.settings import setting_findings
from builder.model.sizes import DimensionFault, Dimensions, plant_dimensions
from builder.model.states import part_states
from builder.model.study import Study
from builder.model.study_read import read_study
from builder.model.unreadable import without_unreadable
from builder.reading import Source


@dataclass(frozen=True, slots=True)
class Linked:
    """A model with its dimensions, what was found while linking, and the objects left out because of a fault."""

    model: PlantModel
    dimensions: Dimensions
    findings: tuple[Finding, ...]
    unusable: frozenset[tuple[str, str]]


def link(source: Source) -> Linked | list[Finding]:
    """The linked model of a plant folder, or only findings when there is no plant file to build on."""
    loaded = load(source)
    findings = list(loaded.findings)
    studies = {one.name: one for table in source.tables if (one := read_study(table, findings)) is not None}
    if loaded.plant is None:
        return findings
    model = _model(loaded, loaded.plant, studies, source)
    known = _known_names(loaded, model, source)
    for reference in references(model):
        if loaded.blind and "part" in reference.kinds:
            continue  # it may be made by the operation nobody can read
        if (finding := _check(reference, known, model)) is not None:
            findings.append(finding)
    for name in model.operations:
        findings.extend(setting_findings(model, name, known.get("material", set())))
    unreadable = frozenset(key for key in loaded.known if key not in loaded.entries)
    dimensions = plant_dimensions(model.parts, model.materials, {name for kind, name in unreadable if kind == "part"})
    findings.extend(_dimension_finding(one, model) for one in dimensions.faults)
    if unreadable:
        model, left_out = without_unreadable(model, unreadable)
        unreadable |= left_out
    return Linked(model, dimensions, tuple(findings), unreadable)


def _model(loaded: Loaded, plant: Entry, studies: dict[str, Study], source: Source) -> PlantModel:
    def of(kind: str) -> Any:
        return MappingProxyType({name: entry.value for (one, name), entry in loaded.entries.items() if one == kind})

    parts, operations = of("part"), of("operation")
    states, homes = part_states(parts, operations)
    return PlantModel(
        plant=plant.value,
        stations=of("station"),
        materials=of("material"),
        elements=of("element"),
        parts=parts,
        operations=operations,
        products=of("product"),
        studies=MappingProxyType(studies),
        states=MappingProxyType(states),
        homes=MappingProxyType(homes),
        photos=MappingProxyType(dict(source.photos)),
        drawings=MappingProxyType(dict(source.drawings)),
        templates=of("template"),
        languages=of("language"),
        entries=MappingProxyType({**loaded.entries, ("plant", "plant"): plant}),
    )


def _known_names(loaded: Loaded, model: PlantModel, source: Source) -> dict[str, set[str]]:
    """Names by kind, those of files that could not be read included: nothing that names them complains."""
    known: dict[str, set[str]] = {kind: set() for kind in ("study", "photo", "drawing", "gauge")}
    for kind, name in loaded.known:
        known.setdefault(kind, set()).add(name)
    made = {name for operation in model.operations.values() for name in operation.makes}
    known["part"] = known.get("part", set()) | made
    for table in source.tables:  # named by its path or by its name alone
        known["study"] |= {table.file, table.file.rpartition("/")[2].removesuffix(".csv")}
    known["photo"] |= set(source.photos)
    known["drawing"] |= set(source.drawings)
    known["gauge"] |= set(model.plant.gauges)
    return known


def _check(reference: Reference, known: dict[str, set[str]], model: PlantModel) -> Finding | None:
    names: set[str] = set()
    for kind in reference.kinds:
        names |= known.get(kind, set())
    names |= set(reference.local)
    if reference.name in names:
        return None
    close = near(reference.name, sorted(names))
    what = " or ".join(reference.kinds or (reference.what,))
    message = f"no {what} is called `{reference.name}`"
    remedy = f"Did you mean `{close[0]}`? Correct the name, or add the {what}." if close else ""
    about = (
        f"{reference.owner[0]}:{reference.owner[1]}",
        *(f"{kind}:{reference.name}" for kind in reference.kinds or (reference.what,)),
        *(f"{kind}:{name}" for name in close for kind in reference.kinds or (reference.what,)),
    )
    place = model.place(*reference.owner, *reference.path, key=reference.key, offset=reference.offset)
    return fault("name-unknown", place, message, about, remedy)


def _dimension_finding(one: DimensionFault, model: PlantModel) -> Finding:
    place = model.place("part", one.part, *_dimension_path(one, model), offset=one.offset)
    slug = "expression-ring" if one.ring else "expression-unreadable"
    return fault(slug, place, one.message, (f"part:{one.part}", *one.about), one.remedy)


def _dimension_path(one: DimensionFault, model: PlantModel) -> tuple[str | int, ...]:
    """The path in the part's file to a dimension's value, from its short name."""
    part = model.parts[one.part]
    owner, _, dimension = one.short.rpartition(".")
    if not owner and one.short in part.dimensions:
        return ("dimensions", one.short)
    inside = part.outline.dimension_path(owner, dimension) if part.outline is not None else None
    if inside is not None:
        return ("outline", *inside)
    if ".point-" in owner:
        feature, _, number = owner.partition(".point-")
        return ("features", feature, "points", int(number) - 1, dimension)
    if owner in part.features:
        at = part.features[owner].at
        key = dimension.replace("-", " ")
        if at is not None and getattr(at, dimension, None) is not None:
            return ("features", owner, "at", dimension)
        return ("features", owner, key)
    index = next((i for i, component in enumerate(part.from_) if component.part == owner), 0)
    return ("from", index, "at", dimension)
