"""What changes between the variants of a sheet: figures and pace of each size, materials of each colour."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from builder.model import (
    OperationTime,
    PlantModel,
    Results,
    consumed,
    in_colour,
    named,
    say,
)
from builder.view.figure import FigureView
from builder.view.grouping import SheetGroup
from builder.view.sheet import ColourRow


@dataclass(frozen=True, slots=True)
class Coloured:
    """The colours table of a sheet: the materials that change, what each is for, and a row for each colour."""

    materials: frozenset[str]
    names: tuple[str, ...]
    rows: tuple[ColourRow, ...]


def colours_of(group: SheetGroup, model: PlantModel) -> Coloured:
    """Materials this operation takes from the store that differ between the colours of its products.

    Parts that come in from other operations bring their colour with them and are not listed. Where products colour
    the same operation differently, the product's title stands behind the colour.
    """
    takes = consumed(model, group.operation)
    tables = {
        product: {colour: {one: in_colour(one, swaps) for one in takes} for colour, swaps in colours.items()}
        for product in group.products
        if (colours := model.products[product].colours)
    }
    changing = [one for one in takes if any(row[one] != one for table in tables.values() for row in table.values())]
    if not changing:
        return Coloured(frozenset(), (), ())
    rows: dict[str, ColourRow] = {}
    for colour, product, materials in _rows(tables, changing):
        titles = tuple(_colour_words(one, model) for one in materials)
        name = named(colour)
        if name in rows and rows[name].values != titles:
            name = f"{name} ({model.products[product].title})"
        rows.setdefault(name, ColourRow(name, tuple(zip(changing, materials, strict=True)), titles))
    names = tuple(_role_words(takes[one], one, model) for one in changing)
    return Coloured(frozenset(changing), names, tuple(rows.values()))


def _rows(
    tables: Mapping[str, Mapping[str, Mapping[str, str]]], changing: list[str]
) -> Iterator[tuple[str, str, list[str]]]:
    for product, table in tables.items():
        for colour, materials in table.items():
            yield colour, product, [materials[one] for one in changing]


def _colour_words(material: str, model: PlantModel) -> str:
    return model.materials[material].title if material in model.materials else material


def _role_words(role: str, material: str, model: PlantModel) -> str:
    return say(role) if role not in ("goods", "hardware") else say(model.materials[material].form)


def renamed(figure: FigureView, ending: str) -> FigureView:
    """The same figure under a name of its own, its locator's too."""
    locator = renamed(figure.locator, ending) if figure.locator is not None else None
    return replace(figure, name=f"{figure.name}--{ending}", locator=locator)


def file_word(size: str) -> str:
    """A size as part of a file's name or an anchor: lower-case letters, digits, hyphens."""
    return re.sub(r"[^a-z0-9]+", "-", size.lower()).strip("-") or "size"


def size_time(group: SheetGroup, size: str, results: Results) -> OperationTime | None:
    """The operation's time in a size of the group's first product; as typed when no product has it."""
    product = group.products[0] if group.products else ""
    found = results.operations.get((group.operation, product, size))
    return found if found is not None else results.operations.get((group.operation, "", ""))
