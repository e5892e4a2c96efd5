"""Shapes of parts: outline and features in millimetres, from typed dimensions and the values of one size.

The only file of this room that knows parts and features; the mathematics lies beside it.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

from builder.geometry.features import feature_shape
from builder.geometry.outline import Outline
from builder.geometry.outline_shape import Cut, cut_of
from builder.geometry.places import refuse_from
from builder.geometry.placing import Placing
from builder.geometry.segment import Bounds
from builder.geometry.shape import FeatureShape, PartShape, PlacedPart
from builder.geometry.vector import GeometryFault, Point
from builder.model import (
    At,
    Component,
    Expression,
    Laid,
    Part,
    Quantity,
    State,
    Values,
    find_dimension,
)
from builder.reading import DrawingLines


@dataclass(frozen=True, slots=True)
class ShapeFault:
    """A part or feature that can't be built in some size; `path` leads to it in the part's file."""

    part: str
    path: tuple[str | int, ...]
    message: str


@dataclass(slots=True)
class ShapeBook:
    """All shapes of a plant. Parts whose dimensions agree between sizes are built once.

    drawings : what is drawn of the parts whose outline is a drawing, those left out that can't be used
    kept     : what other files of this room work out once, by a key that begins with its name
    """

    parts: Mapping[str, Part]
    states: Mapping[str, State]
    definitions: Mapping[str, object]
    drawings: Mapping[str, DrawingLines] = field(default_factory=dict)
    faults: dict[tuple[str, tuple[str | int, ...]], ShapeFault] = field(default_factory=dict)
    kept: dict[tuple[object, ...], Any] = field(default_factory=dict)
    _names: dict[str, tuple[str, ...]] = field(default_factory=dict)
    _all_names: dict[str, tuple[str, ...]] = field(default_factory=dict)
    _of_values: dict[tuple[str, int], tuple[Values, PartShape | None]] = field(default_factory=dict)
    _built: dict[tuple[str, tuple[str, ...]], PartShape | None] = field(default_factory=dict)

    def __post_init__(self) -> None:
        grouped: dict[str, list[str]] = {}
        for name in self.definitions:
            grouped.setdefault(name.split("/")[0].split(".")[0], []).append(name)
        self._names = {part: tuple(names) for part, names in grouped.items()}

    def shape(self, name: str, values: Values) -> PartShape | None:
        """The shape of a part (a state stands for its base) with these dimension values, None if it can't be built."""
        return self._shape(name, values, frozenset())

    def dimension_names(self, name: str) -> tuple[str, ...]:
        """Full names of all dimensions the shape of a part may depend on, its components' and strips' included."""
        base = self._base(name)
        if base is None:
            return ()
        if base not in self._all_names:
            self._all_names[base] = tuple(sorted(self._dimension_names(base, frozenset())))
        return self._all_names[base]

    def _base(self, name: str) -> str | None:
        state = self.states.get(name)
        return state.base if state is not None else None

    def _dimension_names(self, name: str, inside: frozenset[str]) -> set[str]:
        base = self._base(name)
        if base is None or base in inside:
            return set()
        names = set(self._names.get(base, ()))
        for inner in _inner_parts(self.parts[base]):
            names |= self._dimension_names(inner, inside | {base})
        return names

    def _shape(self, name: str, values: Values, inside: frozenset[str]) -> PartShape | None:
        base = self._base(name)
        if base is None or base in inside:
            return None
        known = self._of_values.get((base, id(values)))
        if known is not None and known[0] is values:
            return known[1]
        key = (base, tuple(str(values[one].value) if one in values else "" for one in self.dimension_names(base)))
        if key not in self._built:
            self._built[key] = _Builder(self, base, values, inside | {base}).build()
        self._of_values[base, id(values)] = values, self._built[key]
        return self._built[key]


def _inner_parts(part: Part) -> tuple[str, ...]:
    strips = tuple(name for one in part.features.values() if (name := getattr(one, "strip", None)) is not None)
    laid = tuple(one.material for one in part.features.values() if isinstance(one, Laid))
    return (*(component.part for component in part.from_), *strips, *laid)


@dataclass(slots=True)
class _Builder:
    """Builds one part. `mm` reads a typed length; faults go to the book."""

    book: ShapeBook
    name: str
    values: Values
    inside: frozenset[str]
    seam_line: Outline | None = None

    def build(self) -> PartShape | None:
        part = self.book.parts[self.name]
        try:
            components = tuple(self.component(one) for one in part.from_)
            cut = self.cut(part, components)
        except (GeometryFault, KeyError) as error:
            self.fault(("outline",) if part.outline else ("title",), error)
            return None
        outline, self.seam_line = cut.edge, cut.seam_line
        try:
            placed = tuple(self.moved(one, outline, spec) for one, spec in zip(components, part.from_, strict=True))
        except GeometryFault as error:
            self.fault(("from",), error)
            return None
        features: dict[str, FeatureShape] = {}
        for name, feature in part.features.items():
            try:
                features[name] = feature_shape(name, feature, outline, features, self)
            except (GeometryFault, KeyError) as error:
                self.fault(("features", name), error)
        return PartShape(
            self.name, part, outline, features, placed, cut.seam_line, cut.typed_seam, cut.centre_line, cut.drawn
        )

    def drawn(self) -> DrawingLines:
        """What is drawn of the part."""
        return self.book.drawings[self.name]

    def component_shape(self, name: str) -> PartShape | None:
        """The shape of another part, for strips."""
        return self.book._shape(name, self.values, self.inside)

    def fault(self, path: tuple[str | int, ...], error: Exception) -> None:
        # A KeyError is a dimension without a value, or a part that can't be built: what it rests on is reported.
        if isinstance(error, GeometryFault):
            self.book.faults.setdefault((self.name, path), ShapeFault(self.name, path, str(error)))

    def mm(self, typed: Quantity | Expression | None, default: float = 0.0, short: str = "") -> float:
        """A typed length in mm; by its name when it has one, so that a size's override counts."""
        if short:
            full = find_dimension(short, self.name, self.values)
            if full is not None:
                return float(self.values[full].value)
        if typed is None:
            return default
        if isinstance(typed, Quantity):
            return float(typed.value)
        raise KeyError(short)

    def cut(self, part: Part, components: tuple[PlacedPart, ...]) -> Cut:
        if part.outline is not None:
            return cut_of(part.outline, self)
        if not components:
            raise GeometryFault(f"{self.name} has neither an outline nor parts it is made from")
        return Cut(components[0].placing.outline(components[0].shape.outline))

    def component(self, spec: Component) -> PlacedPart:
        """A component turned and flipped, its lower left corner at the origin."""
        shape = self.book._shape(spec.part, self.values, self.inside)
        if shape is None:
            raise KeyError(spec.part)
        turn = float(spec.turn.value) if spec.turn is not None else 0.0
        placing = Placing(0.0, 0.0, turn, spec.side == "wrong")
        left, bottom, _, _ = placing.outline(shape.outline).bounds()
        return PlacedPart(spec.part, shape, Placing(-left, -bottom, turn, spec.side == "wrong"), spec.side, spec.layer)

    def moved(self, placed: PlacedPart, outline: Outline, spec: Component) -> PlacedPart:
        box = placed.placing.outline(placed.shape.outline).bounds()
        x, y = self.corner(spec.at, outline.bounds(), (box[2] - box[0], box[3] - box[1]), spec.part)
        placing = placed.placing
        at = Placing(placing.x + x, placing.y + y, placing.turn_deg, placing.flipped)
        return PlacedPart(placed.name, placed.shape, at, placed.side, placed.layer)

    def corner(self, at: At | None, box: Bounds, size: tuple[float, float], owner: str) -> Point:
        """Lower left corner of something of a size, placed in a box; (left, bottom) of the box without `at`."""
        if at is None:
            return box[0], box[1]
        refuse_from(at, owner)
        left, bottom, right, top = box
        x, y = left, bottom
        if at.left is not None:
            x = left + self.mm(at.left, short=f"{owner}.left")
        elif at.right is not None:
            x = right - self.mm(at.right, short=f"{owner}.right") - size[0]
        elif at.centre is not None:
            x = (left + right - size[0]) / 2 + self.mm(at.centre, short=f"{owner}.centre")
        if at.bottom is not None:
            y = bottom + self.mm(at.bottom, short=f"{owner}.bottom")
        elif at.top is not None:
            y = top - self.mm(at.top, short=f"{owner}.top") - size[1]
        elif at.middle is not None:
            y = (bottom + top - size[1]) / 2 + self.mm(at.middle, short=f"{owner}.middle")
        return x, y
