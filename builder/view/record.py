"""The record: which code each sheet of this copy has, so that a paper can be asked whether it is the same.

Until issued revisions are kept, the record is the fingerprints of the copy's own build: it says whether a paper is the
same as these pages, not whether anybody approved them.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from datetime import date

from builder.model import PlantModel
from builder.view.deviation import DeviationView
from builder.view.marking import shown
from builder.view.sheet import SheetView


@dataclass(frozen=True, slots=True)
class SaidRecord:
    """A sheet in another language: the code of its words, and its title."""

    language: str = shown()
    tag: str = shown()
    title: str = shown()


@dataclass(frozen=True, slots=True)
class SheetRecord:
    """What the record knows of a sheet.

    tag : its code without blanks, as in the QR code; sizes, colours : (name, code) of each row
    """

    stem: str = shown()
    operation: str = shown()
    code: str = shown()
    title: str = shown()
    station: str = shown()
    products: tuple[str, ...] = shown()
    revision: str = shown()
    date: str = shown()
    tag: str = shown()
    sizes: tuple[tuple[str, str], ...] = shown()
    colours: tuple[tuple[str, str], ...] = shown()
    deviation: DeviationView | None = shown()
    said: tuple[SaidRecord, ...] = shown(default=())


@dataclass(frozen=True, slots=True)
class Record:
    """The record of one copy.

    day   : the day of the build, ISO 8601; a copy is as old as its build, whatever was changed in it
    lasts : days a copy may be asked, None where the plant doesn't say
    """

    day: str = shown()
    lasts: int | None = shown()
    language: str = shown()
    sheets: tuple[SheetRecord, ...] = shown()


def record_of(
    model: PlantModel, sheets: Iterable[SheetView], others: Mapping[str, Iterable[SheetView]], day: date
) -> Record:
    """The record of a build.

    sheets : in the plant's own language; others : those of each other language by its code
    """
    said: dict[str, list[SaidRecord]] = {}
    for language, translated in others.items():
        for view in translated:
            said.setdefault(view.stem, []).append(_said(language, view))
    plant = model.plant
    rows = tuple(replace(row, said=tuple(said.get(row.stem, ()))) for row in _rows(sheets))
    return Record(day.isoformat(), plant.copy_lasts, plant.language, rows)


def _said(language: str, view: SheetView) -> SaidRecord:
    return SaidRecord(language, _bare(view.words_tag), view.title)


def _rows(sheets: Iterable[SheetView]) -> Iterator[SheetRecord]:
    for view in sheets:
        yield SheetRecord(
            stem=view.stem,
            operation=view.operation,
            code=view.code,
            title=view.title,
            station=view.station_title,
            products=view.products,
            revision=view.revision,
            date=view.date,
            tag=_bare(view.tag),
            sizes=tuple((row.size, _bare(row.fingerprint)) for row in view.sizes),
            colours=tuple((row.colour, _bare(row.fingerprint)) for row in view.colours),
            deviation=view.deviation,
        )


def _bare(tag: str) -> str:
    return tag.replace(" ", "")
