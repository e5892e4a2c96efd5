"""What a rule is: a small function with a slug, a reason and a remedy, and an example of each kind."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from datetime import date

from builder.checking.walk import FeatureName, Worker, distinct_shapes
from builder.finding import Place, Severity
from builder.geometry import PartShape, ShapeBook
from builder.model import (
    Dimensions,
    Feature,
    Homes,
    PlantModel,
    Results,
    RouteStep,
    SettingValue,
    Step,
    Values,
    find_feature,
    operation_dimension,
    ordinary,
    route_of,
    settings_of,
)

PathStep = str | int


@dataclass(frozen=True, slots=True)
class Problem:
    """What a rule found: the object it is in and the path to the value there.

    owner   : (kind, name) of the object; path leads to the value inside it, or to its key with `key`
    offset  : character inside the value
    about   : further names it concerns, as `kind:name`
    remedy  : a sharper remedy than the rule's own
    spot    : where it stands, for what is no object's value: a row of a study
    """

    owner: tuple[str, str]
    path: tuple[PathStep, ...]
    message: str
    about: tuple[str, ...] = ()
    remedy: str = ""
    key: bool = False
    offset: int = 0
    severity: Severity | None = None
    spot: Place | None = None


@dataclass(frozen=True, slots=True)
class Worked:
    """A feature a step works on: `path` leads to its name in the operation's file, `part` is whose file it is in."""

    step: Step
    key: str
    path: tuple[PathStep, ...]
    part: str
    name: str
    feature: Feature


@dataclass(frozen=True, slots=True)
class Subject:
    """What rules look at: the linked plant, its dimensions and shapes; `results` only for rules that ask for it.

    unread : objects nobody could read, and what rests on them; whether a thing is used can't be said while there are
    photos : width and height in pixels of each photo that steps show and that can be used

    What several rules need is worked out once and kept: settings, where feature names lead, sizes, shapes, routes.
    """

    model: PlantModel
    dimensions: Dimensions
    book: ShapeBook
    usable: frozenset[str]
    today: date
    results: Results | None = None
    unread: frozenset[tuple[str, str]] = frozenset()
    photos: Mapping[str, tuple[int, int]] = field(default_factory=dict)
    _worked: dict[str, tuple[Worked, ...]] = field(default_factory=dict)
    _sizes: list[tuple[str, Values]] = field(default_factory=list)
    _workers: dict[FeatureName, Worker] = field(default_factory=dict)
    _routes: dict[str, tuple[RouteStep, ...]] = field(default_factory=dict)
    _shapes: dict[str, list[tuple[str, PartShape]]] = field(default_factory=dict)

    def settings(self, operation: str) -> Mapping[str, SettingValue]:
        """The readable settings of an operation; {} when its station or kind is unknown."""
        return settings_of(self.model, operation)

    def homes(self, operation: str) -> Homes:
        """Where each feature name an operation may use leads."""
        return self.model.homes[operation]

    def worked(self, operation: str) -> Sequence[Worked]:
        """Features the steps of an operation work on, in order; parts cut out and unknown names are left out."""
        if operation not in self._worked:
            self._worked[operation] = tuple(self._works(operation))
        return self._worked[operation]

    def _works(self, operation: str) -> Iterator[Worked]:
        homes = self.homes(operation)
        for number, step in enumerate(self.model.operations[operation].steps):
            key, names = step.work
            for index, name in enumerate(names):
                ref = find_feature(name, homes)
                if ref is not None:
                    feature = self.model.parts[ref.part].features[ref.feature]
                    yield Worked(step, key, ("steps", number, key, index), ref.part, ref.feature, feature)

    def sizes(self) -> Sequence[tuple[str, Values]]:
        """('', values as typed), then each size of each product with its values; equal ones once."""
        if not self._sizes:
            seen: dict[int, str] = {id(self.dimensions.values): ""}
            self._sizes.append(("", self.dimensions.values))
            for product in self.model.products.values():
                for size, overrides in product.sizes.items():
                    values = self.dimensions.sized(overrides)
                    if id(values) not in seen:
                        seen[id(values)] = size
                        self._sizes.append((size, values))
        return self._sizes

    def shapes(self) -> Iterator[tuple[str, PartShape]]:
        """(size, shape) of every part that can be built, the size '' for the values as typed; equal shapes once."""
        for part in self.model.parts:
            yield from self.shapes_of(part)

    def shapes_of(self, part: str) -> Sequence[tuple[str, PartShape]]:
        """('', the part as typed), then its shape in each size that changes it; those that can't be built left out."""
        if not self._shapes:
            self._shapes.update({name: [] for name in self.model.parts})
            for size, shape in distinct_shapes(self.model.parts, self.book, self.sizes()):
                self._shapes[shape.name].append((size, shape))
        return self._shapes[part]

    def workers(self) -> Mapping[FeatureName, Worker]:
        """Who works each feature; where several do, the first, and no deviation before the operation it stands for."""
        if not self._workers:
            for operation in {**ordinary(self.model.operations), **self.model.operations}:
                for one in self.worked(operation):
                    self._workers.setdefault((one.part, one.name), Worker(operation, int(one.path[1])))
        return self._workers

    def route(self, product: str) -> tuple[RouteStep, ...]:
        """The route of a product, sub-assemblies expanded."""
        if product not in self._routes:
            self._routes[product] = route_of(product, self.model.products, self.model.operations)
        return self._routes[product]

    def dimension(self, operation: str, text: str) -> str | None:
        """Full name of a dimension as an operation's file names it, None if no part of it has such a dimension."""
        one = self.model.operations[operation]
        return operation_dimension(one, text, self.model.states, self.dimensions.definitions)


Check = Callable[[Subject], Iterator[Problem]]


@dataclass(frozen=True, slots=True)
class Rule:
    """A rule of the book.

    slug         : its name in findings, in the plant file and in `explain`
    why, remedy  : the reason it exists and what to do
    follows_from : rules whose finding explains this one away
    safety       : can't be lowered or silenced
    stops        : an error of it stops a build; False where the build itself must say what is wrong
    needs_results: runs after computing
    bad, good    : examples as YAML, {file: content laid over a small plant}; bad gives this finding, good none
    """

    slug: str
    severity: Severity
    why: str
    remedy: str
    check: Check
    bad: str
    good: str
    follows_from: tuple[str, ...] = ()
    safety: bool = False
    needs_results: bool = False
    stops: bool = True
