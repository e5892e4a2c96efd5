"""All words of a plant that operators read, in one walk: to list them for translating, and to say them in a language.

Each has a key, the path to where it was typed: `operation/sew-label/lay/do`. A text is translated wherever it stands;
the key says which one it was when the original changes.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Collection, Iterator, Mapping
from dataclasses import dataclass, replace
from typing import Any

from builder.model.deviation import Deviation
from builder.model.hazard import HAZARDS
from builder.model.material import Material
from builder.model.operation import Fault, Operation, Step
from builder.model.part import Part
from builder.model.photo import Pair, Picture
from builder.model.plant_model import PlantModel
from builder.model.product import Product
from builder.model.speech import plain
from builder.model.station import Station


@dataclass(frozen=True, slots=True)
class Wording:
    """A text as typed.

    key     : the path to it, its first two parts the kind and name of its object
    guarded : a caution, what stops the work, or a critical fault: a translation counts only once it was read
    """

    key: str
    text: str
    guarded: bool = False

    @property
    def owner(self) -> tuple[str, str]:
        """Kind and name of the object it belongs to."""
        kind, name, *_ = self.key.split("/")
        return kind, name


Rewrite = Callable[[Wording], str]
"""What is said in place of a text."""

_WORD = re.compile(r"[^\W\d_]{3}")


def wordings(model: PlantModel) -> list[Wording]:
    """Every text of a plant that sheets, pages or screens show, in the order of its files; the plant's names last."""
    found: list[Wording] = []

    def note(one: Wording) -> str:
        found.append(one)
        return one.text

    reworded(model, note)
    return [*found, *_names(model)]


def reworded(model: PlantModel, rewrite: Rewrite) -> PlantModel:
    """The plant with other words. Names, numbers and geometry stay as they are."""
    plant = model.plant.model_copy(
        update={"lock_out": rewrite(Wording("plant/plant/lock out", model.plant.lock_out, True))}
    )
    return replace(
        model,
        plant=plant,
        stations={name: _station(f"station/{name}", one, rewrite) for name, one in model.stations.items()},
        materials={name: _material(f"material/{name}", one, rewrite) for name, one in model.materials.items()},
        parts={name: _part(f"part/{name}", one, rewrite) for name, one in model.parts.items()},
        operations={name: _operation(f"operation/{name}", one, rewrite) for name, one in model.operations.items()},
        products={name: _product(f"product/{name}", one, rewrite) for name, one in model.products.items()},
        templates={
            name: one.model_copy(update={"title": rewrite(Wording(f"template/{name}/title", one.title))})
            for name, one in model.templates.items()
        },
        memo={},
    )


def _texts(key: str, one: Any, names: tuple[str, ...], rewrite: Rewrite, guarded: bool = False) -> dict[str, str]:
    """The fields of an object that hold text, rewritten; those left out stay out."""
    return {
        name: rewrite(Wording(f"{key}/{name.rstrip('_').replace('_', ' ')}", text, guarded))
        for name in names
        if (text := getattr(one, name)) is not None
    }


def _list(key: str, texts: tuple[str, ...], rewrite: Rewrite) -> tuple[str, ...]:
    """Cautions, each rewritten; the name of a hazard is the program's own word."""
    return tuple(
        text if text in HAZARDS else rewrite(Wording(f"{key}/{number}", text, True))
        for number, text in enumerate(texts, start=1)
    )


def _station(key: str, one: Station, rewrite: Rewrite) -> Station:
    settings = {
        name: limit.model_copy(update=_texts(f"{key}/{name}", limit, ("set_at", "how"), rewrite))
        for name, limit in one.settings.items()
    }
    checks = {
        field: {
            name: rewrite(Wording(f"{key}/{field.replace('_', ' ')}/{name}", text, True))
            for name, text in getattr(one, field).items()
        }
        for field in ("start", "close_down")
    }
    texts = _texts(key, one, ("title", "relief", "note"), rewrite)
    return one.model_copy(update={"settings": settings, **checks, **texts})


def _material(key: str, one: Material, rewrite: Rewrite) -> Material:
    return one.model_copy(
        update={
            "title": rewrite(Wording(f"{key}/title", one.title)),
            "cautions": _list(f"{key}/cautions", one.cautions, rewrite),
        }
    )


def _part(key: str, one: Part, rewrite: Rewrite) -> Part:
    features = {
        name: feature.model_copy(update=_texts(f"{key}/{name}", feature, ("label",), rewrite))
        for name, feature in one.features.items()
    }
    return one.model_copy(update={"title": rewrite(Wording(f"{key}/title", one.title)), "features": features})


def _operation(key: str, one: Operation, rewrite: Rewrite) -> Operation:
    tolerances = {
        name: spec.model_copy(update=_texts(f"{key}/{name}", spec, ("what",), rewrite))
        for name, spec in one.tolerances.items()
    }
    return one.model_copy(
        update={
            "title": rewrite(Wording(f"{key}/title", one.title)),
            "deviation": _deviation(f"{key}/deviation", one.deviation, rewrite),
            "cautions": _list(f"{key}/cautions", one.cautions, rewrite),
            "tolerances": tolerances,
            "steps": tuple(_step(f"{key}/{step.step}", step, rewrite) for step in one.steps),
            "faults": tuple(
                _fault(f"{key}/faults/{number}", fault, rewrite) for number, fault in enumerate(one.faults, start=1)
            ),
        }
    )


def _deviation(key: str, one: Deviation | None, rewrite: Rewrite) -> Deviation | None:
    return one.model_copy(update=_texts(key, one, ("because",), rewrite)) if one is not None else None


def _step(key: str, one: Step, rewrite: Rewrite) -> Step:
    step = one.model_copy(
        update={
            **_texts(key, one, ("do", "key", "why", "alt", "caption"), rewrite),
            "cautions": _list(f"{key}/cautions", one.cautions, rewrite),
            "photo": _photo(f"{key}/photo", one.photo, rewrite),
        }
    )
    # What a step works out of its fields is kept with it, and a copy takes it along.
    for kept in ("shots",):
        step.__dict__.pop(kept, None)
    return step


def _photo(key: str, one: Any, rewrite: Rewrite) -> Any:
    if isinstance(one, Picture):
        callouts = tuple(
            mark.model_copy(update=_texts(f"{key}/{number}", mark, ("says",), rewrite))
            if hasattr(mark, "says")
            else mark
            for number, mark in enumerate(one.callouts, start=1)
        )
        return one.model_copy(update={**_texts(key, one, ("alt", "caption"), rewrite), "callouts": callouts})
    if isinstance(one, Pair):
        sides = {side: _photo(f"{key}/{side}", getattr(one, side), rewrite) for side in ("good", "bad")}
        return one.model_copy(update=sides)
    if isinstance(one, tuple):
        return tuple(_photo(f"{key}/{number}", two, rewrite) for number, two in enumerate(one, start=1))
    return one  # the name of a file


def _fault(key: str, one: Fault, rewrite: Rewrite) -> Fault:
    critical = one.class_ == "critical"
    return one.model_copy(
        update={
            **_texts(key, one, ("sign", "cause", "do"), rewrite, critical),
            **_texts(key, one, ("stop",), rewrite, True),
        }
    )


def _product(key: str, one: Product, rewrite: Rewrite) -> Product:
    return one.model_copy(update=_texts(key, one, ("title", "note"), rewrite))


def _names(model: PlantModel) -> Iterator[Wording]:
    """Names the plant gave that are shown as words, each once: of features, measures, gauges, choices, checks."""
    found: dict[str, str] = {}
    for kind, owner, name in _named(model):
        if _WORD.search(name):
            found.setdefault(name, f"{kind}/{owner}/name {name}")
    return (Wording(key, name) for name, key in found.items())


def names_of(model: PlantModel, owners: Collection[tuple[str, str]]) -> frozenset[str]:
    """The plant's own names that figures and tables of these objects show, wherever else they stand."""
    return frozenset(name for kind, owner, name in _named(model) if (kind, owner) in owners)


def _named(model: PlantModel) -> Iterator[tuple[str, str, str]]:
    for part, one in model.parts.items():
        yield from (("part", part, plain(name)) for name, feature in one.features.items() if feature.label is None)
        yield from (("part", part, plain(name)) for name in one.dimensions)
        yield "part", part, plain(part)
    for operation, job in model.operations.items():
        for tolerance, spec in job.tolerances.items():
            if spec.what is None:
                yield "operation", operation, tolerance
            if spec.with_ is not None and spec.with_ not in model.templates:
                yield "operation", operation, spec.with_
            for part_of_plan in spec.every.parts if spec.every is not None else ():
                if part_of_plan.kind == "after":
                    yield "operation", operation, part_of_plan.words.removeprefix("after ")
    for station, place in model.stations.items():
        yield from (("station", station, check) for check in (*place.start, *place.close_down))
        for limit in place.settings.values():
            named = (choice for choice in limit.choices or () if choice not in model.materials)
            yield from (("station", station, choice) for choice in named)
    for product, sold in model.products.items():
        yield from (("product", product, colour) for colour in sold.colours)


def used_by(model: PlantModel, operation: str) -> Mapping[tuple[str, str], None]:
    """Kind and name of each object whose words an operation's sheet shows, the operation itself first."""
    one = model.operations[operation]
    found: dict[tuple[str, str], None] = {("operation", operation): None, ("plant", "plant"): None}
    found["station", one.station] = None
    if one.deviation is not None and one.deviation.instead_of in model.operations:
        found["operation", one.deviation.instead_of] = None
    for name in (*one.makes, *one.needs):
        if name in model.materials:
            found["material", name] = None
        _of_part(model, name, found)
    others = _stand_ins(model)
    for material in _materials(model, operation):
        found["material", material] = None
        found.update({("material", other): None for other in others.get(material, ())})
    names = [name for step in one.steps for name in step.with_]
    names += [spec.with_ for spec in one.tolerances.values() if spec.with_ is not None]
    found.update({("template", name): None for name in names if name in model.templates})
    return found


def _of_part(model: PlantModel, name: str, found: dict[tuple[str, str], None]) -> None:
    """A part with those it is put together from or folded from."""
    state = model.states.get(name)
    if state is None or ("part", state.base) in found:
        return
    found["part", state.base] = None
    part = model.parts[state.base]
    for inner in (*(component.part for component in part.from_), *((part.formed_from,) if part.formed_from else ())):
        _of_part(model, inner, found)
    for before in state.needs:
        if before != name:
            _of_part(model, before, found)


def _stand_ins(model: PlantModel) -> Mapping[str, Mapping[str, None]]:
    """By material, those that take its place in a colour of some product: a sheet lists them by colour."""
    if "stand-ins" not in model.memo:
        found: dict[str, dict[str, None]] = {}
        for product in model.products.values():
            for swaps in product.colours.values():
                for one, other in swaps.items():
                    found.setdefault(one, {})[other] = None
        model.memo["stand-ins"] = found
    others: Mapping[str, Mapping[str, None]] = model.memo["stand-ins"]
    return others


def _materials(model: PlantModel, operation: str) -> Iterator[str]:
    from builder.model.settings import settings_of
    from builder.model.store import consumed

    yield from consumed(model, operation)
    for value in settings_of(model, operation).values():
        if value.words in model.materials:
            yield value.words
    for made in (*model.operations[operation].makes, *model.operations[operation].needs):
        material = model.material_of(made)
        if material is not None:
            yield material
