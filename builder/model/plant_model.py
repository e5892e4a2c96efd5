"""The whole plant as one read-only object: every noun by name, the states between them, and where each was typed."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

from builder.finding import Place
from builder.model.element import Element
from builder.model.font_table import capital_mm
from builder.model.language import Language
from builder.model.load import Entry
from builder.model.machine import KINDS, MachineKind
from builder.model.material import Material
from builder.model.operation import Operation
from builder.model.paper import column_mm
from builder.model.part import Part
from builder.model.plant import Plant
from builder.model.product import Product
from builder.model.station import Station
from builder.model.study import Study
from builder.model.template import Template


@dataclass(frozen=True, slots=True)
class State:
    """A part as it stands after an operation, or a cut piece.

    base   : the part whose file holds its outline and features
    maker  : the operation that makes it, '' for a part nobody makes here
    needs  : names of the part states it is made from
    worked : (base part, feature) made by `maker`
    """

    name: str
    base: str
    maker: str
    needs: tuple[str, ...]
    worked: frozenset[tuple[str, str]]


@dataclass(frozen=True, slots=True)
class FeatureRef:
    """A feature found for a name in a step: in which part's file, and which."""

    part: str
    feature: str


Homes = Mapping[str, tuple[FeatureRef, ...]]
"""Feature names an operation may use, with where each is found."""


@dataclass(frozen=True, slots=True)
class PlantModel:
    """Everything that was read and could be linked. Objects name each other; these mappings find them.

    homes : for each operation, where the feature names it may use lead
    memo  : what is worked out once: settings for `settings_of`, the products each operation works for
    """

    plant: Plant
    stations: Mapping[str, Station]
    materials: Mapping[str, Material]
    elements: Mapping[str, Element]
    parts: Mapping[str, Part]
    operations: Mapping[str, Operation]
    products: Mapping[str, Product]
    studies: Mapping[str, Study]
    states: Mapping[str, State]
    homes: Mapping[str, Homes]
    photos: Mapping[str, Any]
    drawings: Mapping[str, Any]
    entries: Mapping[tuple[str, str], Entry]
    templates: Mapping[str, Template] = field(default_factory=dict)
    languages: Mapping[str, Language] = field(default_factory=dict)
    memo: dict[str, Any] = field(default_factory=dict, compare=False, repr=False)

    def paper_of(self, operation: str) -> str:
        """What the sheet of an operation is printed on: its station's paper, else the plant's."""
        station = self.stations.get(self.operations[operation].station)
        return (station.paper if station is not None else None) or self.plant.paper

    def column_of(self, operation: str) -> float:
        """Width of a column of steps on the sheet of an operation, mm."""
        return column_mm(self.paper_of(operation), self.capital_of(operation))

    def capital_of(self, operation: str) -> float:
        """Capital height that the reading distance of an operation's station asks for, mm; 0 for an unknown station."""
        station = self.stations.get(self.operations[operation].station)
        return capital_mm(float(station.distance.value)) if station is not None else 0.0

    def place(self, kind: str, name: str, *path: str | int, key: bool = False, offset: int = 0) -> Place:
        """Where a value of an object was typed; `key` for its key, `offset` for a character inside it."""
        entry = self.entries.get((kind, name))
        if entry is None:
            return Place("plant.yaml")
        return entry.place(*path, key=key, offset=offset)

    def kind_of(self, operation: str) -> MachineKind | None:
        """The kind of machine an operation is done at, None if its station or kind is unknown."""
        station = self.stations.get(self.operations[operation].station)
        return KINDS.get(station.kind) if station is not None else None

    def study_of(self, operation: str) -> Study | None:
        """The study an operation names in `times:`, as a path or by its name."""
        typed = self.operations[operation].times or ""
        return self.studies.get(typed.rpartition("/")[2].removesuffix(".csv"))

    def material_of(self, part: str) -> str | None:
        """The material of a part (a state stands for its base); that of what it is formed from by folding."""
        seen: set[str] = set()
        while part in self.states and part not in seen:
            seen.add(part)
            base = self.parts[self.states[part].base]
            if base.material is not None:
                return base.material
            part = base.formed_from or ""
        return None

    def material_under(self, layer: str) -> tuple[str, Material] | None:
        """Name and facts of the material of a layer: of a part, or the tape itself. None when nobody says."""
        name = self.material_of(layer) if layer in self.states else layer
        material = self.materials.get(name) if name is not None else None
        return (name, material) if name is not None and material is not None else None

    def base_of(self, name: str) -> Part | None:
        """The part whose file holds the outline of a part state."""
        state = self.states.get(name)
        return self.parts.get(state.base) if state else None
