"""Named dimensions of the whole plant, their values, and what a size changes.

Full names are `part.dimension` and `part/feature.dimension`; inside its own part a name may be short. A size
overrides dimensions by full name; overriding a derived one cuts its expression. Only what rests on an overridden
dimension is computed again, so sizes that agree share their values.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterator, Mapping
from dataclasses import dataclass, field
from graphlib import CycleError, TopologicalSorter

from builder.errors import TextFault
from builder.model.expression import Expression
from builder.model.feature import Dimension, Feature, Seam, Strip
from builder.model.material import Material
from builder.model.near_names import near
from builder.model.outline import ALL
from builder.model.part import Part
from builder.model.quantity import Quantity
from builder.model.shaping import Laid, shaping_definitions

Values = Mapping[str, Quantity]


@dataclass(frozen=True, slots=True)
class Definition:
    """A dimension as typed: a length, an expression, or the `same` as another one (a strip is as wide as its part)."""

    part: str
    short: str
    typed: Dimension | None
    same: str = ""


@dataclass(frozen=True, slots=True)
class DimensionFault:
    """A dimension without a value: its part, short name, and why. `ring` marks dimensions that rest on each other."""

    part: str
    short: str
    message: str
    offset: int
    remedy: str
    about: tuple[str, ...]
    ring: bool = False


@dataclass(slots=True)
class Dimensions:
    """All definitions, their values as typed, and the base names each rests on (`support`)."""

    definitions: dict[str, Definition]
    values: dict[str, Quantity] = field(default_factory=dict)
    support: dict[str, frozenset[str]] = field(default_factory=dict)
    faults: list[DimensionFault] = field(default_factory=list)
    _order: list[str] = field(default_factory=list)
    _sized: dict[tuple[tuple[str, str], ...], Values] = field(default_factory=dict)

    def sized(self, overrides: Mapping[str, Quantity]) -> Values:
        """Values of all dimensions in a size. Computed once for equal overrides."""
        if not overrides:
            return self.values
        key = tuple(sorted((name, str(quantity.value)) for name, quantity in overrides.items()))
        if key not in self._sized:
            self._sized[key] = self._recomputed(overrides)
        return self._sized[key]

    def trial(self, name: str, changed: Mapping[str, Quantity]) -> Quantity:
        """One dimension's value if others had changed ones; only what it rests on is computed, nothing is kept.

        Raises KeyError for a dimension without a value, TextFault where the changed values can't be computed with.
        """
        known = dict(changed)

        def value(one: str) -> Quantity:
            if one not in known:
                known[one] = self._tried(one, value)
            return known[one]

        return value(name)

    def _tried(self, name: str, value: Callable[[str], Quantity]) -> Quantity:
        here, typed = self.definitions[name], self.values[name]  # what rests on itself has no value, so no ring here
        if here.same:
            return value(here.same)
        if not isinstance(here.typed, Expression):
            return typed
        return here.typed.evaluate(
            lambda text: value(find_dimension(text, here.part, self.definitions) or text), "length"
        )

    def rests_on(self, name: str) -> list[str]:
        """Full names of the dimensions one is computed from directly."""
        return _uses(name, self.definitions)

    def _recomputed(self, overrides: Mapping[str, Quantity]) -> Values:
        values = dict(self.values)
        values.update((name, quantity) for name, quantity in overrides.items() if name in self.definitions)
        touched = set(overrides)
        for name in self._order:
            if name in touched or name not in self.values:
                continue
            uses = _uses(name, self.definitions)
            if touched.intersection(uses):
                values[name] = _value(name, self.definitions, values)
                touched.add(name)
        return values


def plant_dimensions(
    parts: Mapping[str, Part], materials: Mapping[str, Material], unreadable: Collection[str] = ()
) -> Dimensions:
    """All named dimensions of the parts, computed; what can't be is listed in `faults`.

    unreadable : parts known by name only; what rests on their dimensions has no value and no fault of its own
    """
    definitions = {full: one for name, part in parts.items() for full, one in _defined(name, part, materials)}
    dimensions = Dimensions(definitions)
    echoes = _report_unknown(dimensions, unreadable)
    dimensions._order.extend(_ordered(dimensions))
    bad = {f"{one.part}/{one.short}" if "." in one.short else f"{one.part}.{one.short}" for one in dimensions.faults}
    bad |= echoes
    for name in dimensions._order:
        if name in bad or bad.intersection(_uses(name, definitions)):
            bad.add(name)  # follows from a fault that is already reported
            continue
        _compute(name, dimensions, bad)
    return dimensions


def full_name(part: str, short: str) -> str:
    """`width` of back-panel is `back-panel.width`; `handle-box.left` of it is `back-panel/handle-box.left`."""
    return f"{part}/{short}" if "." in short else f"{part}.{short}"


def find_dimension(text: str, part: str, definitions: Mapping[str, object]) -> str | None:
    """The full name of a dimension as typed in a file of `part`, or None."""
    for name in (full_name(part, text), text):
        if name in definitions:
            return name
    return None


def _defined(name: str, part: Part, materials: Mapping[str, Material]) -> Iterator[tuple[str, Definition]]:
    for short, typed in part.own_dimensions():
        yield full_name(name, short), Definition(name, short, typed)
    if part.outline is not None and part.outline.strip is not None and part.material in materials:
        width = materials[part.material].width if part.material else None
        if width is not None:
            yield f"{name}.width", Definition(name, "width", width)
    for feature_name, feature in part.features.items():
        followed = seam_allowance(part, feature)
        if followed is not None:
            yield (
                f"{name}/{feature_name}.inset",
                Definition(name, f"{feature_name}.inset", None, full_name(name, followed)),
            )
        for edge, typed in shaping_definitions(feature_name, feature).items():
            yield f"{name}/{feature_name}.{edge}", Definition(name, f"{feature_name}.{edge}", typed)
        laid = _width(name, feature_name, feature, materials) if isinstance(feature, Laid) else None
        if laid is not None:
            yield f"{name}/{feature_name}.width", laid
        if isinstance(feature, Strip):
            for edge in ("length", "width", "height"):
                yield (
                    f"{name}/{feature_name}.{edge}",
                    Definition(name, f"{feature_name}.{edge}", None, f"{feature.strip}.{edge}"),
                )


def seam_allowance(part: Part, feature: Feature) -> str | None:
    """The allowance a seam without `inset` lies inside the cut edge by, where all its edges have the same one."""
    if not isinstance(feature, Seam) or part.outline is None or feature.seam == ("line",):
        return None
    if feature.inset is not None or feature.on is not None or feature.binding is not None:
        return None
    if feature.seam == ("all",):
        return "allowance" if set(part.outline.allowance) == {ALL} else None
    found = {part.outline.allowance_of(edge) for edge in feature.seam}
    return found.pop() if len(found) == 1 else None


def _width(part: str, name: str, feature: Laid, materials: Mapping[str, Material]) -> Definition | None:
    """The width of what is laid along a line: that of its material, else of its part; None where nobody typed one."""
    short = f"{name}.width"
    if feature.material not in materials:
        return Definition(part, short, None, f"{feature.material}.width")
    width = materials[feature.material].width
    return Definition(part, short, width) if width is not None else None


def _uses(name: str, definitions: Mapping[str, Definition]) -> list[str]:
    """Full names a definition rests on directly; names that don't exist are left out."""
    one = definitions[name]
    if one.same:
        return [one.same] if one.same in definitions else []
    if not isinstance(one.typed, Expression):
        return []
    found = (find_dimension(used.text, one.part, definitions) for used in one.typed.names)
    return [used for used in found if used is not None]


def _report_unknown(dimensions: Dimensions, unreadable: Collection[str]) -> set[str]:
    """Faults for names that lead nowhere. Returns the dimensions that rest on an unreadable part."""
    echoes: set[str] = set()
    for full, one in dimensions.definitions.items():
        if not isinstance(one.typed, Expression):
            continue
        for used in one.typed.names:
            if find_dimension(used.text, one.part, dimensions.definitions) is None:
                if used.text.split("/")[0].split(".")[0] in unreadable:
                    echoes.add(full)
                    break
                shorts = [other.short for other in dimensions.definitions.values() if other.part == one.part]
                close = near(used.text, (*shorts, *dimensions.definitions))
                hint = f"Did you mean `{close[0]}`?" if close else f"Dimensions here: {', '.join(sorted(shorts))}."
                other = used.text.split("/")[0].split(".")[0]
                about = (f"part:{one.part}", f"dimension:{used.text}", *(f"dimension:{name}" for name in close))
                about += (f"part:{other}",)
                dimensions.faults.append(
                    DimensionFault(
                        one.part, one.short, f"no dimension is called `{used.text}`", used.offset, hint, about
                    )
                )
                break
    return echoes


def _ordered(dimensions: Dimensions) -> list[str]:
    """Names so that each comes after those it rests on; rings are reported and left out."""
    graph = {name: _uses(name, dimensions.definitions) for name in dimensions.definitions}
    while True:
        try:
            return [name for name in TopologicalSorter(graph).static_order() if name in graph]
        except CycleError as error:
            ring = list(dict.fromkeys(reversed(error.args[1])))
            first = dimensions.definitions[min(ring)]
            message = f"these dimensions rest on each other: {' → '.join((*ring, ring[0]))}"
            about = tuple(f"dimension:{name}" for name in ring)
            dimensions.faults.append(DimensionFault(first.part, first.short, message, 0, "", about, ring=True))
            for name in ring:
                graph.pop(name)


def _compute(name: str, dimensions: Dimensions, bad: set[str]) -> None:
    one = dimensions.definitions[name]
    if one.same and one.same not in dimensions.values:
        bad.add(name)  # a strip whose part has no such dimension
        return
    try:
        dimensions.values[name] = _value(name, dimensions.definitions, dimensions.values)
    except TextFault as error:
        about = (f"part:{one.part}", f"dimension:{name}")
        dimensions.faults.append(DimensionFault(one.part, one.short, error.message, error.offset, error.remedy, about))
        bad.add(name)
        return
    uses = _uses(name, dimensions.definitions)
    inherited = [dimensions.support[used] for used in uses if used in dimensions.support]
    dimensions.support[name] = frozenset().union(*inherited) if uses else frozenset((name,))


def _value(name: str, definitions: Mapping[str, Definition], values: Values) -> Quantity:
    one = definitions[name]
    if one.same:
        return values[one.same]
    if isinstance(one.typed, Expression):
        return one.typed.evaluate(lambda text: values[find_dimension(text, one.part, definitions) or text], "length")
    assert one.typed is not None
    return one.typed
